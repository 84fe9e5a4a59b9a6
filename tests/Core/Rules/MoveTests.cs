using ColonyLineage.Entries;
using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class MoveColoniesTests
{
    private static MoveColonies Request => new() { Act = Act("move"), On = Day("2026-09-01") };

    private static Outcome Decide(MoveColonies request) => MoveColonies.Decide(request, Books.Small(), Books.Now);

    [Fact]
    public void One_by_one_from_where_the_books_have_them() => Expect.Entries(
        Decide(Request with
        {
            Moves =
            [
                new ColonyMove { Colony = Colony("N3"), To = Spot("M", "9") },
                new ColonyMove { Colony = Colony("Z"), To = Spot("M", "7"), Above = true },
                new ColonyMove { Colony = Colony("12"), To = Spot("P", "1"), From = Spot("M", "5") },
            ],
        }),
        "moved colony=N3 to=M/9 from=K/3 above=false", "moved colony=Z to=M/7 above=true", "moved colony=12 to=P/1 from=M/5 above=false");

    /// <summary>Case S3 of the worked cases: the colonies keep the numbers of their spots, and the one above stays above.</summary>
    [Fact]
    public void A_whole_yard() => Expect.Entries(
        Decide(Request with { WholeYard = new YardMove(Yard("M"), Yard("P")) }),
        "moved colony=12 to=P/4 from=M/4 above=false", "moved colony=40 to=P/7 from=M/7 above=false",
        "moved colony=A1 to=P/7 from=M/7 above=true", "moved colony=13 to=P/10 from=M/10 above=false");

    [Fact]
    public void A_whole_yard_but_one() => Expect.Entries(
        Decide(Request with
        {
            Moves = [new ColonyMove { Colony = Colony("40"), To = Spot("K", "1") }, new ColonyMove { Colony = Colony("A1"), To = Spot("K", "2") }],
            WholeYard = new YardMove(Yard("M"), Yard("P")),
        }),
        "moved colony=40 to=K/1 from=M/7 above=false", "moved colony=A1 to=K/2 from=M/7 above=false",
        "moved colony=12 to=P/4 from=M/4 above=false", "moved colony=13 to=P/10 from=M/10 above=false");

    [Fact]
    public void Onto_the_spot_where_the_books_have_it_already() => Expect.Entries(
        Decide(Request with { Moves = [new ColonyMove { Colony = Colony("12"), To = Spot("M", "4") }] }), "moved colony=12 to=M/4 above=false");

    [Fact]
    public void From_a_spot_to_the_same() => Expect.Refused(
        Decide(Request with { Moves = [new ColonyMove { Colony = Colony("12"), To = Spot("M", "4"), From = Spot("M", "4") }] }),
        "name another spot", "of-itself moves[0].to");

    [Fact]
    public void Twice_in_one_act() => Expect.Refused(
        Decide(Request with { Moves = [new ColonyMove { Colony = Colony("12"), To = Spot("M", "1") }, new ColonyMove { Colony = Colony("12"), To = Spot("M", "2") }] }),
        "take one of the two out", "named-twice moves[1].colony");

    [Fact]
    public void A_yard_to_itself() => Expect.Refused(
        Decide(Request with { WholeYard = new YardMove(Yard("M"), Yard("M")) }), "name another yard",
        "of-itself wholeYard.to");

    [Fact]
    public void A_yard_where_nobody_stands() => Expect.Refused(
        Decide(Request with { WholeYard = new YardMove(Yard("P"), Yard("M")) }), "another yard or another day", "nobody-there wholeYard.from");

    [Fact]
    public void Yards_that_the_books_do_not_know() => Expect.Refused(
        Decide(Request with { WholeYard = new YardMove(Yard("nowhere"), new YardId(Guid.Empty)) }), "take one that they know", "not-found wholeYard.from");

    [Fact]
    public void Nothing() => Expect.Refused(Decide(Request), "name at least one thing", "empty-act");
}

public sealed class TransferNucsTests
{
    private static TransferNucs Request => new() { Act = Act("transfer"), On = Day("2026-06-07"), Nucs = [Colony("N3"), Colony("A1")] };

    private static Outcome Decide(TransferNucs request) => TransferNucs.Decide(request, Books.Small(), Books.Now);

    [Fact]
    public void One_for_each_nuc() => Expect.Entries(
        Decide(Request), "nuc-transferred colony=N3 into=single", "nuc-transferred colony=A1 into=single");

    [Fact]
    public void A_nuc_named_twice_and_one_unknown() => Expect.Refused(
        Decide(Request with { Nucs = [Colony("N3"), Colony("N3"), Colony("unheard"), default] }), "take one of the two out",
        "named-twice nucs[1]", "not-found nucs[2]", "no-id nucs[3]");

    [Fact]
    public void A_housing_that_does_not_exist() => Expect.Refused(
        Decide(Request with { Into = (Housing)77 }), "take one of matingNuc", "unknown-word into");
}
