using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class CombineTests
{
    private static Combine Request => new() { Act = Act("combine"), On = Day("2026-09-01"), Colony = Colony("12"), Into = Colony("40") };

    private static Outcome Decide(Combine request) => Combine.Decide(request, Books.Small(), Books.Now);

    [Fact]
    public void One_ends_and_the_other_goes_on() => Expect.Entries(Decide(Request), "combined colony=12 into=40");

    [Fact]
    public void The_queen_of_the_one_that_ends_is_killed() => Expect.Entries(
        Decide(Request with { Killed = KilledQueen.OfTheOneThatEnds }),
        "queen-killed colony=12 queen=Q12", "combined colony=12 into=40 queenKept=Q40");

    [Fact]
    public void The_better_queen_goes_on_with_the_other_colony() => Expect.Entries(
        Decide(Request with { Killed = KilledQueen.OfTheOneThatGoesOn }),
        "queen-killed colony=40 queen=Q40", "combined colony=12 into=40 queenKept=Q12");

    [Fact]
    public void The_persons_word_on_who_goes_on_stands_against_the_books() => Expect.Entries(
        Decide(Request with { Killed = KilledQueen.OfTheOneThatEnds, QueenKept = Queen("Q12") }),
        "queen-killed colony=12", "combined colony=12 into=40 queenKept=Q12");

    [Fact]
    public void With_itself() => Expect.Refused(
        Decide(Request with { Into = Colony("12") }), "cannot be combined with itself", "of-itself into");

    [Fact]
    public void Colonies_and_a_queen_that_the_books_do_not_know() => Expect.Refused(
        Decide(Request with { Colony = Colony("unheard"), Into = Colony("of"), QueenKept = Queen("nobody") }), "record first how it came",
        "not-found colony", "not-found into", "not-found queenKept");

    [Fact]
    public void A_word_that_does_not_exist() => Expect.Refused(
        Decide(Request with { Killed = (KilledQueen)9 }), "Take one of none", "unknown-word killed");
}
