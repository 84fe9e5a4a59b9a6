using ColonyLineage.Entries;
using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class RequeenYardTests
{
    private static RequeenYard Request => new()
    {
        Act = Act("requeen"), On = Day("2026-08-20"), Yard = Yard("M"),
        Raised = new RaisedBatch { Mother = Queen("B"), From = RaisedFrom.Graft, Grafted = Day("2026-07-01"), Batch = "July 1" },
        Rows =
        [
            new RequeenRow { Spot = "4", Queen = Queen("new 1"), Name = "26-1", Mark = new QueenMark(MarkColour.White, "1"), OldQueen = OldQueen.Killed },
            new RequeenRow { Spot = "10", Queen = Queen("QN"), OldQueen = OldQueen.NoneThere },
        ],
    };

    private static Outcome Decide(RequeenYard request) => RequeenYard.Decide(request, Books.Small(), Books.Now);

    [Fact]
    public void New_queens_are_raised_marked_and_given_and_known_ones_only_given() => Expect.Entries(
        Decide(Request),
        "queen-raised queen=new 1 name=26-1 mother=B motherIs=known from=graft grafted=2026-07-01 batch=July 1",
        "queen-marked queen=new 1 mark=white,1",
        "requeened colony=12 queen=new 1 oldQueen=killed old=Q12",
        "requeened colony=13 queen=QN oldQueen=noneThere");

    [Fact]
    public void Bought() => Expect.Entries(
        Decide(Request with { Rows = [Request.Rows[0] with { Mark = null }], Raised = null, Bought = new BoughtBatch { Seller = "a neighbour", Born = Day("2026-07-30") } }),
        "queen-bought queen=new 1 name=26-1 seller=a neighbour born=2026-07-30", "requeened colony=12 queen=new 1 oldQueen=killed old=Q12");

    [Fact]
    public void Nobody_knows_where_from() => Expect.Entries(
        Decide(Request with { Rows = [Request.Rows[0] with { Mark = null }], Raised = null }),
        "queen-raised queen=new 1 name=26-1 motherIs=unknown from=unknown", "requeened colony=12 queen=new 1 oldQueen=killed old=Q12");

    [Fact]
    public void Where_the_person_found_none_the_books_are_not_asked_who_was_there() => Expect.Entries(
        Decide(Request with { Rows = [new RequeenRow { Spot = "4", Queen = Queen("QN"), OldQueen = OldQueen.NoneThere }] }),
        "requeened colony=12 queen=QN oldQueen=noneThere");

    [Fact]
    public void The_colony_above_is_named() => Expect.Entries(
        Decide(Request with { Rows = [new RequeenRow { Spot = "7", Colony = Colony("A1"), Queen = Queen("QN"), OldQueen = OldQueen.NotFound }] }),
        "requeened colony=A1 queen=QN oldQueen=notFound");

    [Fact]
    public void Each_colony_gets_a_queen_of_its_own_where_no_id_is_given()
    {
        var outcome = Decide(Request with { Rows = [.. Request.Rows.Select(row => row with { Queen = null })] });
        Assert.Equal(2, outcome.Entries.OfType<Requeened>().Select(entry => entry.Queen).Distinct().Count());
    }

    [Fact]
    public void On_an_empty_spot_and_on_none() => Expect.Refused(
        Decide(Request with { Rows = [Request.Rows[0] with { Spot = "99" }, Request.Rows[1] with { Spot = null }] }), "nobody stands on spot 99",
        "nobody-there rows[0].spot", "missing rows[1].spot");

    [Fact]
    public void The_same_colony_and_the_same_queen_twice() => Expect.Refused(
        Decide(Request with { Rows = [Request.Rows[0], Request.Rows[0]] }), "take one of the two out",
        "named-twice rows[1].spot", "named-twice rows[1].queen");

    [Fact]
    public void Raised_and_bought() => Expect.Refused(
        Decide(Request with { Bought = new BoughtBatch() }), "raised or bought, not both", "named-twice bought");

    [Fact]
    public void Days_to_come() => Expect.Refused(
        Decide(Request with { Raised = new RaisedBatch { Born = Day("2026-10-01"), Grafted = Day("2026-09-20") } }), "today is 2026-09-10",
        "day-in-future raised.born", "day-in-future raised.grafted");

    [Fact]
    public void After_herself() => Expect.Refused(
        Decide(Request with { Rows = [Request.Rows[0] with { Queen = Queen("Q12") }] }), "cannot follow herself", "of-itself rows[0].queen");
}
