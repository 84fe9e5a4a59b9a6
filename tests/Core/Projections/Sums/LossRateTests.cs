using ColonyLineage.Projections.Sums;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums;

/// <summary>Rates of loss and how they compare.</summary>
public class LossRateTests
{
    /// <summary>It looks overdispersed, and the beta-binomial sits at rho = 0.</summary>
    private static readonly LostOf[] Boundary = [.. new[] { 0, 1, 2, 5, 40, 0, 3, 12 }.Zip([3, 5, 8, 20, 300, 6, 10, 60], (lost, of) => new LostOf(lost, of))];

    [Fact(DisplayName = "R 4.2.2, glm(family = quasibinomial), and the linearised variance of a ratio")]
    public void Two_rates_and_their_intervals()
    {
        Near(.15291, LossRate.Overall(Boundary), 5e-6, "R");
        Near(.16667, LossRate.Average(Boundary), 5e-6, "R");
        var quasi = LossRate.QuasiBinomial(Boundary)!;
        Near(-1.711937, quasi.Logit, 5e-7, "R glm");
        Near(.140106, quasi.StandardError, 5e-7, "R glm");
        Near(1.04756, quasi.Dispersion, 5e-6, "R glm");
        Near(.12062, quasi.Lower, 5e-6, "R glm");
        Near(.19196, quasi.Upper, 5e-6, "R glm");
        var clustered = LossRate.Clustered(Boundary)!;
        Assert.Equal(7, clustered.Freedom);
        Near(.018371, clustered.StandardError, 5e-7, "R");
        Near(.10947, clustered.Lower, 5e-6, "R");
        Near(.19635, clustered.Upper, 5e-6, "R");
    }

    [Fact]
    public void One_group_has_no_spread_and_no_loss_no_logit()
    {
        Assert.Null(LossRate.QuasiBinomial([new(3, 10)]));
        Assert.Null(LossRate.Clustered([new(3, 10)]));
        Assert.Null(LossRate.QuasiBinomial([new(0, 10), new(0, 5)]));
        Assert.Equal(Proportion.Wilson(3, 10), LossRate.Wilson([new(3, 10)]));
        Assert.Throws<ArgumentException>(() => LossRate.Overall([new(3, 2)]));
    }

    // Gray and Peterson 2014, Strathprints 51903: 158/500; 28/145 against 130/355, p = 0.0001297 as printed.
    [Fact]
    public void Fisher()
    {
        Near(.316, LossRate.Overall([new(28, 145), new(130, 355)]), 1e-12, "Gray and Peterson 2014");
        Near(.00012967, TwoByTwo.Fisher(new(28, 145 - 28, 130, 355 - 130)), 5e-9, "Gray and Peterson 2014, R fisher.test");
        Near(1, TwoByTwo.Fisher(new(3, 3, 3, 3)), 1e-12, "equal rates");
    }

    // Bickel et al. 1975, Science 187:398: admissions to Berkeley by department, men first. 'Lost' is 'admitted' here.
    [Fact]
    public void Mantel_Haenszel()
    {
        Fourfold[] departments = [new(512, 313, 89, 19), new(353, 207, 17, 8), new(120, 205, 202, 391), new(138, 279, 131, 244), new(53, 138, 94, 299), new(22, 351, 24, 317)];
        Near(1.841080, TwoByTwo.Crude(departments), 5e-7, "R");
        var within = TwoByTwo.MantelHaenszel(departments)!;
        Near(.904697, within.Ratio, 5e-7, "R mantelhaen.test");
        Near(.771907, within.Lower, 5e-7, "R mantelhaen.test");
        Near(1.060330, within.Upper, 5e-7, "R mantelhaen.test");
        Assert.Null(TwoByTwo.MantelHaenszel([new(0, 0, 0, 0), new(0, 5, 0, 5)]));
    }

    [Fact]
    public void Beta_binomial_by_herd()
    {
        var herds = Rows("binomial/cbpp.csv").GroupBy(row => row[0]).Select(herd => new LostOf((int)herd.Sum(row => row[1]), (int)herd.Sum(row => row[2]))).ToList();
        var fit = BetaBinomial.Fit(herds);
        Near(1.959273, fit.Alpha, 1e-5, "R VGAM");
        Near(11.987062, fit.Beta, 1e-4, "R VGAM");
        Near(-44.399902, fit.LogLikelihood, 1e-6, "R VGAM");
        Shrunk("binomial/eb_cbpp_by_herd.csv", fit, herds.Count);
    }

    [Fact]
    public void Beta_binomial_by_line()
    {
        var lines = Rows("binomial/line_losses.csv").Select(row => new LostOf((int)row[0], (int)row[1])).ToList();
        var fit = BetaBinomial.Fit(lines);
        Near(3.880276, fit.Alpha, 1e-4, "R VGAM");
        Near(15.698507, fit.Beta, 1e-3, "R VGAM");
        Shrunk("binomial/eb_line_losses.csv", fit, lines.Count);
    }

    [Fact]
    public void Beta_binomial_ends_well_at_rho_0()
    {
        var fit = BetaBinomial.Fit(Boundary);
        Assert.Equal((0, 0), (fit.Rho, fit.Spread));
        Near(63 / 412.0, fit.Mean, 1e-12, "the overall rate");
        // dbinom in R at the overall rate.
        Near(-13.7706222365, fit.LogLikelihood, 1e-9, "R dbinom");
        Assert.Equal(0, BetaBinomial.Fit([new(0, 4), new(0, 9)]).Mean);
    }

    // Constructed: all of one group, none of another; no binomial looks like it.
    [Fact]
    public void Beta_binomial_of_groups_that_are_all_or_nothing_is_wide() => Assert.True(BetaBinomial.Fit([new(9, 10), new(1, 10), new(10, 10), new(0, 10)]).Rho > .5);

    [Fact(DisplayName = "R 4.2.2, p.adjust")]
    public void Many_tests()
    {
        double[] p = [.01, .02, .03, .04, .05];
        foreach (var (expected, here) in new[] { .05, .08, .09, .09, .09 }.Zip(ManyTests.Holm(p))) Near(expected, here, 1e-12, "R p.adjust");
        Assert.All(ManyTests.BenjaminiHochberg(p), here => Near(.05, here, 1e-12, "R p.adjust"));
        // In any order, each stays with its own.
        Assert.Equal(ManyTests.Holm(p).Reverse(), ManyTests.Holm([.. p.Reverse()]));
    }

    private static void Shrunk(string file, BetaBinomial fit, int groups)
    {
        var rows = Rows(file);
        Assert.Equal(groups, rows.Count);
        foreach (var row in rows)
        {
            var (rate, lower, upper) = fit.Shrunk(new((int)row[0], (int)row[1]));
            Near(row[3], rate, 2e-6, "R");
            Near(row[4], lower, 5e-6, "R");
            Near(row[5], upper, 5e-6, "R");
        }
    }
}
