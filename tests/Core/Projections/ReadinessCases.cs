using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.WinterReadiness;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>The owner's criteria, met, not met and not known; the intervals after a winter are Wilson's (Newcombe 1998, table: 0/20 0–0.1611, 1/29 0.0061–0.1718).</summary>
public class ReadinessCases
{
    [Fact]
    public void Without_criteria_nothing_is_asked() => Assert.Empty(Rows(Yard(null), "1 Oct 2026"));

    [Theory]
    [InlineData("8 Jun 2026", Met.Met)]
    [InlineData("8 Jun 2025", Met.Met)]
    [InlineData("8 Jun 2024", Met.NotMet)]
    [InlineData(null, Met.NotKnown)]
    public void The_queens_age(string? born, Met met)
    {
        var story = Yard(set => set with { QueenSeasonsBackAtMost = 1 });
        story.Raise("q", born);
        story.Requeen("A", "q", "1 Jul 2026");
        Assert.Equal(met, Only(story).Met);
    }

    /// <summary>Q4: born in 2025 or 2026, so at most one season back is not certain two seasons later.</summary>
    [Fact]
    public void A_queen_of_two_possible_seasons_is_not_known_where_only_one_would_do()
    {
        var story = Yard(set => set with { QueenSeasonsBackAtMost = 1 });
        story.Raise("q", "8 Jun 2024");
        story.Requeen("A", "q", "1 Jul 2024");
        story.Look("A", "2 Oct 2025", QueenFinding.Seen);
        story.Superseded("A", "young", "14 Apr 2026");
        Assert.Equal(Met.Met, Only(story, "1 Oct 2026").Met);
        Assert.Equal((Met.NotKnown, "born in season 2025 or 2026"), (Only(story, "1 Oct 2027").Met, Only(story, "1 Oct 2027").Found));
        Assert.Equal(Met.NotMet, Only(story, "1 Oct 2028").Met);
    }

    [Fact]
    public void Brood_seen_not_seen_and_nobody_looked()
    {
        var story = Yard(set => set with { BroodSeenWithinDays = 30 });
        Assert.Equal((Met.NotKnown, "nobody has looked"), (Only(story).Met, Only(story).Found));
        story.Look("A", "20 Sep 2026", QueenFinding.NotSeen, eggs: false);
        Assert.Equal((Met.NotMet, "requeen, or combine"), (Only(story).Met, Only(story).Remedy));
        story.Look("A", "21 Sep 2026", eggs: true);
        Assert.Equal(Met.Met, Only(story).Met);
        Assert.Equal((Met.NotKnown, "nobody looked since 21 Sep 2026"), (Only(story, "22 Oct 2026").Met, Only(story, "22 Oct 2026").Found));
    }

