using ColonyLineage.Projections.Sums;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums;

/// <summary>Survival, against published data worked out in R 4.2.2 with survival 3.5-3.</summary>
public class SurvivalTests
{
    private const string Freireich = "Freireich et al. 1963, Blood 21:699, in R survival";
    private static readonly Life[] Treated =
    [
        .. new[] { 6, 6, 6, 7, 10, 13, 16, 22, 23 }.Select(week => new Life(0, week, true)),
        .. new[] { 6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35 }.Select(week => new Life(0, week, false)),
    ];

    private static readonly Life[] Controls = [.. new[] { 1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23 }.Select(week => new Life(0, week, true))];

    [Fact]
    public void Product_limit()
    {
        var curve = Survival.KaplanMeier(Treated);
        Assert.Equal([6, 7, 10, 13, 16, 22, 23], curve.Select(step => step.At));
        Assert.Equal([21, 17, 15, 12, 11, 7, 6], curve.Select(step => step.AtRisk));
        foreach (var (expected, step) in new[] { .857143, .806723, .752941, .690196, .627451, .537815, .448179 }.Zip(curve)) Near(expected, step.Share, 5e-7, Freireich);
        Near(.096349653, curve[2].StandardError, 1e-8, Freireich);
        Near(.134591457, curve[6].StandardError, 1e-8, Freireich);
        Assert.Equal((23, 8), (Survival.Median(curve), Survival.Median(Survival.KaplanMeier(Controls))));
        Assert.Equal((1, curve[1].Share), (Survival.ShareAt(curve, 5.9), Survival.ShareAt(curve, 9)));
    }

    [Theory]
    [InlineData(SurvivalScale.Plain, .564099, .941783)]
    [InlineData(SurvivalScale.Log, .585919, .967575)]
    [InlineData(SurvivalScale.LogLog, .503200, .889362)]
    public void Intervals_at_ten_weeks(SurvivalScale scale, double lower, double upper)
    {
        var step = Survival.KaplanMeier(Treated, scale)[2];
        Near(lower, step.Lower, 1e-6, Freireich);
        Near(upper, step.Upper, 1e-6, Freireich);
    }

    [Fact]
    public void Log_rank()
    {
        var (chi, p, first, second) = Survival.LogRank(Treated, Controls)!.Value;
        Near(16.792941, chi, 1e-6, Freireich);
        Near(19.250501, first, 1e-6, Freireich);
        Near(10.749499, second, 1e-6, Freireich);
        Near(4.16881e-5, p, 1e-9, Freireich);
        Assert.Null(Survival.LogRank([new Life(0, 1, false)], [new Life(0, 1, false)]));
    }

    // Queens bought at an age above 0. To ignore the entry would give .875 at once.
    [Fact]
    public void Late_entry()
    {
        var curve = Survival.KaplanMeier([new(0, 5, true), new(0, 14, true), new(0, 20, false), new(6, 18, true), new(12, 24, true), new(12, 13, false), new(0, 30, false), new(3, 9, true)]);
        Assert.Equal([5, 9, 14, 18, 24], curve.Select(step => step.At));
        foreach (var (expected, step) in new[] { .8, .64, .512, .384, .192 }.Zip(curve)) Near(expected, step.Share, 1e-12, "R survival");
        Near(.0104301384, curve[4].Lower, 1e-9, "R survival, log-log");
        Near(.5505554318, curve[4].Upper, 1e-9, "R survival, log-log");
    }

    [Fact]
    public void Once_none_lives_on_there_is_no_interval()
    {
        var last = Survival.KaplanMeier(Controls)[^1];
        Assert.Equal((0, null, null, null), (last.Share, last.StandardError, last.Lower, last.Upper));
        Assert.Throws<ArgumentException>(() => Survival.KaplanMeier([new Life(3, 3, true)]));
    }

    // Superseded, or the colony lost.
    [Fact]
    public void Competing_ends()
    {
        string?[] how = ["superseded", "lost", null, "superseded", "lost", null, null, "superseded", "superseded", "lost"];
        var steps = CompetingEnds.AalenJohansen([.. new[] { 4, 6, 7, 9, 10, 12, 15, 15, 18, 20 }.Zip(how, (at, way) => new EndedLife(0, at, way))]);
        foreach (var (at, share) in new[] { (4, .1), (9, .2142857143), (15, .3571428571), (18, .5714285714) }) Near(share, CompetingEnds.ShareAt(steps, "superseded", at), 1e-9, "R survival, Aalen–Johansen");
        foreach (var (at, share) in new[] { (6, .1), (10, .2142857143), (20, .4285714286) }) Near(share, CompetingEnds.ShareAt(steps, "lost", at), 1e-9, "R survival, Aalen–Johansen");
        Assert.Equal(7, steps.Count);
    }
}
