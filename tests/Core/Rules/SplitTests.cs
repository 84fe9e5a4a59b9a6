using ColonyLineage.Entries;
using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class SplitTests
{
    private static Split Request => new()
    {
        Act = Act("split"), On = Day("2026-05-02"), Makers = [new Maker { Colony = Colony("40"), FramesOfBees = 3, FramesOfBrood = 2 }],
        Colony = Colony("N9"), Number = "N9", IsNuc = true, At = Spot("K", "5"), Housing = Housing.NucBox,
    };

    private static Outcome Decide(Split request) => Split.Decide(request, Books.Small(), Books.Now);

    [Fact]
    public void A_nuc_of_one_colony() => Expect.Entries(
        Decide(Request),
        "colony-established colony=N9 number=N9 how=nuc at=K/5 above=false housing=nucBox framesOfBees=3 framesOfBrood=2",
        "split-from colony=40 into=N9 framesOfBees=3 framesOfBrood=2");

    [Fact]
    public void Of_two_makers_with_a_grafted_cell() => Expect.Entries(
        Decide(Request with
        {
            Makers = [new Maker { Colony = Colony("40"), FramesOfBrood = 2 }, new Maker { Colony = Colony("12") }], At = null, Housing = null, IsNuc = false,
            Cell = new Cell { Queen = Queen("virgin"), Batch = "May 1", Mother = Queen("B"), Grafted = Day("2026-04-22") },
        }),
        "colony-established colony=N9 number=N9 how=split above=false",
        "split-from colony=40 into=N9 framesOfBrood=2",
        "split-from colony=12 into=N9",
        "queen-raised queen=virgin mother=B motherIs=known from=graft grafted=2026-04-22 batch=May 1",
        "queen-cell-given colony=N9 queen=virgin batch=May 1");

    [Fact]
    public void The_old_queen_goes_with_it() => Assert.Contains(
        "queen=Q40", Tell(Decide(Request with { Queen = Queen("Q40") }).Entries[0]), StringComparison.Ordinal);

    [Fact]
    public void Ids_that_are_not_given_are_derived_and_stay_the_same()
    {
        var request = Request with { Colony = null, Cell = new Cell() };
        var (once, again) = (Decide(request), Decide(request));
        var colony = Assert.IsType<ColonyEstablished>(once.Entries[0]).Colony;
        Assert.Equal(colony, Assert.IsType<SplitFrom>(once.Entries[1]).Into);
        Assert.Equal(once.Entries.Select(EntryJson.Write), again.Entries.Select(EntryJson.Write));
        Assert.NotEqual(colony, Assert.IsType<ColonyEstablished>(Decide(request with { Act = Act("another split") }).Entries[0]).Colony);
    }

    [Fact]
    public void Of_nothing() => Expect.Refused(Decide(Request with { Makers = [] }), "at least one colony", "missing makers");

    [Fact]
    public void Of_the_same_maker_twice() => Expect.Refused(
        Decide(Request with { Makers = [Request.Makers[0], Request.Makers[0]] }), "take one of the two out", "named-twice makers[1].colony");

    [Fact]
    public void Of_itself() => Expect.Refused(
        Decide(Request with { Makers = [new Maker { Colony = Colony("N9") }] }), "cannot be made out of itself", "of-itself makers[0].colony");

    [Fact]
    public void Bounds_stand_at_the_fields_of_the_request() => Expect.Refused(
        Decide(Request with { Number = " ", Makers = [new Maker { Colony = Colony("40"), FramesOfBrood = 41 }], Cell = new Cell { Batch = new string('x', 61) } }),
        "Number is missing: fill it in", "missing number", "out-of-range framesOfBrood", "out-of-range makers[0].framesOfBrood", "too-long cell.batch");

    [Fact]
    public void Where_nothing_is_known() => Expect.Refused(
        Decide(Request with { Makers = [new Maker { Colony = Colony("unheard") }], At = Spot("nowhere", "1"), Cell = new Cell { Mother = Queen("nobody") } }),
        "record first how it came", "not-found at", "not-found makers[0].colony", "not-found cell.mother");
}