    [Fact]
    public void No_brood_too_soon_after_a_course_that_stops_the_laying_is_not_known()
    {
        var story = Yard(set => set with { BroodSeenWithinDays = 30 });
        story.Tell((id, act, order) => new CourseDefined { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2026"), Course = "T", FullDoses = 1, BroodTooSoonDays = 21 });
        story.Dose("A", "10 Sep 2026", 1);
        story.Look("A", "20 Sep 2026", QueenFinding.NotSeen, eggs: false);
        Assert.Equal((Met.NotKnown, "look after 1 Oct 2026"), (Only(story).Met, Only(story).Remedy));
    }

    [Fact]
    public void Few_bees_are_combined_with_the_strongest_neighbour_or_replaced()
    {
        var story = Yard(set => set with { FramesOfBeesAtLeast = 6 });
        foreach (var (colony, spot, bees) in (ReadOnlySpan<(string, string, decimal)>)[("B", "M 2", 7), ("C", "M 3", 11)])
        {
            story.Begins(colony, "1 May 2020", spot);
            story.Look(colony, "20 Sep 2026", bees: bees);
        }

        story.Look("A", "20 Sep 2026", bees: 4);
        var weak = Rows(story, "1 Oct 2026").Single(row => row.Colony == "A");
        Assert.Equal((Met.NotMet, "4 frames of bees", "combine with C, or replace by a nuc"), (weak.Met, weak.Found, weak.Remedy));
    }

    [Theory]
    [InlineData(38, Met.Met, null)]
    [InlineData(30, Met.NotMet, "feed: 8.4 kg of sugar")]
    public void Stores_by_weight_against_the_target(int gross, Met met, string? remedy)
    {
        // 8 kg lacking at 7 lb of stores from 7.38 lb of sugar (extension guides) is 8.4 kg.
        var story = Yard(set => set with { StoresAtTarget = true });
        story.Tell((id, act, order) => new BoxesChanged { Id = id, Act = act, Order = order, On = Story.Day("1 May 2026"), Colony = Story.Colony("A"), Housing = Housing.Single });
        story.Tell((id, act, order) => new StoresTargetSet { Id = id, Act = act, Order = order, On = Story.Day("1 May 2026"), Housing = Housing.Single, Stores = new Quantity(20, "kg"), Tare = new Quantity(18, "kg") });
        story.Tell((id, act, order) => new Weighed { Id = id, Act = act, Order = order, On = Story.Day("20 Sep 2026"), Colony = Story.Colony("A"), Gross = new Quantity(gross, "kg") });
        Assert.Equal((met, remedy), (Only(story).Met, Only(story).Remedy));
    }

    [Theory]
    [InlineData(Heft.Heavy, Met.Met)]
    [InlineData(Heft.Light, Met.NotMet)]
    [InlineData(Heft.Fair, Met.NotKnown)]
    public void A_heft_tells_heavy_and_light_and_leaves_fair_open(Heft heft, Met met)
    {
        var story = Yard(set => set with { StoresAtTarget = true });
        story.Tell((id, act, order) => new Inspected { Id = id, Act = act, Order = order, On = Story.Day("20 Sep 2026"), Colony = Story.Colony("A"), Heft = heft });
        Assert.Equal(met, Only(story).Met);
    }

    [Fact]
    public void A_wash_counts_only_after_the_last_dose()
    {
        var story = Yard(set => set with { MitesAtMost = 2 });
        Assert.Equal((Met.NotKnown, "never washed"), (Only(story).Met, Only(story).Found));
        Wash(story, "1 Sep 2026", 3);
        Assert.Equal((Met.Met, "1 per 100 bees on 1 Sep 2026"), (Only(story).Met, Only(story).Found));
        story.Dose("A", "10 Sep 2026", 1);
        Assert.Equal((Met.NotKnown, "wash"), (Only(story).Met, Only(story).Remedy));
        Wash(story, "20 Sep 2026", 9);
        Assert.Equal((Met.NotMet, "3 per 100 bees on 20 Sep 2026"), (Only(story).Met, Only(story).Found));
    }

    [Fact]
    public void Course_complete_and_nothing_owed_each_say_their_own()
    {
        var story = Yard(set => set with { CoursesComplete = ["T"], NothingOwed = true });
        story.Course("T", 2);
        story.Dose("A", "1 Sep 2026", 1);
        story.Requeen("A", "q", "10 Sep 2026");
        Assert.Equal(
            [("course", "T", Met.NotMet, "1 of 2"), ("owed", null, Met.NotMet, "laying")],
            Rows(story, "1 Oct 2026").Select(row => (row.Criterion, row.Of, row.Met, row.Found)));
        story.Dose("A", "15 Sep 2026", 1);
        story.Look("A", "28 Sep 2026", eggs: true);
        Assert.All(Rows(story, "1 Oct 2026"), row => Assert.Equal(Met.Met, row.Met));
    }

    [Fact]
    public void What_the_remedies_take_stands_beside_what_is_at_hand()
    {
        var story = Yard(set => set with { QueenSeasonsBackAtMost = 1 });
        story.Raise("q", "8 Jun 2023");
        story.Requeen("A", "q", "1 Jul 2023");
        story.Tell((id, act, order) => new StockCounted { Id = id, Act = act, Order = order, On = Story.Day("1 Sep 2026"), Of = StockOf.MatedQueens, Amount = new Quantity(3, Units.Piece) });
        story.Tell((id, act, order) => new StockChanged { Id = id, Act = act, Order = order, On = Story.Day("2 Sep 2026"), Of = StockOf.MatedQueens, Amount = new Quantity(3, Units.Piece), Out = true });
        var whole = story.Books();
        var queens = Remedies.Of(Rows(story, "1 Oct 2026"), [.. whole.Rows(Questions.StoresAndFeed)], whole.Books.Store)[0];
        Assert.Equal((1m, 0m, 1m), (queens.Wanted, queens.AtHand, queens.Short));
    }

    [Fact]
    public void After_the_winter_the_criteria_stand_against_what_came_through()
    {
        var story = new Story();
        story.OpenYard("M");
        story.Tell((id, act, order) => new ReadinessSet { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2020"), FramesOfBeesAtLeast = 6 });
        // 20 strong ones came through; of 29 weak ones one was found dead; two more were sold and combined away, and count for nothing.
        for (var i = 1; i <= 51; i++)
        {
            story.Begins($"c{i}", "1 May 2020", $"M {i}");
            story.Look($"c{i}", "20 Sep 2026", bees: i <= 20 ? 9 : 4);
        }

        story.Dead("c21", "1 Mar 2027", "20 Sep 2026");
        story.Combine("c50", "c1", "5 Nov 2026");
        story.Tell((id, act, order) => new Sold { Id = id, Act = act, Order = order, On = Story.Day("6 Nov 2026"), Colony = Story.Colony("c51"), To = "a neighbour" });
        var autumn = story.Books(asOf: "1 Oct 2026");
        var rows = Readiness.Of(FactsOf.Whole(autumn, Story.Day("1 Oct 2026")), autumn.Rows(Questions.StoresAndFeed));
        var truth = Truth.Of(rows, story.Books().Rows(Questions.Losses), Story.Day("1 Oct 2026"), Story.Day("15 Apr 2027"));
        var (strong, weak) = (truth.Single(row => row.Met == Met.Met), truth.Single(row => row.Met == Met.NotMet));
        Assert.Equal((20, 0, 0m, 0.1611m), (strong.Colonies, strong.Lost, strong.Lower, strong.Upper));
        Assert.Equal((29, 1, 0.0061m, 0.1718m), (weak.Colonies, weak.Lost, weak.Lower, weak.Upper));
    }

    private static ReadinessRow Only(Story story, string day = "1 Oct 2026") => Assert.Single(Rows(story, day));

    private static IReadOnlyList<ReadinessRow> Rows(Story story, string day)
    {
        var whole = story.Books();
        return Readiness.Of(FactsOf.Whole(whole, Story.Day(day)), [.. whole.Rows(Questions.StoresAndFeed)]);
    }

    private static Story Yard(Func<ReadinessSet, ReadinessSet>? criteria)
    {
        var story = new Story();
        story.OpenYard("M");
        if (criteria is not null) story.Tell((id, act, order) => criteria(new ReadinessSet { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2026") }));
        story.Begins("A", "1 May 2020", "M 1");
        return story;
    }

    private static void Wash(Story story, string day, int mites) =>
        story.Tell((id, act, order) => new Washed { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony("A"), Mites = mites, Bees = 300 });
}
