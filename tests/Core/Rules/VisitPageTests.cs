using ColonyLineage.Entries;
using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class VisitPageTests
{
    private static VisitPage Page(params PageRow[] rows) => new() { Act = Act("page"), On = Day("2026-08-05"), Yard = Yard("M"), Rows = rows };

    private static Outcome Decide(params PageRow[] rows) => VisitPage.Decide(Page(rows), Books.Small(), Books.Now);

    [Fact]
    public void A_full_page() => Expect.Entries(
        Decide(
            new PageRow { Spot = "4", Look = new Look { FramesOfBees = 9, FramesOfBrood = 5.5m, Queen = QueenFinding.Seen, MarkSeen = new QueenMark(MarkColour.Blue) } },
            new PageRow { Spot = "5", Look = new Look(), Wash = new WashCount(), Dose = new Dose(), Feed = new Feeding() },
            new PageRow
            {
                Spot = "7", Look = new Look { Heft = Heft.Light, Signs = ["chalky brood?"] }, Wash = new WashCount { Mites = 5, Bees = 100, Method = WashMethod.Alcohol },
                Dose = new Dose { Course = "T", Doses = 1 }, Feed = new Feeding { Feed = "syrup 2:1", Amount = new Quantity(4, "L") }, SupersPutOn = 2, Note = "lid cracked",
            },
            new PageRow { Spot = "10", Dead = true, Cause = "starved, perhaps" },
            new PageRow { Colony = Colony("A1"), Look = new Look(), Note = "look again" }),
        "inspected colony=12 framesOfBees=9 framesOfBrood=5.5 queen=seen markSeen=blue",
        "inspected colony=40 heft=light signs=chalky brood?",
        "washed colony=40 mites=5 bees=100 beesEstimated=false method=alcohol",
        "treated colony=40 course=T doses=1",
        "fed colony=40 feed=syrup 2:1 amount=4,L",
        "supered colony=40 supers=2",
        "noted colony=40 text=lid cracked",
        "found-dead colony=13 cause=starved, perhaps",
        "noted colony=A1 text=look again");

    [Fact]
    public void Dead_and_dosed_is_kept_as_the_contradiction_that_it_is() => Expect.Entries(
        Decide(new PageRow { Spot = "4", Dead = true, Dose = new Dose { Course = "T", Doses = 1 } }), "found-dead colony=12", "treated colony=12 course=T doses=1");

    [Fact]
    public void An_empty_spot_by_row_and_field_and_nothing_of_the_page_is_kept() => Expect.Refused(
        Decide(new PageRow { Spot = "4", Note = "fine" }, new PageRow { Spot = "6", Note = "fine" }), "name the colony, or record first how it came there",
        "nobody-there rows[1].spot");

    [Fact]
    public void A_spot_twice() => Expect.Refused(
        Decide(new PageRow { Spot = "4", Note = "fine" }, new PageRow { Spot = "4", Dead = true }), "take one of the two out", "named-twice rows[1].spot");

    [Fact]
    public void Every_bad_cell_is_named() => Expect.Refused(
        Decide(
            new PageRow { Spot = "4", Look = new Look { Temper = 6 }, Wash = new WashCount { Mites = 3 }, Feed = new Feeding { Amount = new Quantity(1, "bucket") } },
            new PageRow { Spot = " ", Note = "which?" },
            new PageRow { Spot = "7", Wash = new WashCount { Bees = 0 }, SupersPutOn = 0, Note = new string('x', 4001) },
            new PageRow { Spot = "10", Wash = new WashCount { Mites = -1, Bees = 0 }, Cause = "cold" }),
        "how many bees",
        "missing rows[0].wash.bees", "missing rows[1].spot", "missing rows[2].wash.mites", "missing rows[3].dead",
        "out-of-range rows[0].look.temper", "missing rows[0].feed.feed", "unknown-unit rows[0].feed.amount",
        "out-of-range rows[2].supersPutOn", "too-long rows[2].note", "out-of-range rows[3].wash.mites", "out-of-range rows[3].wash.bees");

    [Fact]
    public void A_blank_page() => Expect.Refused(Decide(new PageRow { Spot = "4" }, new PageRow()), "nothing to record", "empty-act");
}
