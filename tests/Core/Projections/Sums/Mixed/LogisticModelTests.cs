using ColonyLineage.Projections.Sums.Mixed;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums.Mixed;

/// <summary>
/// The restricted logistic model with two crossed effects against glmmTMB 1.1.5 (R 4.2.2, REML = TRUE) on Golden/binomial/two_effects.csv, and with one on cbpp, Lesnoff et al. 2004. Its
/// search ends with a tolerance of its own ('singular convergence'): variances to 1e-3 of themselves, the likelihood to 1e-6.
/// </summary>
public class LogisticModelTests
{
    private const string Source = "R, glmmTMB, REML = TRUE";
    private static readonly Table Two = new("binomial/two_effects.csv");

    [Fact]
    public void Two_crossed_effects()
    {
        var fit = Fit([RandomEffect.Of("mother", Two.Texts("mother")), RandomEffect.Of("ys", Two.Texts("ys"))]);
        Assert.True(fit.Converged);
        Near(-60.8306719, fit.LogLikelihood, 1e-6, Source);
        Near(.2450504526, fit.Variance(0), 1e-3 * .245, Source);
        Near(1.143663396, fit.Variance(1), 1e-3 * 1.144, Source);
        double[] terms = [-.69260558583, .66754479878, .86562235342, -.08597726136, .17354515461];
        foreach (var (expected, term) in terms.Zip(fit.Fixed())) Near(expected, term.Estimate, 1e-4, Source);
        double[] mothers = [.007104194474, -.051088671795, .102940777842, -.058956300521, -.194906673473, .019264773528];
        foreach (var (expected, mother) in mothers.Zip(fit.Predictions(0))) Near(expected, mother.Blup, 2e-4, Source);
        double[] places = [-.05058737199, .51611777322, -.17377380871, -.06420140355, -.73322174118, 1.24024577198, .65355158578, -1.38813080556];
        foreach (var (expected, place) in places.Zip(fit.Predictions(1))) Near(expected, place.Blup, 3e-4, Source);
    }

    [Fact]
    public void One_effect()
    {
        var fit = Fit([RandomEffect.Of("mother", Two.Texts("mother"))]);
        Near(-64.18317583, fit.LogLikelihood, 1e-6, Source);
        Near(.3266591243, fit.Variance(0), 1e-3 * .327, Source);
    }

    /// <summary>Cows and herds, a record for each cow. The likelihood of the counts has their binomial coefficients beside it.</summary>
    [Fact]
    public void Lesnoff_2004()
    {
        var table = new Table("binomial/cbpp.csv");
        var cows = Enumerable.Range(0, table.Count).SelectMany(i => Enumerable.Range(0, (int)table.Numbers("size")[i]).Select(cow => (Herd: table.Texts("herd")[i], Period: table.Texts("period")[i], Ill: cow < table.Numbers("incidence")[i] ? 1.0 : 0))).ToList();
        var fit = new LogisticModel([.. cows.Select(cow => cow.Ill)], FixedPart.Mean(cows.Count).With("period", [.. cows.Select(cow => cow.Period)]), [RandomEffect.Of("herd", [.. cows.Select(cow => cow.Herd)])]).Fit();
        var coefficients = Enumerable.Range(0, table.Count).Sum(i => MathNet.Numerics.SpecialFunctions.BinomialLn((int)table.Numbers("size")[i], (int)table.Numbers("incidence")[i]));
        Near(-93.1990671, fit.LogLikelihood + coefficients, 1e-6, Source);
        Near(.6818672786, Math.Sqrt(fit.Variance(0)), 5e-4, Source);
        double[] terms = [-1.3670151939, -.9693482891, -1.1044541242, -1.5518862716];
        foreach (var (expected, term) in terms.Zip(fit.Fixed())) Near(expected, term.Estimate, 2e-4, Source);
    }

    /// <summary>Lines with a wide variance that is given are next to fixed: their differences are those of fixed lines, and have an error where none of a line was lost.</summary>
    [Fact]
    public void Lines_with_a_given_variance()
    {
        var (lines, mothers) = (Two.Texts("line"), RandomEffect.Of("mother", Two.Texts("mother")));
        var line = RandomEffect.Of("line", lines);
        var part = FixedPart.Mean(Two.Count).With("age", Two.Numbers("age"));
        var wide = new LogisticModel(Two.Numbers("lost"), part, [line with { GivenVariance = 1e4 }, mothers]).Fit();
        var asFixed = Fit([mothers]);
        var contrast = wide.CombineLevels([1, -1, 0, 0]);
        Near(-asFixed.Fixed().Single(term => term.Name == "line L2").Estimate, contrast.Value, 1e-3, "fixed lines");
        Near(asFixed.Fixed().Single(term => term.Name == "line L2").StandardError, contrast.StandardError, .05, "fixed lines; theirs has no correction for estimated variances");
        Assert.InRange(contrast.Freedom, 3, 60);
        // The same by the columns of fixed lines: age is the first column.
        var byColumn = asFixed.Combine([0, -1, 0, 0])!;
        Near(byColumn.Value, contrast.Value, 1e-3, "fixed lines");
        Near(byColumn.StandardError, contrast.StandardError, 2e-3, "fixed lines");
        Near(byColumn.Freedom, contrast.Freedom, .02 * contrast.Freedom, "fixed lines");
        Assert.Equal(["mother", "residual"], wide.Components().Select(one => one.Name));

        double[] none = [.. Two.Numbers("lost").Select((lost, i) => lines[i] == "L1" ? 0 : lost)];
        var separated = new LogisticModel(none, part, [line with { GivenVariance = 9 }, mothers]).Fit().CombineLevels([1, -1, 0, 0]);
        Assert.InRange(separated.Value, -9, -1);
        Assert.InRange(separated.StandardError, .5, 5);
    }

    [Fact]
    public void Boundary_cases_end_well()
    {
        string[] groups = [.. Enumerable.Range(0, 40).Select(i => $"g{i % 4}")];
        double[] even = [.. Enumerable.Range(0, 40).Select(i => (double)(i / 4 % 2))];
        var alike = new LogisticModel(even, FixedPart.Mean(40), [RandomEffect.Of("group", groups)]).Fit();
        Assert.Equal(0, alike.Variance(0));
        Near(0, alike.Fixed()[0].Estimate, 1e-9, "by hand");
        Assert.All(alike.Predictions(0), group => Assert.Equal((0, 0, 0), (group.Blup, group.StandardError, group.Reliability)));
        Assert.Throws<SeparatedException>(() => new LogisticModel(new double[40], FixedPart.Mean(40), [RandomEffect.Of("group", groups)]).Fit());
        Assert.Throws<SeparatedException>(() => new LogisticModel(even, FixedPart.By([.. even.Select(one => $"{one}")]), [RandomEffect.Of("group", groups)]).Fit());
        Assert.Throws<ArgumentException>(() => new LogisticModel([0, .5], FixedPart.Mean(2), [RandomEffect.Of("group", ["a", "b"])]));
    }

    private static LogisticFit Fit(RandomEffect[] effects) =>
        new LogisticModel(Two.Numbers("lost"), FixedPart.Mean(Two.Count).With("age", Two.Numbers("age")).With("line", Two.Texts("line")), effects).Fit();
}
