using ColonyLineage.Entries;
using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class SupersedureFoundTests
{
    private static SupersedureFound Request => new()
    {
        Act = Act("supersedure"), On = new Occurred(Day("2026-07-02"), Day("2026-05-10")), Colony = Colony("12"), Queen = Queen("daughter"),
        Look = new Look { EggsSeen = true, MarkSeen = new QueenMark(MarkColour.Unmarked) },
    };

    private static Outcome Decide(SupersedureFound request) => SupersedureFound.Decide(request, Books.Small(), Books.Now);

    /// <summary>Case Q3 of the worked cases: last seen 10 May, an unmarked queen with eggs on 2 Jul.</summary>
    [Fact]
    public void Found_after_weeks()
    {
        var outcome = Decide(Request with { Mark = new QueenMark(MarkColour.White) });
        Expect.Entries(
            outcome, "supersedure-seen colony=12 queen=daughter old=Q12 oldStillThere=false", "inspected colony=12 eggsSeen=true markSeen=unmarked",
            "queen-marked queen=daughter mark=white");
        Assert.Equal(["2026-05-10/2026-07-02", "2026-07-02", "2026-07-02"], outcome.Entries.Select(entry => entry.On.ToString()));
    }

    [Fact]
    public void The_person_knows_whom_she_replaced() => Expect.Entries(
        Decide(Request with { Old = Queen("B"), Look = null }), "supersedure-seen colony=12 queen=daughter old=B oldStillThere=false");

    [Fact]
    public void Herself() => Expect.Refused(Decide(Request with { Queen = Queen("Q12") }), "cannot replace herself", "of-itself queen");

    [Fact]
    public void In_a_colony_and_after_a_queen_nobody_knows() => Expect.Refused(
        Decide(Request with { Colony = Colony("unheard"), Old = Queen("nobody") }), "take one that they know", "not-found colony", "not-found old");

    [Fact]
    public void An_interval_that_runs_backwards() => Expect.Refused(
        Decide(Request with { On = new Occurred(Day("2026-07-02"), Day("2026-07-05")) }), "the earlier day comes first", "day-impossible on");
}
