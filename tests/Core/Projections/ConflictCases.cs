using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Conflicts;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>Contradictions with the acts that would settle them. Those of the worked cases stand with their questions.</summary>
public class ConflictCases
{
    [Fact]
    public void Two_queens_without_a_word_about_the_first()
    {
        var story = With(queen: "q1");
        var introduced = Introduce(story, "q2", "1 Jul 2026");
        var conflict = Assert.Single(Rows(story));
        Assert.Equal(("two-queens", false), (conflict.Conflict, conflict.Settled));
        Assert.Contains(introduced.Id, conflict.Entries);
        Assert.Contains(conflict.SettledBy, act => act.StartsWith("record what became of the queen before", StringComparison.Ordinal));
    }

    [Fact]
    public void Killed_first_or_requeened_or_superseded_is_no_conflict()
    {
        var killed = With(queen: "q1");
        killed.Kill("A", "1 Jul 2026");
        Introduce(killed, "q2", "1 Jul 2026");
        var requeened = With(queen: "q1");
        requeened.Requeen("A", "q2", "1 Jul 2026");
        var beside = With(queen: "q1");
        beside.Tell((id, act, order) => new SupersedureSeen { Id = id, Act = act, Order = order, On = Story.Day("1 Jul 2026"), Colony = Story.Colony("A"), Queen = Story.Queen("q2"), Old = Story.Queen("q1"), OldStillThere = true });
        Assert.All((Story[])[killed, requeened, beside], story => Assert.Empty(Rows(story)));
    }

    [Fact]
    public void The_missing_entry_settles_two_queens()
    {
        var story = With(queen: "q1");
        Introduce(story, "q2", "1 Jul 2026");
        // The killing was written down later; it bears the day before.
        story.Tell((id, act, order) => new QueenKilled { Id = id, Act = act, Order = order, On = Story.Day("30 Jun 2026"), Colony = Story.Colony("A"), Queen = Story.Queen("q1") });
        Assert.Empty(Rows(story));
    }

    [Fact]
    public void What_was_taken_out_must_have_been_in()
    {
        var story = With(queen: null);
        story.Tell((id, act, order) => new TreatmentTakenOut { Id = id, Act = act, Order = order, On = Story.Day("1 Sep 2026"), Colony = Story.Colony("A"), Course = "S" });
        Assert.Equal(("out-of-nothing", "S was taken out on 2026-09-01, and no dose of it is recorded"), (Assert.Single(Rows(story)).Conflict, Rows(story)[0].What));
        story.Dose("A", "20 Jul 2026", 1, "S");
        Assert.Empty(Rows(story));
    }

    [Fact]
    public void Every_kind_names_an_act_beside_letting_it_stand() =>
        Assert.All(Desk.ConflictWords.All, known => Assert.True(Kind(known.Name) >= 2, known.Name));

    private static int Kind(string name)
    {
        var story = With(queen: "q1");
        switch (name)
        {
            case "two-queens": Introduce(story, "q2", "1 Jul 2026"); break;
            case "too-many-mites": story.Tell((id, act, order) => new Washed { Id = id, Act = act, Order = order, On = Story.Day("1 Jul 2026"), Colony = Story.Colony("A"), Mites = 5, Bees = 2 }); break;
            case "after-end": story.GivenUp("A", "1 Jul 2026", "dud"); story.Dose("A", "2 Jul 2026", 1); break;
            case "before-beginning": story.Dose("A", "1 Jan 2019", 1); break;
            case "two-on-a-spot": story.Begins("B", "1 Jun 2026", "M 1"); break;
            case "moved-from-elsewhere": story.Move("A", "M 2", "1 Jul 2026", from: "M 9"); break;
            case "queen-in-two-places": story.Begins("B", "1 Jun 2026", "M 2"); story.Tell((id, act, order) => new QueenIntroduced { Id = id, Act = act, Order = order, On = Story.Day("1 Jul 2026"), Colony = Story.Colony("B"), Queen = Story.Queen("q1") }); break;
            case "mark-against-record": story.Raise("q1", "1 Jun 2025"); story.Look("A", "1 Jul 2026", QueenFinding.Seen, MarkColour.Green); break;
            case "daughter-older": story.Raise("q1", "1 Jun 2020", mother: "m"); story.Raise("m", "1 Jun 2024"); break;
            case "out-of-nothing": story.Tell((id, act, order) => new TreatmentTakenOut { Id = id, Act = act, Order = order, On = Story.Day("1 Sep 2026"), Colony = Story.Colony("A"), Course = "S" }); break;
        }

        return Rows(story).First(row => row.Conflict == name).SettledBy.Count;
    }

    private static IReadOnlyList<ConflictRow> Rows(Story story) => [.. story.Books().Rows(Questions.Conflicts)];

    private static Story With(string? queen)
    {
        var story = new Story();
        story.OpenYard("M");
        story.Begins("A", "1 May 2020", "M 1", queen: queen);
        return story;
    }

    private static Entry Introduce(Story story, string queen, string day) =>
        story.Tell((id, act, order) => new QueenIntroduced { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony("A"), Queen = Story.Queen(queen) });
}
