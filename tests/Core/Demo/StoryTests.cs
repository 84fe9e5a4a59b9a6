using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Core.Tests.Demo;

/// <summary>The four questions have something to say on the demo, where its description says that they do.</summary>
public sealed class StoryTests
{
    [Fact]
    public void Kiln_Bank_has_most_queens_from_two_seasons_back_with_few_bees()
    {
        var few = DemoBooks.Whole.Rows(Questions.QueensByAge).Where(row => row.SeasonTo <= 2024 && row.BeesFew == true).GroupBy(row => row.Yard).ToDictionary(yard => yard.Key!, yard => yard.Count());
        Assert.Equal("Kiln Bank", few.MaxBy(yard => yard.Value).Key);
        Assert.True(few["Kiln Bank"] >= 8, $"{few["Kiln Bank"]} of them");
    }

    [Fact]
    public void A_queen_superseded_unseen_is_possible_in_two_seasons() =>
        Assert.Contains(DemoBooks.Whole.Rows(Questions.QueensByAge), row => row.Sure == "possible" && row.SeasonFrom < row.SeasonTo);

    [Fact]
    public void Withy_Bottom_is_incomplete_by_a_nuc_between_the_doses_and_a_less_treated_colony()
    {
        var owing = DemoBooks.Whole.Rows(Questions.DoseCompleteness).Where(row => row is { Yard: "Withy Bottom", Course: "thymol summer", Season: 2026, Ended: null, Owed: > 0 }).ToList();
        Assert.InRange(owing.Count, 2, 8);
        Assert.All(owing, row => Assert.Equal(1, row.Had));
        var joined = DemoBooks.Entries.Where(entry => entry.On.Day.Year == 2026 && entry.On.Day.Month is 7 or 8).ToList();
        Assert.Contains(owing, row => joined.OfType<SplitFrom>().Any(split => split.Into == row.ColonyId));
        Assert.Contains(owing, row => joined.OfType<Combined>().Any(combined => combined.Into == row.ColonyId));
    }

    [Fact]
    public void Spot_7_of_Otter_Holt_was_replaced_by_a_nuc_twice_in_one_season()
    {
        var bands = DemoBooks.Whole.Rows(Questions.SpotStory).Where(band => band is { Yard: "Otter Holt", Spot: "7" }).OrderBy(band => band.From).ToList();
        Assert.True(bands.Count >= 3);
        var (dead, first, second) = (bands[^3], bands[^2], bands[^1]);
        Assert.Equal("found dead", dead.Went);
        Assert.StartsWith("made from", first.Came, StringComparison.Ordinal);
        Assert.StartsWith("given up: dud", first.Went, StringComparison.Ordinal);
        Assert.StartsWith("moved from Larch Nook", second.Came, StringComparison.Ordinal);
        Assert.Equal(first.GoneTo, second.From);
        Assert.Null(second.Went);
    }

    [Fact]
    public void The_breeder_of_Brindle_has_more_than_a_hundred_living_descendants_over_three_seasons()
    {
        var breeder = Assert.Single(DemoBooks.Entries.OfType<LineStarted>(), line => line.Line == "Brindle").Breeder;
        var descendants = new Graph(DemoBooks.Whole.Rows(Questions.Lineage)).Descendants(breeder.Value, LinkKind.Mother).Select(queen => queen.Id).ToHashSet();
        var living = DemoBooks.Whole.Rows(Questions.QueensByAge).Where(row => row.QueenId is { } queen && descendants.Contains(queen.Value)).ToList();
        Assert.True(living.Count > 100, $"{living.Count} living");
        Assert.True(living.Select(row => row.SeasonTo).Distinct().Count() >= 3);
        Assert.True(DemoBooks.Entries.OfType<LineStarted>().Count() >= 3);
    }

    [Fact]
    public void Bramble_Ley_has_one_high_wash_after_the_treatment()
    {
        var standing = DemoBooks.Whole;
        var high = DemoBooks.Entries.OfType<Washed>().Where(wash => wash.On.Day >= new DateOnly(2026, 9, 1) && wash.Mites * 100 >= wash.Bees * 8)
            .Where(wash => standing.About(wash.Colony).Contains(wash)).ToList();
        Assert.Contains(high, wash => standing.Books.Colony(wash.Colony).Stays[^1].Spot.Yard == Yard("Bramble Ley"));
    }

    [Fact]
    public void About_a_dozen_conflicts_are_open_and_one_is_settled()
    {
        var conflicts = DemoBooks.Whole.Rows(Questions.Conflicts).ToList();
        Assert.InRange(conflicts.Count(conflict => !conflict.Settled), 5, 40);
        Assert.Contains(conflicts, conflict => conflict.Settled);
        Assert.Subset(conflicts.Select(conflict => conflict.Conflict).ToHashSet(), new HashSet<string> { "after-end", "mark-against-record", "two-on-a-spot", "moved-from-elsewhere" });
    }

    [Fact]
    public void The_places_that_the_description_names_are_there()
    {
        foreach (var name in (string[])["Kiln Bank", "Otter Holt", "Withy Bottom", "Larch Nook", "Bramble Ley", "Tarn Foot", "Teasel Brow", "Thistle Rigg", "Pebble Ford"]) Yard(name);
        var moved = DemoBooks.Whole.Rows(Questions.SpotStory).Where(band => band.Yard == "Tarn Foot" && band.Went?.StartsWith("moved to Teasel Brow ", StringComparison.Ordinal) == true).ToList();
        Assert.NotEmpty(moved);
        Assert.All(moved, band => Assert.Equal($"moved to Teasel Brow {band.Spot}", band.Went));
    }

    private static YardId Yard(string name) => Assert.Single(DemoBooks.Entries.OfType<YardOpened>(), yard => yard.Name == name).Yard;
}
