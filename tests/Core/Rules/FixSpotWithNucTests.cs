using ColonyLineage.Entries;
using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class FixSpotWithNucTests
{
    private static FixSpotWithNuc Request => new()
    {
        Act = Act("fix"), On = Day("2026-09-03"), Spot = Spot("M", "4"), Nuc = Colony("N3"), KillQueen = true, Why = "drone layer",
        Frames =
        [
            new FrameShare { To = Colony("40"), Frames = 3, Of = FramesOf.Brood },
            new FrameShare { To = Colony("13"), Frames = 2.5m, Of = FramesOf.Food },
        ],
    };

    private static Outcome Decide(FixSpotWithNuc request) => FixSpotWithNuc.Decide(request, Books.Small(), Books.Now);

    /// <summary>Case Q5 of the worked cases: the colony ends, the nuc stands there in its box; nothing says 'transferred'.</summary>
    [Fact]
    public void The_dud_is_given_up_and_the_nuc_set_on_its_spot() => Expect.Entries(
        Decide(Request),
        "queen-killed colony=12 queen=Q12 why=drone layer",
        "frames-moved colony=12 to=40 frames=3 of=brood",
        "frames-moved colony=12 to=13 frames=2.5 of=food",
        "ended colony=12 why=drone layer",
        "moved colony=N3 to=M/4 from=K/3 above=false");

    [Fact]
    public void The_dud_is_combined_away_and_the_reason_is_kept() => Expect.Entries(
        Decide(Request with { KillQueen = false, Frames = [], CombineInto = Colony("40") }),
        "noted colony=12 text=drone layer about=dud", "combined colony=12 into=40", "moved colony=N3 to=M/4 from=K/3 above=false");

    [Fact]
    public void An_empty_spot() => Expect.Entries(
        Decide(Request with { Spot = Spot("M", "5"), KillQueen = false, Why = null, Frames = [] }), "moved colony=N3 to=M/5 from=K/3 above=false");

    [Fact]
    public void A_dud_that_the_books_have_elsewhere_is_no_nonsense() => Expect.Entries(
        Decide(Request with { Dud = Colony("13"), Frames = [] }),
        "queen-killed colony=13 why=drone layer", "ended colony=13 why=drone layer", "moved colony=N3 to=M/4 from=K/3 above=false");

    [Fact]
    public void Each_history_carries_the_note_once()
    {
        var outcome = Decide(Request with { Note = "rain after it" });
        Assert.Equal(["rain after it", null, null, null, "rain after it"], outcome.Entries.Select(entry => entry.Note));
    }

    [Fact]
    public void No_dud_there_but_something_done_with_it()
    {
        var nobody = Request with { Spot = Spot("M", "5"), KillQueen = false, Why = null, Frames = [] };
        Expect.Refused(Decide(nobody with { KillQueen = true }), "name the dud", "nobody-there spot");
        Expect.Refused(Decide(nobody with { Why = "empty" }), "name the dud", "nobody-there spot");
        Expect.Refused(Decide(nobody with { Frames = Request.Frames }), "name the dud", "nobody-there spot");
        Expect.Refused(Decide(nobody with { CombineInto = Colony("40") }), "name the dud", "nobody-there spot");
    }

    [Fact]
    public void The_nuc_is_the_dud() => Expect.Refused(
        Decide(Request with { Nuc = Colony("12") }), "name the dud, or another nuc", "of-itself nuc");

    [Fact]
    public void Without_a_reason() => Expect.Refused(
        Decide(Request with { Why = null }), "Why is missing: fill it in", "missing why");

    [Fact]
    public void Frames_to_the_dud_itself_and_into_the_unknown() => Expect.Refused(
        Decide(Request with
        {
            Frames = [new FrameShare { To = Colony("12"), Frames = 1, Of = FramesOf.Bees }, new FrameShare { To = Colony("unheard"), Frames = 0, Of = FramesOf.Bees }],
        }),
        "record first how it came", "not-found frames[1].to", "of-itself frames[0].to", "out-of-range frames[1].frames");
}

public sealed class KillAndShareOutTests
{
    private static KillAndShareOut Request => new()
    {
        Act = Act("share out"), On = Day("2026-09-03"), Colony = Colony("13"), KillQueen = false, Why = "laying workers",
        Frames = [new FrameShare { To = Colony("40"), Frames = 4, Of = FramesOf.EmptyComb }],
    };

    private static Outcome Decide(KillAndShareOut request) => KillAndShareOut.Decide(request, Books.Small(), Books.Now);

    [Fact]
    public void No_queen_to_kill() => Expect.Entries(
        Decide(Request), "frames-moved colony=13 to=40 frames=4 of=emptyComb", "ended colony=13 why=laying workers");

    [Fact]
    public void The_queen_is_killed_first() => Expect.Entries(
        Decide(Request with { Colony = Colony("12"), KillQueen = true, Frames = [] }),
        "queen-killed colony=12 queen=Q12 why=laying workers", "ended colony=12 why=laying workers");

    [Fact]
    public void Of_a_colony_nobody_knows() => Expect.Refused(
        Decide(Request with { Colony = Colony("unheard") }), "take one that they know", "not-found colony");
}
