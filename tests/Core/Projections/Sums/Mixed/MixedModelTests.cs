using ColonyLineage.Projections.Sums.Mixed;
using MathNet.Numerics.LinearAlgebra;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums.Mixed;

/// <summary>REML and BLUP against closed forms and Fisher scoring to convergence (Golden/mixed-model/SOURCE.md), all to 1e-6 of themselves.</summary>
public class MixedModelTests
{
    private const double Within = 1e-6;
    private const string Source = "Golden/mixed-model/SOURCE.md";

    [Theory]
    [InlineData("Penicillin", "diameter", "plate sample", 330.860589)]
    [InlineData("Pastes", "strength", "batch batch:cask", 246.990746)]
    public void Davies_and_Goldsmith_1972(string name, string trait, string random, double criterion)
    {
        var fit = Fit(new Table($"mixed-model/{name}.csv"), trait, random.Split(' '));
        Variances(fit, $"mixed-model/{name}_exact_varcomp.csv");
        FixedTerms(fit, $"mixed-model/{name}_exact_fixed.csv");
        Predictions(fit, $"mixed-model/{name}_exact_blup_pev.csv");
        Near(criterion, fit.RemlCriterion, 5e-7, Source);
    }

    // By hand: balanced, so the analysis of variance gives the same; (11271.5 − 2451.25) / 5.
    [Fact]
    public void Dyestuff()
    {
        var fit = Fit(new Table("mixed-model/Dyestuff.csv"), "Yield", ["Batch"]);
        Relative(1764.05, fit.Components()[0].Variance);
        Relative(2451.25, fit.Components()[1].Variance);
        Relative(1527.5, fit.Fixed()[0].Estimate);
        Near(19.383412, fit.Fixed()[0].StandardError, 5e-7, Source);
        var e = fit.Predictions(0)[4];
        Near(56.733188, e.Blup, 5e-7, Source);
        // One program takes the fixed terms as known here and prints 19.586570.
        Near(24.773032, e.StandardError, 5e-7, Source);
    }

    // By the analysis of variance this one would be -1.321913.
    [Fact]
    public void A_variance_is_never_below_zero()
    {
        var fit = Fit(new Table("mixed-model/Dyestuff2.csv"), "Yield", ["Batch"]);
        Assert.True(fit.Converged);
        Assert.Equal((0, null), (fit.Components()[0].Variance, fit.Components()[0].StandardError));
        Near(13.806310, fit.Error, 5e-7, Source);
        Near(5.6656, fit.Fixed()[0].Estimate, 1e-9, Source);
        Near(.678388031, fit.Fixed()[0].StandardError, 1e-8, Source);
        Assert.All(fit.Predictions(0), batch => Assert.Equal((0, 0, 0), (batch.Blup, batch.StandardError, batch.Reliability)));
        Assert.All(fit.Differences(0), pair => Assert.Equal(.5, pair.ChanceAIsAbove));
    }

    [Fact]
    public void Belenky_2003()
    {
        var table = new Table("mixed-model/sleepstudy.csv");
        var fit = new MixedModel(table.Numbers("Reaction"), FixedPart.Mean(table.Count).With("Days", table.Numbers("Days")), [Effect("Subject", table, "Subject")]).Reml();
        Relative(1378.178508, fit.Components()[0].Variance);
        Relative(960.456579, fit.Error);
        Near(1786.465085, fit.RemlCriterion, 5e-7, Source);
        var first = fit.Predictions(0)[0];
        Near(40.783710, first.Blup, 5e-7, Source);
        Near(12.702973, first.StandardError, 5e-7, Source);
    }

    [Fact]
    public void Lines_in_yards_with_fixed_yards_and_seasons()
    {
        var (fit, table) = LinesInYards();
        Near(739.455848, fit.RemlCriterion, 5e-7, Source);
        Variances(fit, "mixed-model/lines_yards_fixedYS_exact_varcomp.csv");
        FixedTerms(fit, "mixed-model/lines_yards_fixedYS_exact_fixed.csv");
        Predictions(fit, "mixed-model/lines_yards_fixedYS_exact_blup_pev.csv");
        Assert.Equal(120, table.Count);
        var pairs = new Table("mixed-model/lines_yards_exact_pairs.csv");
        var here = fit.Differences(0);
        Assert.Equal(pairs.Texts("a").Zip(pairs.Texts("b")), here.Select(pair => (pair.A, pair.B)));
        for (var i = 0; i < here.Count; i++)
        {
            Relative(pairs.Numbers("diff")[i], here[i].Value);
            Relative(pairs.Numbers("sePEV")[i], here[i].StandardError);
            Relative(pairs.Numbers("P_a_better")[i], here[i].ChanceAIsAbove);
        }
    }

