using ColonyLineage.Entries;
using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class TreatYardTests
{
    private static TreatYard Request => new()
    {
        Act = Act("treat"), On = Day("2026-08-05"), By = "Ro", FirstOrder = 30, Yard = Yard("M"), Except = ["4"], Dose = new Dose { Course = "T", Doses = 0.5m },
    };

    private static Outcome Decide(TreatYard request) => TreatYard.Decide(request, Books.Small(), Books.Now);

    [Fact]
    public void Half_a_dose_on_all_but_one_spot()
    {
        var outcome = Decide(Request);
        Expect.Entries(outcome, "treated colony=40 course=T doses=0.5", "treated colony=A1 course=T doses=0.5", "treated colony=13 course=T doses=0.5");
        Assert.Equal([30, 31, 32], outcome.Entries.Select(entry => entry.Order));
        Assert.All(outcome.Entries, entry => Assert.Equal("Ro", entry.By));
    }

    [Fact]
    public void The_colony_above_is_left_out_with_its_spot() => Expect.Entries(
        Decide(Request with { Except = ["7", "10"] }), "treated colony=12 course=T doses=0.5");

    [Fact]
    public void But_a_spot_where_nobody_stands() => Expect.Refused(
        Decide(Request with { Except = ["4", "40"] }), "mend the number", "nobody-there except[1]");

    [Fact]
    public void All_but_all() => Expect.Refused(Decide(Request with { Except = ["4", "7", "10"] }), "nothing to record", "empty-act");

    [Fact]
    public void In_an_empty_yard() => Expect.Refused(Decide(Request with { Yard = Yard("P") }), "another yard or another day", "nobody-there yard");

    [Fact]
    public void In_no_yard() => Expect.Refused(Decide(Request with { Yard = default }), "Say which yard", "no-id yard");

    [Fact]
    public void In_a_yard_nobody_knows() => Expect.Refused(Decide(Request with { Yard = Yard("nowhere") }), "take one that they know", "not-found yard");

    [Fact]
    public void A_dose_in_a_unit_nobody_knows_is_refused_once_for_the_yard() => Expect.Refused(
        Decide(Request with { Dose = new Dose { Course = "", Doses = 5, Amount = new Quantity(1, "spoon") } }), "Course is missing: fill it in",
        "missing dose.course", "out-of-range dose.doses", "unknown-unit dose.amount");

    [Fact]
    public void No_dose_said() => Expect.Refused(Decide(Request with { Dose = new Dose { Course = "T" } }), "0.5 for half", "missing dose.doses");

    [Fact]
    public void What_is_wrong_with_the_whole_act_is_named_without_a_path() => Expect.Refused(
        Decide(Request with { By = "Ro\u0007", Note = new string('x', 4001), Act = default, Visit = new VisitId(Guid.Empty) }), "say which one",
        "no-id act", "no-id visit", "not-readable by", "too-long note");

    [Theory]
    [InlineData(-1)]
    [InlineData(999_999)]
    [InlineData(int.MaxValue)]
    public void Places_in_the_day_outside_of_their_bounds(int first) => Expect.Refused(
        Decide(Request with { FirstOrder = first }), "from 0 to 1000000", Decide(Request with { FirstOrder = first }).Refusals.Select(_ => "out-of-range firstOrder").ToArray());

    [Fact]
    public void Tomorrow_is_allowed_and_the_day_after_is_not()
    {
        Assert.False(Decide(Request with { On = Day("2026-09-11") }).IsRefused);
        Expect.Refused(Decide(Request with { On = Day("2026-09-12") }), "2026-09-12 has not come yet", "day-in-future on");
    }
}
