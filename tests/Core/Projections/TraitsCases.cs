using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Projections.Losses;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>What is measured of a queen's colony in a season. Worked out by hand.</summary>
public class TraitsCases
{
    [Fact]
    public void A_season_of_one_queen()
    {
        var story = Outfit();
        Look(story, "1 May 2026", bees: 6, temper: 4, pattern: 4);
        Look(story, "1 Jun 2026", bees: 9, pattern: 5);
        story.Tell((id, act, order) => new Harvested { Id = id, Act = act, Order = order, On = Story.Day("1 Jul 2026"), Colony = Story.Colony("A"), Honey = new Quantity(10, "lb") });
        story.Tell((id, act, order) => new Harvested { Id = id, Act = act, Order = order, On = Story.Day("1 Aug 2026"), Colony = Story.Colony("A"), Honey = new Quantity(2, "kg"), Supers = 1 });
        Wash(story, "5 Aug 2026", 9, 300);
        Wash(story, "20 Aug 2026", 3, 300);
        var row = Assert.Single(Rows(story));
        Assert.Equal(("M", "1", "A", 2026, "daughter", "breeder", "North", 1), (row.Yard, row.Spot, row.Colony, row.Season, row.Queen, row.Mother, row.Line, row.QueenAge));
        // 10 lb are 4.5359237 kg, exact.
        Assert.Equal((7.5m, 4m, 4.5m, 6.5359m), (row.FramesOfBees, row.Temper, row.BroodPattern, row.HoneyKg));
        Assert.Equal((3m, 1m, false), (row.FirstPer100Bees, row.LastPer100Bees, row.DosedBetween));
        Assert.Equal((Story.Day("1 May 2026"), Story.Day("20 Aug 2026")), (row.SeenFrom, row.SeenTo));
        // ln 1.5 less ln 3.5 in 15 days, a month of 30.
        Assert.Equal(2 * Math.Log(1.5 / 3.5), Records.Of(Measured(story), Trait.MiteGrowth, ComparedBy.Line)[0].Value, 12);
    }

    [Fact]
    public void Each_queen_has_her_own_row_and_a_look_too_soon_is_no_pattern()
    {
        var story = Outfit();
        Stops(story);
        Look(story, "1 May 2026", bees: 6, pattern: 5);
        story.Dose("A", "10 May 2026", 1);
        Look(story, "31 May 2026", bees: 6, pattern: 1);
        Look(story, "1 Jun 2026", bees: 6, pattern: 3);
        story.Raise("other", "1 Jun 2026");
        story.Requeen("A", "other", "10 Jun 2026");
        Look(story, "1 Jul 2026", bees: 2);
        Look(story, "1 Jul 2027", bees: 8);
        var rows = Rows(story);
        Assert.Equal([("daughter", 2026, 6m), ("other", 2026, 2m), ("other", 2027, 8m)], rows.Select(row => (row.Queen!, row.Season, row.FramesOfBees!.Value)));
        Assert.Equal((4m, 1), (rows[0].BroodPattern, rows[0].PatternsTooSoon));
        Assert.Equal((null, 0, 1, null), (rows[1].Mother, rows[1].QueenAge, rows[2].QueenAge, rows[1].Line));
        Assert.Equal("T", rows[0].Treatments);
        Assert.True(rows[0].Entries.Count > rows[2].Entries.Count);
    }

    [Fact]
    public void A_look_before_the_dose_of_the_same_day_is_no_look_too_soon()
    {
        var story = Outfit();
        Stops(story);
        Look(story, "10 May 2026", pattern: 4);
        story.Dose("A", "10 May 2026", 1);
        Look(story, "10 May 2026", pattern: 1);
        var row = Assert.Single(Rows(story));
        Assert.Equal((4m, 1), (row.BroodPattern, row.PatternsTooSoon));
    }

    [Fact]
    public void What_the_colony_was_given_before_she_came_is_a_treatment_of_her_season()
    {
        var story = Outfit();
        var dose = story.Dose("A", "10 May 2026", 1);
        story.Requeen("A", "other", "10 Jun 2026");
        Look(story, "1 Jul 2026", bees: 2);
        Look(story, "1 Jul 2027", bees: 4);
        Assert.Equal(["T", null], Rows(story).Select(row => row.Treatments));
        Assert.Contains(dose.Id, Rows(story)[0].Entries);
    }

    [Fact]
    public void What_is_seen_after_she_was_set_elsewhere_is_not_hers()
    {
        var story = Outfit();
        Look(story, "1 May 2026", bees: 6);
        story.Begins("B", "10 May 2026", "M 2", queen: "daughter", how: HowEstablished.Nuc);
        // Nobody said so at A, but she is not there any more.
        Look(story, "1 Jun 2026", bees: 2);
        var row = Assert.Single(Rows(story));
        Assert.Equal(("A", 6m, Story.Day("1 May 2026")), (row.Colony, row.FramesOfBees, row.SeenTo));
    }

    [Fact]
    public void A_queen_that_came_back_has_one_row_for_the_season()
    {
        var story = Outfit();
        Wash(story, "1 May 2026", 1, 100);
        story.Tell((id, act, order) => new QueenBanked { Id = id, Act = act, Order = order, On = Story.Day("10 May 2026"), Queen = Story.Queen("daughter"), Colony = Story.Colony("A") });
        // While she was away nothing is hers; what was given then lies between her washes all the same.
        Look(story, "15 May 2026", bees: 1);
        story.Dose("A", "15 May 2026", 1);
        var back = story.Requeen("A", "daughter", "20 May 2026", OldQueen.NoneThere);
        Wash(story, "1 Jun 2026", 2, 100);
        var row = Assert.Single(Rows(story));
        Assert.Equal((1m, 2m, true, (decimal?)null), (row.FirstPer100Bees, row.LastPer100Bees, row.DosedBetween, row.FramesOfBees));
        Assert.Contains(back.Id, row.Entries);
    }