    [Fact]
    public void Lines_in_yards_with_random_yards_and_seasons()
    {
        var table = new Table("mixed-model/lines_yards.csv");
        var fit = new MixedModel(table.Numbers("honey"), FixedPart.Mean(table.Count).With("age", table.Numbers("age")),
            [Effect("line", table, "line"), Effect("mother", table, "mother"), Effect("ys", table, "yard", "season")]).Reml();
        Variances(fit, "mixed-model/lines_yards_randomYS_exact_varcomp.csv");
        FixedTerms(fit, "mixed-model/lines_yards_randomYS_exact_fixed.csv");
        Predictions(fit, "mixed-model/lines_yards_randomYS_exact_blup_pev.csv");
    }

    // Nesting what is crossed turns the plates' standard deviation of .847 into .308.
    [Fact]
    public void What_is_crossed_must_not_be_nested()
    {
        var table = new Table("mixed-model/Penicillin.csv");
        // One record for each sample within each plate: nested, the samples go into the error.
        Near(.308, Math.Sqrt(Fit(table, "diameter", ["plate"]).Components()[0].Variance), 5e-4, Source);
        Near(.847, Math.Sqrt(Fit(table, "diameter", ["plate", "sample"]).Components()[0].Variance), 5e-4, Source);
    }

    /// <summary>An oracle that shares nothing with the sweeping: dense V and its determinants, as the likelihood is defined. The seed is printed.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void The_likelihood_is_what_its_definition_says(int seed)
    {
        var random = new Random(seed);
        var n = 40;
        var groups = Enumerable.Range(0, n).Select(_ => $"g{random.Next(5)}").ToArray();
        var x = Enumerable.Range(0, n).Select(_ => random.NextDouble()).ToArray();
        var one = Enumerable.Range(0, n).Select(_ => $"a{random.Next(6)}").ToArray();
        var other = Enumerable.Range(0, n).Select(_ => random.Next(4) is > 0 and var b ? $"b{b}" : null).ToArray();
        var y = Enumerable.Range(0, n).Select(i => random.NextDouble() + (one[i] == "a1" ? 2 : 0) + x[i]).ToArray();
        RandomEffect[] effects = [RandomEffect.Of("one", one), RandomEffect.Of("other", other)];
        double[] variances = [.7, .3];
        var fit = new MixedModel(y, FixedPart.By(groups).With("x", x), effects).At(variances, .5);
        var oracle = new DenseOracle(y, groups, x, effects, variances, .5);
        Near(oracle.Criterion, fit.RemlCriterion, 1e-9, $"dense V, seed {seed}");
        foreach (var (term, i) in fit.Fixed().Select((term, i) => (term, i)))
        {
            Near(oracle.Fixed[i], term.Estimate, 1e-9, $"dense V, seed {seed}");
            Near(oracle.FixedErrors[i], term.StandardError, 1e-9, $"dense V, seed {seed}");
        }

        for (var k = 0; k < 2; k++)
            foreach (var (level, i) in fit.Predictions(k).Select((level, i) => (level, i)))
            {
                Near(oracle.Blups[k][i], level.Blup, 1e-9, $"dense V, seed {seed}");
                Near(oracle.BlupErrors[k][i], level.StandardError, 1e-9, $"dense V, seed {seed}");
            }
    }

    [Fact]
    public void What_no_record_can_tell_is_said()
    {
        var table = new Table("mixed-model/lines_yards.csv");
        var part = FixedPart.By(Joined(table, "yard", "season")).With("age", table.Numbers("age")).With("season again", table.Numbers("season")).With("twice the age", [.. table.Numbers("age").Select(age => 2 * age)]);
        var model = new MixedModel(table.Numbers("honey"), part, [Effect("line", table, "line")]);
        Assert.Equal(["season again", "twice the age"], model.Confounded);
        Assert.Equal(120 - part.Groups.Count - 1, model.Freedom);
        Assert.Throws<TooFewRecordsException>(() => new MixedModel([1, 2], FixedPart.By(["a", "b"]), [RandomEffect.Of("e", ["c", "d"])]));
    }

