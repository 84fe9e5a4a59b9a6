using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>The cases S1 to S3 of the design, worked by hand.</summary>
public class SpotStoryCases
{
    [Fact]
    public void S1_bands_of_a_spot()
    {
        var story = new Story();
        story.OpenYard("M");
        story.OpenYard("K");
        story.Begins("12", "1 May 2024", "M 7");
        story.Begins("40", "1 May 2024", "K 1");
        story.Look("12", "3 Dec 2024", bees: 3);
        story.Dead("12", "20 Feb 2025");
        story.Made("N3", "2 May 2025", ["40"], "K 3");
        story.Move("N3", "M 7", "10 May 2025", "K 3");
        story.Move("N3", "M 9", "1 Sep 2025", "M 7");
        story.Move("40", "M 7", "1 Sep 2025", "K 1");
        var books = story.Books();
        var bands = books.Rows(Questions.SpotStory).Where(band => band is { Yard: "M", Spot: "7" }).OrderBy(band => band.From).ToList();
        Assert.Equal(["12", "N3", "40"], bands.Select(band => band.Colony));
        Assert.Equal((Story.Day("4 Dec 2024"), Story.Day("20 Feb 2025"), "found dead"), (bands[0].GoneFrom, bands[0].GoneTo, bands[0].Went));
        Assert.Equal((Story.Day("10 May 2025"), Story.Day("1 Sep 2025")), (bands[1].From, bands[1].GoneTo));
        Assert.Equal(["K 3"], bands[1].Up);
        Assert.Equal(["M 9"], bands[1].Down);
        Assert.Equal((Story.Day("1 Sep 2025"), null), (bands[2].From, bands[2].GoneTo));
        var graph = new Graph(books.Rows(Questions.Lineage));
        Assert.Equal(Story.Colony("40").Value, Assert.Single(graph.Ancestors(Story.Colony("N3").Value)).Id);
        Assert.Empty(books.Rows(Questions.Conflicts));
    }

    [Fact]
    public void S2_a_nuc_above_is_no_conflict_and_two_full_colonies_are()
    {
        var story = new Story();
        story.OpenYard("M");
        story.Begins("A", "1 May 2026", "M 1");
        story.Begins("N", "1 Jun 2026", "M 1", how: HowEstablished.Nuc, above: true);
        Assert.Empty(story.Books().Rows(Questions.Conflicts));
        Assert.Equal(2, story.Books().Rows(Questions.SpotStory).Count(band => band.GoneTo is null));
        story.Begins("B", "1 Jun 2026", "M 1");
        Assert.Equal(["A", "B"], story.Books().Rows(Questions.Conflicts).Where(row => row.Conflict == "two-on-a-spot").Select(row => row.Colony).Order());
    }

    [Fact]
    public void S3_the_yard_moves()
    {
        var story = new Story();
        story.OpenYard("M");
        story.OpenYard("P");
        foreach (var number in new[] { "1", "2", "7" }) story.Begins($"C{number}", "1 May 2026", $"M {number}");
        foreach (var number in new[] { "1", "2", "7" }) story.Move($"C{number}", $"P {number}", "1 Aug 2026", $"M {number}");
        var bands = story.Books().Rows(Questions.SpotStory).ToList();
        Assert.All(bands.Where(band => band.Yard == "M"), band => Assert.Equal(Story.Day("1 Aug 2026"), band.GoneTo));
        Assert.All(bands.Where(band => band.Yard == "P"), band => Assert.Equal((Story.Day("1 Aug 2026"), null), (band.From, band.GoneTo)));
        Assert.Equal("moved to P 7", bands.Single(band => band is { Yard: "M", Spot: "7" }).Went);
        Assert.Empty(story.Books().Rows(Questions.Conflicts));
    }
}
