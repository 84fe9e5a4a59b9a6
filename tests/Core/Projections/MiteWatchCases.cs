using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.MiteWatch;

namespace ColonyLineage.Core.Tests.Projections;

public class MiteWatchCases
{
    private static void Wash(Story story, string colony, string day, int mites, int bees) =>
        story.Tell((id, act, order) => new Washed { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony(colony), Mites = mites, Bees = bees });

    /// <summary>Source: COLOSS BEEBOOK vol. II, Dietemann et al. 2013, 4.2.3.1, with its slip put right: 43 of 310 is 13.87 %.</summary>
    [Fact]
    public void Infestation_is_mites_per_hundred_bees_counted()
    {
        var story = new Story();
        story.Begins("A", "1 May 2026");
        Wash(story, "A", "1 Aug 2026", 43, 310);
        Assert.Equal(13.87m, Math.Round(story.Books().Rows(Questions.MiteWatch).Single().Per100Bees, 2));
    }

    /// <summary>Guides disagree on the bees in half a cup, 300 to 400 (extension guides): the count of bees is what the figure rests on.</summary>
    [Theory]
    [InlineData(300, 3.0)]
    [InlineData(400, 2.25)]
    public void The_same_mites_of_more_bees_are_fewer(int bees, double percent)
    {
        var story = new Story();
        story.Begins("A", "1 May 2026");
        Wash(story, "A", "1 Aug 2026", 9, bees);
        Assert.Equal((decimal)percent, story.Books().Rows(Questions.MiteWatch).Single().Per100Bees);
    }

    /// <summary>By hand: 9 of 300 and 0 of 600 pooled are 1.0 %, and not the mean of 3 % and 0 %.</summary>
    [Fact]
    public void Pooled_is_sum_by_sum_where_the_colony_stood_that_day()
    {
        var story = new Story();
        story.OpenYard("M");
        story.OpenYard("K");
        story.Begins("A", "1 May 2026", "M 1");
        story.Begins("B", "1 May 2026", "M 2");
        Wash(story, "A", "1 Aug 2026", 9, 300);
        Wash(story, "B", "1 Aug 2026", 0, 600);
        story.Move("A", "K 1", "2 Aug 2026");
        Wash(story, "A", "1 Sep 2026", 3, 300);
        Assert.Equal([new Pool("K", 2, 1, 3, 300, 1m), new Pool("M", 1, 2, 9, 900, 1m)], MiteWatchQuestion.Pooled(story.Books().Rows(Questions.MiteWatch)));
    }
}