    [Fact]
    public void Of_two_queens_seen_on_one_day_the_later_stands_for_the_winter()
    {
        var story = Outfit();
        Look(story, "1 May 2026", bees: 6);
        story.Raise("other", "15 May 2026");
        story.Requeen("A", "other", "1 Jun 2026");
        Look(story, "1 Sep 2026", bees: 5);
        story.Requeen("A", "daughter", "1 Sep 2026", OldQueen.TakenOut);
        Look(story, "1 Sep 2026", bees: 4);
        Assert.Equal(["other", "daughter"], Rows(story).Select(row => row.Queen));
        Assert.Equal(Story.Queen("daughter"), Assert.Single(Records.Of(Measured(story, "1 May 2027"), Trait.WinterLosses, ComparedBy.Line)).QueenId);
    }

    [Fact]
    public void A_row_names_what_says_that_the_colony_began_or_was_taken_out()
    {
        var story = new Story();
        var began = story.Begins("A", "1 Jul 2026", "M 1", queen: "Q", how: HowEstablished.Swarm);
        story.Requeen("A", "other", "5 Jul 2026");
        Look(story, "1 Aug 2026", bees: 6);
        var taken = story.Tell((id, act, order) => new TakenOut { Id = id, Act = act, Order = order, On = Story.Day("1 Sep 2026"), Colony = Story.Colony("A"), Why = "dud" });
        var row = Assert.Single(Rows(story));
        Assert.True(row.New && row.TakenOut);
        Assert.Superset(new HashSet<EntryId> { began.Id, taken.Id }, row.Entries.ToHashSet());
    }

    [Fact]
    public void What_is_not_over_is_in_no_share()
    {
        var story = Outfit();
        story.Look("A", "1 Sep 2026", QueenFinding.Seen, bees: 6);
        Assert.Empty(Records.Of(Measured(story, "1 Mar 2027"), Trait.WinterLosses, ComparedBy.Line));
        Assert.Equal(0, Assert.Single(Records.Of(Measured(story, "1 May 2027"), Trait.WinterLosses, ComparedBy.Line)).Value);
        story.Dead("A", "1 Feb 2027", "5 Jan 2027");
        Assert.Equal(1, Assert.Single(Records.Of(Measured(story, "1 May 2027"), Trait.WinterLosses, ComparedBy.Line)).Value);
        // She had been there for a year and more when it died.
        Assert.Equal([0.0], Records.Of(Measured(story, "1 Nov 2027"), Trait.QueenGone, ComparedBy.Line).Select(record => record.Value));
        // Where her colony died sooner, that says nothing of how long she would have stayed.
        var dead = Outfit();
        dead.Look("A", "1 Sep 2025", QueenFinding.Seen, bees: 6);
        dead.Dead("A", "1 Apr 2026", "5 Mar 2026");
        Assert.Empty(Records.Of(Measured(dead, "1 Nov 2027"), Trait.QueenGone, ComparedBy.Line));
        var superseded = Outfit();
        superseded.Look("A", "1 Sep 2025", QueenFinding.Seen, bees: 6);
        superseded.Superseded("A", "young", "1 Apr 2026");
        superseded.Look("A", "1 Jun 2026", QueenFinding.Seen, bees: 6);
        Assert.Equal([1.0], Records.Of(Measured(superseded, "1 Jan 2027"), Trait.QueenGone, ComparedBy.Line).Select(record => record.Value));
    }

    [Fact]
    public void What_is_taken_out_of_comparisons_is_in_none()
    {
        var story = Outfit();
        Look(story, "1 May 2026", bees: 6);
        Assert.Single(Records.Of(Measured(story), Trait.Strength, ComparedBy.Line));
        Assert.Empty(Records.Of(Measured(story), Trait.Strength, ComparedBy.Line, season: 2025));
        story.Tell((id, act, order) => new TakenOut { Id = id, Act = act, Order = order, On = Story.Day("1 Jun 2026"), Colony = Story.Colony("A"), Why = "dud" });
        Assert.Empty(Records.Of(Measured(story), Trait.Strength, ComparedBy.Line));
    }

    private static Story Outfit()
    {
        var story = new Story();
        story.OpenYard("M");
        story.Raise("breeder", "1 Jun 2023");
        story.Tell((id, act, order) => new LineStarted { Id = id, Act = act, Order = order, On = Story.Day("1 Jun 2023"), Line = "North", Breeder = Story.Queen("breeder") });
        story.Raise("daughter", "1 Jun 2025", mother: "breeder");
        story.Begins("A", "1 Jul 2025", "M 1", queen: "daughter", how: HowEstablished.Split);
        return story;
    }

    private static void Stops(Story story) =>
        story.Tell((id, act, order) => new CourseDefined { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2015"), Course = "T", FullDoses = 2, BroodTooSoonDays = 21 });

    private static void Look(Story story, string day, decimal? bees = null, int? temper = null, int? pattern = null) =>
        story.Tell((id, act, order) => new Inspected { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony("A"), FramesOfBees = bees, Temper = temper, BroodPattern = pattern });

    private static void Wash(Story story, string day, int mites, int bees) =>
        story.Tell((id, act, order) => new Washed { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony("A"), Mites = mites, Bees = bees });

    private static List<TraitRow> Rows(Story story) => [.. story.Books().Rows(Questions.Traits)];

    private static Measured Measured(Story story, string today = "1 Nov 2026") =>
        new(Rows(story), [.. story.Books().Rows(Questions.Losses)], [.. story.Books().Rows(Questions.Reigns)], new OutfitCard(), Story.Day(today));
}
