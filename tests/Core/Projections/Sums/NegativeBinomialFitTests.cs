using ColonyLineage.Projections.Sums;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums;

/// <summary>Fits of the counts of a yard, and growth, against Golden/mites (see its SOURCE.md) and arithmetic.</summary>
public class NegativeBinomialFitTests
{
    private const string Mass = "R 4.2.2, MASS glm.nb";

    [Fact]
    public void Washes_of_one_size()
    {
        var fit = NegativeBinomialFit.Of([.. Rows("mites/washes8.csv").Select(row => (int)row[2])]);
        Near(3, fit.Rate, 1e-12, Mass);
        Near(.562560, fit.K, 5e-7, Mass);
        Near(.396351673335, fit.StandardErrorOfK, 1e-8, "R 4.2.2, MASS theta.ml");
        Near(-17.667187, fit.LogLikelihood, 5e-7, Mass);
    }

    [Fact]
    public void Washes_of_unlike_size()
    {
        var fit = NegativeBinomialFit.Of([.. Rows("mites/washes8_unequal.csv").Select(row => ((int)row[2], row[1] / 100))]);
        Near(.971013988820, fit.Rate, 1e-7, Mass);
        Near(.575209661211, fit.K, 1e-6, Mass);
        Near(.408373837302, fit.StandardErrorOfK, 1e-6, Mass);
        Near(-17.613631282418, fit.LogLikelihood, 1e-8, Mass);
    }

    // Less spread than Poisson's: R's dpois for the likelihood.
    [Fact]
    public void Less_spread_than_chance_is_Poissons()
    {
        var fit = NegativeBinomialFit.Of([2, 3, 1, 2, 4, 2, 3, 1]);
        Assert.Equal((2.25, double.PositiveInfinity, null), (Math.Round(fit.Rate, 12), fit.K, fit.StandardErrorOfK));
        Near(-12.2442704186, fit.LogLikelihood, 1e-9, "R dpois");
        Assert.Equal((0, double.PositiveInfinity, 0), (NegativeBinomialFit.Of([0, 0, 0]).Rate, NegativeBinomialFit.Of([0, 0, 0]).K, NegativeBinomialFit.Of([0, 0, 0]).LogLikelihood));
        Assert.Throws<ArgumentException>(() => NegativeBinomialFit.Of([(3, 0.0)]));
    }

    // Fries et al. 1994, Bee World 75:5; Martin 1998, Ecological Modelling 109:267: r from memory, the rest computed.
    [Fact]
    public void Growth_while_there_is_brood()
    {
        Near(33.0, Growth.Doubling(), .05, "ln 2 / r");
        Near(1.878, Growth.After(1, 30), 5e-4, "exp(30 r)");
        Near(52.3, Growth.DaysUntil(1, 3), .05, "ln 3 / r");
        Assert.Equal(0, Growth.DaysUntil(4, 3));
        Assert.Null(Growth.DaysUntil(0, 3));
        Assert.Null(Growth.DaysUntil(1, 3, aDay: 0));
    }
}
