using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.Relationship;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Relationship;

/// <summary>Brood patterns seen while a queen reigned, and what her mating leads one to expect. Worked out by hand.</summary>
public class BroodPatternTests
{
    [Fact]
    public void Patterns_are_hers_while_she_reigns_in_whatever_colony()
    {
        var story = new Story();
        foreach (var queen in new[] { "old", "Q" }) story.Raise(queen, "1 May 2025");
        story.Begins("A", "1 May 2026", queen: "old");
        story.Begins("B", "1 May 2026", queen: "Q");
        Pattern(story, "A", "2 May 2026", 2);
        Pattern(story, "B", "2 May 2026", 4);
        story.Look("B", "3 May 2026", QueenFinding.Seen);
        story.Requeen("A", "Q", "1 Jun 2026");
        // The worker of the old queen's last egg emerges on the 22nd.
        Pattern(story, "A", "21 Jun 2026", 3);
        Pattern(story, "A", "22 Jun 2026", 5);
        story.Requeen("A", "next", "1 Jul 2026");
        Pattern(story, "A", "2 Jul 2026", 1);
        Assert.Equal([("B", 4, false), ("A", 3, true), ("A", 5, false)], Seen(story).Select(look => (look.Colony.Number!, look.Score, look.Early)));
        // The look alone; and where she came lately also how she came.
        Assert.Equal([1, 2, 1], Seen(story).Select(look => look.Entries.Count));
    }

    /// <summary>She was set into another colony, and nobody ended her reign in the old one: what is seen there afterwards is not hers.</summary>
    [Fact]
    public void What_is_seen_after_she_was_set_elsewhere_is_not_hers()
    {
        var story = new Story();
        story.Raise("Q", "1 May 2025");
        story.Begins("A", "1 May 2026", queen: "Q");
        story.Begins("B", "1 May 2026");
        Pattern(story, "A", "2 May 2026", 4);
        story.Requeen("B", "Q", "1 Jun 2026");
        Pattern(story, "A", "1 Jul 2026", 1);
        Pattern(story, "B", "1 Jul 2026", 5);
        Assert.Equal([("A", 4), ("B", 5)], Seen(story).Select(look => (look.Colony.Number!, look.Score)));
    }

    [Fact]
    public void A_look_too_soon_names_the_dose()
    {
        var story = new Story();
        story.Raise("Q", "1 May 2025");
        story.Tell((id, act, order) => new CourseDefined { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2015"), Course = "T", FullDoses = 2, BroodTooSoonDays = 14 });
        story.Begins("A", "1 May 2026", queen: "Q");
        Pattern(story, "A", "31 Jul 2026", 4);
        var dose = story.Dose("A", "1 Aug 2026", 1);
        Pattern(story, "A", "15 Aug 2026", 1);
        Pattern(story, "A", "16 Aug 2026", 4);
        Assert.Equal([null, dose.Id, null], Seen(story).Select(look => look.TooSoonAfter?.Id));
        Assert.Contains(dose.Id, Seen(story)[1].Entries);
    }

    // With k = 10: drones of her own mother are her brothers, F = .25, share .25 + .5/10 = .3, half of √(.6 × .4 / 12) = .070711; empty 1 − .9 × .7 = .37.
    [Theory]
    [InlineData("her brothers", .25, .3, .070711, .37)]
    [InlineData("in the open", 0, .1, .057735, .19)]
    [InlineData("nobody recorded it", 0, .1, .057735, .19)]
    public void What_her_recorded_mating_leads_one_to_expect(string mating, double inbreeding, double diploid, double deviation, double empty)
    {
        var story = new Story();
        story.Raise("M", "1 May 2024");
        story.Raise("Q", "1 May 2025", mother: "M");
        story.Raise("daughter", "1 May 2026", mother: "Q");
        var mated = mating == "nobody recorded it" ? null : Mate(story, mating == "her brothers" ? ["M"] : []);
        var expected = Expected(story);
        Near(inbreeding, (double)expected.BroodInbreeding, 1e-6, "by hand");
        Near(diploid, (double)expected.DiploidDrones, 1e-6, "by hand");
        Near(deviation, (double)expected.DiploidDeviation, 1e-6, "by hand");
        Near(empty, (double)expected.EmptyCells, 1e-6, "by hand");
        if (diploid == .1) Near(.8125, (double)expected.SpottyChance, 5e-5, "check values: 100 cells, e .10, alarm at 16");
        Assert.Equal(mated is not null, mated is not null && expected.Entries.Contains(mated.Id));
        // The pedigree of her alone says the same as that of the whole books.
        var whole = new BooksPedigree(story.Books().Rows(Questions.Lineage), []);
        Assert.Equal(whole.Pedigree.BroodInbreeding(whole.MatingOf(Story.Queen("Q").Value)), (double)expected.BroodInbreeding, 6);
    }

    [Fact]
    public void A_queen_without_kin_is_known_all_the_same()
    {
        var story = new Story();
        story.Raise("Q", "1 May 2025");
        Assert.Equal((0m, .1m, 12m), (Expected(story).BroodInbreeding, Expected(story).DiploidDrones, Expected(story).EffectiveDrones));
        Mate(story, [], 5);
        Assert.Equal(5, Expected(story).EffectiveDrones);
    }

    private static IReadOnlyList<PatternSeen> Seen(Story story) => BroodPattern.Seen(story.Books().Books, Story.Queen("Q"));

    private static PlannedRow Expected(Story story)
    {
        var books = story.Books();
        var queen = Story.Queen("Q");
        return BroodPattern.Expected(BooksPedigree.Above(new Graph(books.Rows(Questions.Lineage)), queen.Value, "Q"), books.Books.Queen(queen));
    }

    private static void Pattern(Story story, string colony, string day, int score) =>
        story.Tell((id, act, order) => new Inspected { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony(colony), BroodPattern = score });

    private static Entry Mate(Story story, string[] drones, decimal? effective = null) =>
        story.Tell((id, act, order) => new QueenMated { Id = id, Act = act, Order = order, On = Story.Day("1 Jun 2025"), Queen = Story.Queen("Q"), Drones = [.. drones.Select(Story.Queen)], EffectiveDrones = effective });
}
