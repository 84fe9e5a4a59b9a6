using ColonyLineage.Projections.Sums.Mixed;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums.Mixed;

/// <summary>The logistic model with a random effect against lme4 1.1-31's glmer (Golden/binomial/SOURCE.md) on cbpp, Lesnoff et al. 2004.</summary>
public class BinomialMixedTests
{
    private const string Source = "R, lme4 glmer";

    [Fact]
    public void With_25_points()
    {
        var fit = Fit(25);
        Assert.True(fit.Converged);
        Near(.647518, fit.Deviation, 1e-5, Source);
        foreach (var (expected, term) in new[] { -1.399230, -.991404, -1.127819, -1.579471 }.Zip(fit.Fixed)) Near(expected, term.Estimate, 1.5e-5, Source);
        // vcov(glmer) by differences: R 4.2.2.
        foreach (var (expected, term) in new[] { .233511, .306768, .326767, .427596 }.Zip(fit.Fixed)) Near(expected, term.StandardError, 2e-3, Source);
        // The same looseness: its own modes agree with these to a few 1e-6.
        Modes("binomial/cbpp_nAGQ25_blup.csv", fit, 2e-5);
    }

    [Fact]
    public void With_one_point_it_is_Laplaces()
    {
        var fit = Fit(1);
        // glmer's table was made with its usual tolerance of 1e-7 in the inner fit, which leaves the modes up to 4e-4 off; with 1e-13 it gives these.
        Modes("binomial/cbpp_nAGQ1_blup.csv", fit, 4e-3);
        Near(.642261430034, fit.Deviation, 1e-6, "R, lme4 glmer, tolPwrss 1e-13");
        foreach (var (expected, term) in new[] { -1.39853214384, -.992332682688, -1.12867203803, -1.58031390231 }.Zip(fit.Fixed)) Near(expected, term.Estimate, 2e-6, "R, lme4 glmer, tolPwrss 1e-13");
        Near(-92.0262818715, fit.LogLikelihood, 1e-8, "R, lme4 glmer, tolPwrss 1e-13");
    }

    [Fact]
    public void Boundary_cases_end_well()
    {
        // No more spread than chance makes: the deviation is nothing.
        var alike = BinomialMixed.Fit([.. Enumerable.Range(0, 6).Select(group => new Share(group, 5, 10, [1]))], ["mean"]);
        Near(0, alike.Deviation, 1e-3, "by hand");
        Near(0, alike.Fixed[0].Estimate, 1e-6, "by hand");
        Assert.Throws<SeparatedException>(() => BinomialMixed.Fit([new(0, 0, 10, [1]), new(1, 0, 10, [1])], ["mean"]));
        Assert.Throws<SeparatedException>(() => BinomialMixed.Fit([new(0, 0, 10, [1, 0]), new(1, 10, 10, [1, 1]), new(2, 0, 8, [1, 0]), new(3, 9, 9, [1, 1])], ["mean", "other"]));
    }

    private static BinomialMixed Fit(int points)
    {
        var table = new Table("binomial/cbpp.csv");
        var period = table.Texts("period");
        return BinomialMixed.Fit(
            [.. Enumerable.Range(0, table.Count).Select(i => new Share((int)table.Numbers("herd")[i] - 1, (int)table.Numbers("incidence")[i], (int)table.Numbers("size")[i], [1, period[i] == "2" ? 1 : 0, period[i] == "3" ? 1 : 0, period[i] == "4" ? 1 : 0]))],
            ["mean", "period 2", "period 3", "period 4"], points);
    }

    private static void Modes(string file, BinomialMixed fit, double relative)
    {
        var table = new Table(file);
        Assert.Equal(table.Count, fit.Groups.Count);
        for (var i = 0; i < table.Count; i++)
        {
            var group = int.Parse(table.Texts("grp")[i]) - 1;
            Near(table.Numbers("condval")[i], fit.Groups[group].Mode, relative * Math.Max(.1, Math.Abs(table.Numbers("condval")[i])), Source);
            Near(table.Numbers("condsd")[i], fit.Groups[group].StandardError, relative, Source);
        }
    }
}