    [Theory]
    [InlineData(new[] { 0.0, 0, 0, 0, 0, 0 }, "a a b b c c")]
    [InlineData(new[] { 5.0, 5, 5, 5, 5, 5 }, "a a b b c c")]
    [InlineData(new[] { 1.0, 2, 3, 4, 5, 6 }, "a a a a a a")]
    [InlineData(new[] { 1.0, 2, 3, 4, 5, 6 }, "a b c d e f")]
    [InlineData(new[] { 1.0, 1, 3, 3, 9, 9 }, "a a b b c c")]
    public void Boundary_cases_end_well(double[] y, string levels)
    {
        RandomEffect[] effects = [RandomEffect.Of("level", levels.Split(' '))];
        IFitted[] fits = [new MixedModel(y, FixedPart.Mean(y.Length), effects).Reml(), new SparseModel(y, FixedPart.Mean(y.Length), effects).Reml()];
        foreach (var fit in fits)
        {
            Assert.All(fit.Components(), component => Assert.True(double.IsFinite(component.Variance) && component.Variance >= 0, $"{component}"));
            Assert.All(fit.Predictions(0), level => Assert.True(double.IsFinite(level.Blup) && double.IsFinite(level.StandardError), $"{level}"));
            Assert.All(fit.Fixed(), term => Assert.True(double.IsFinite(term.Estimate) && double.IsFinite(term.StandardError), $"{term}"));
        }
    }

    internal static RandomEffect Effect(string name, Table table, params string[] columns) => RandomEffect.Of(name, Joined(table, columns));

    internal static (MixedFit Fit, Table Table) LinesInYards()
    {
        var table = new Table("mixed-model/lines_yards.csv");
        var part = FixedPart.By(Joined(table, "yard", "season")).With("age", table.Numbers("age"));
        return (new MixedModel(table.Numbers("honey"), part, [Effect("line", table, "line"), Effect("mother", table, "mother")]).Reml(), table);
    }

    internal static string[] Joined(Table table, params string[] columns) => [.. Enumerable.Range(0, table.Count).Select(i => string.Join(' ', columns.Select(column => table.Texts(column)[i])))];

    private static MixedFit Fit(Table table, string trait, string[] random) =>
        new MixedModel(table.Numbers(trait), FixedPart.Mean(table.Count), [.. random.Select(effect => Effect(effect, table, effect.Split(':')))]).Reml();

    private static void Variances(MixedFit fit, string file)
    {
        var table = new Table(file);
        Assert.True(fit.Converged);
        var components = fit.Components();
        Assert.Equal(table.Count, components.Count);
        for (var i = 0; i < components.Count; i++)
        {
            Relative(table.Numbers("variance")[i], components[i].Variance);
            Relative(table.Numbers("se")[i], components[i].StandardError!.Value);
        }
    }

    internal static void FixedTerms(IFitted fit, string file)
    {
        var table = new Table(file);
        var terms = fit.Fixed();
        Assert.Equal(table.Count, terms.Count);
        for (var i = 0; i < terms.Count; i++)
        {
            Relative(table.Numbers("est")[i], terms[i].Estimate);
            Relative(table.Numbers("se")[i], terms[i].StandardError);
        }
    }

    internal static void Predictions(IFitted fit, string file)
    {
        var table = new Table(file);
        var here = Enumerable.Range(0, fit.Components().Count - 1).SelectMany(fit.Predictions).ToList();
        Assert.Equal(table.Count, here.Count);
        for (var i = 0; i < here.Count; i++)
        {
            Assert.Equal(table.Texts("effect")[i].Replace(':', ' '), here[i].Level);
            Relative(table.Numbers("blup")[i], here[i].Blup);
            Relative(table.Numbers("sePEV")[i], here[i].StandardError);
            Relative(table.Numbers("reliability")[i], here[i].Reliability);
        }
    }

    internal static void Relative(double expected, double here) => Near(expected, here, Within * Math.Max(Math.Abs(expected), 1e-3), Source);
}
