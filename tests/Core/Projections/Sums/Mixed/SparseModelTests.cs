using ColonyLineage.Core.Tests.Projections.Relationship;
using ColonyLineage.Projections.Relationship;
using ColonyLineage.Projections.Sums.Mixed;
using MathNet.Numerics.LinearAlgebra;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums.Mixed;

/// <summary>The sparse model against the dense one, which is held against the check tables: written apart, they have to agree.</summary>
public class SparseModelTests
{
    private const string Source = "Golden/mixed-model/SOURCE.md, Golden/pedigree/SOURCE.md";

    [Theory]
    [InlineData("Penicillin", "diameter", "plate sample", 330.860589)]
    [InlineData("Pastes", "strength", "batch batch:cask", 246.990746)]
    public void Davies_and_Goldsmith_1972(string name, string trait, string random, double criterion)
    {
        var table = new Table($"mixed-model/{name}.csv");
        var fit = new SparseModel(table.Numbers(trait), FixedPart.Mean(table.Count), [.. random.Split(' ').Select(one => MixedModelTests.Effect(one, table, one.Split(':')))]).Reml();
        Near(criterion, fit.RemlCriterion, 5e-7, Source);
        Holds(fit, $"mixed-model/{name}_exact");
    }

    [Fact]
    public void Lines_in_yards()
    {
        var table = new Table("mixed-model/lines_yards.csv");
        var (y, age) = (table.Numbers("honey"), table.Numbers("age"));
        RandomEffect[] effects = [MixedModelTests.Effect("line", table, "line"), MixedModelTests.Effect("mother", table, "mother")];
        Holds(new SparseModel(y, FixedPart.By(MixedModelTests.Joined(table, "yard", "season")).With("age", age), effects).Reml(), "mixed-model/lines_yards_fixedYS_exact");
        Holds(new SparseModel(y, FixedPart.Mean(table.Count).With("age", age), [.. effects, MixedModelTests.Effect("ys", table, "yard", "season")]).Reml(), "mixed-model/lines_yards_randomYS_exact");
    }

    [Fact]
    public void A_variance_is_never_below_zero()
    {
        var table = new Table("mixed-model/Dyestuff2.csv");
        var fit = new SparseModel(table.Numbers("Yield"), FixedPart.Mean(table.Count), [MixedModelTests.Effect("Batch", table, "Batch")]).Reml();
        Assert.True(fit.Converged);
        Assert.Equal((0, null), (fit.Components()[0].Variance, fit.Components()[0].StandardError));
        Near(13.806310, fit.Error, 5e-7, Source);
    }

    // Golden/pedigree/pedE_blup.csv: by two formulas in R.
    [Fact]
    public void Predictions_of_related_queens()
    {
        var table = new Table("pedigree/pedE_blup.csv");
        var (pedigree, names) = PedigreeGolden.WithMatings();
        var recorded = Enumerable.Range(0, names.Length).Where(i => !double.IsNaN(table.Numbers("y")[i])).ToArray();
        var effect = new RandomEffect("queen", names, recorded).RelatedBy(PedigreePrecision.Of(pedigree, [.. Enumerable.Range(0, names.Length).Select(queen => (int?)queen)]));
        var fit = new SparseModel([.. recorded.Select(i => table.Numbers("y")[i])], FixedPart.Mean(recorded.Length), [effect]).At([10], 30);
        Near(36.775760, fit.Fixed()[0].Estimate, 5e-7, Source);
        for (var i = 0; i < table.Count; i++)
        {
            var queen = fit.Predictions(0)[i];
            Assert.Equal(table.Texts("queen")[i], queen.Level);
            Near(table.Numbers("blup")[i], queen.Blup, 1e-10, Source);
            Near(table.Numbers("sePEV")[i], queen.StandardError, 1e-10, Source);
            Near(table.Numbers("reliability")[i], queen.Reliability, 1e-10, Source);
        }
    }

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 25)];

    /// <summary>Yards as groups, covariates of which one is a combination, crossed effects, missing levels, related queens.</summary>
    [Theory, MemberData(nameof(Seeds))]
    public void It_finds_what_the_dense_one_finds(int seed)
    {
        var random = new Random(seed);
        var pedigree = PedigreePrecisionTests.Made(random, 30, DroneShares.Equal);
        var queens = Enumerable.Range(0, 30).Where(_ => random.Next(4) > 0).ToList();
        int[] queenOf = [.. Enumerable.Range(0, 120).Select(_ => random.Next(-1, queens.Count))];
        int[] batchOf = [.. queenOf.Select(_ => random.Next(8))];
        int[] yardOf = [.. queenOf.Select(_ => random.Next(5))];
        var table = pedigree.Table();
        var kinship = Matrix<double>.Build.Dense(queens.Count, queens.Count, (r, c) => 2 * table[queens[r], queens[c]]);
        var drawn = kinship.Cholesky().Factor * Vector<double>.Build.Dense(queens.Count, _ => Normal(random));
        double[] batches = [.. Enumerable.Range(0, 8).Select(_ => seed % 3 == 0 ? 0 : Normal(random))];
        double[] age = [.. queenOf.Select(_ => (double)random.Next(4))];
        double[] y = [.. queenOf.Select((queen, i) => 100 + (3 * yardOf[i]) - age[i] + batches[batchOf[i]] + (queen < 0 ? 0 : 1.5 * drawn[queen]) + Normal(random))];
        var part = FixedPart.By([.. yardOf.Select(yard => $"yard {yard}")]).With("age", age).With("again", [.. age.Select((value, i) => (2 * value) + yardOf[i])]).With("late", [.. yardOf.Select(yard => yard > 2 ? 1.0 : 0)]);
        string[] names = [.. queens.Select(queen => $"Q{queen}")];
        var batch = new RandomEffect("batch", [.. Enumerable.Range(0, 8).Select(one => $"{one}")], batchOf);
        var dense = new MixedModel(y, part, [new RandomEffect("queen", names, queenOf, kinship), batch]).Reml();
        var related = new RandomEffect("queen", names, queenOf).RelatedBy(PedigreePrecision.Of(pedigree, [.. queens.Select(queen => (int?)queen)]));
        var sparse = new SparseModel(y, part, [related, batch]).Reml();
        Assert.True(dense.Converged && sparse.Converged);
        Assert.Equal(["again", "late"], dense.Confounded);
        Assert.Equal(dense.Confounded, sparse.Confounded);
        Assert.Equal(dense.RemlCriterion, sparse.RemlCriterion, 1e-8 * Math.Abs(dense.RemlCriterion));
        Assert.Equal(dense.Components().Select(one => one.Variance), sparse.Components().Select(one => one.Variance), (a, b) => Math.Abs(a - b) < 1e-6 * (1 + a));
        Assert.Equal(dense.Fixed().Select(one => (one.Name, one.Estimate)), sparse.Fixed().Select(one => (one.Name, one.Estimate)), (a, b) => a.Name == b.Name && Math.Abs(a.Estimate - b.Estimate) < 1e-5);
        Assert.Equal(dense.Fixed().Select(one => one.StandardError), sparse.Fixed().Select(one => one.StandardError), (a, b) => Math.Abs(a - b) < 1e-5);
        for (var effect = 0; effect < 2; effect++)
        {
            Assert.Equal(dense.Predictions(effect).Count, sparse.Predictions(effect).Count);
            foreach (var (one, other) in dense.Predictions(effect).Zip(sparse.Predictions(effect)))
            {
                Assert.Equal(one.Level, other.Level);
                Assert.Equal(one.Blup, other.Blup, 1e-5);
                Assert.Equal(one.StandardError, other.StandardError, 1e-5);
                Assert.Equal(one.Reliability, other.Reliability, 1e-5);
            }
        }
    }

    [Fact]
    public void Too_few_records_are_named()
    {
        var part = FixedPart.By(["A", "B"]).With("age", [1.0, 2]);
        Assert.Throws<TooFewRecordsException>(() => new SparseModel([1, 2], part, [new RandomEffect("queen", ["Q"], [0, 0])]));
    }

    /// <summary>One and the same effect twice: only the sum of the two variances can be told.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void An_effect_that_is_there_twice_ends_well(int seed)
    {
        var random = new Random(seed);
        int[] of = [.. Enumerable.Range(0, 40).Select(i => i % 8)];
        double[] y = [.. of.Select(level => level + Normal(random))];
        var effect = new RandomEffect("level", [.. Enumerable.Range(0, 8).Select(i => $"{i}")], of);
        var once = new MixedModel(y, FixedPart.Mean(40), [effect]).Reml().Variance(0);
        var (dense, sparse) = (new MixedModel(y, FixedPart.Mean(40), [effect, effect]).Reml(), new SparseModel(y, FixedPart.Mean(40), [effect, effect]).Reml());
        Assert.Equal(once, dense.Variance(0) + dense.Variance(1), 1e-4);
        Assert.Equal(once, sparse.Variance(0) + sparse.Variance(1), 1e-4);
        Assert.Equal(3, dense.Components().Count);
        Assert.Equal(3, sparse.Components().Count);
    }

    [Fact]
    public void All_alike_ends_well()
    {
        var fit = new SparseModel([2, 2, 2, 2], FixedPart.Mean(4), [new RandomEffect("queen", ["Q", "R"], [0, 0, 1, 1])]).Reml();
        Assert.Equal((0.0, 0.0), (fit.Error, fit.Variance(0)));
    }

    /// <summary>Their standard errors are those of the average information here, and of the expected one in the tables.</summary>
    private static void Holds(SparseFit fit, string files)
    {
        Assert.True(fit.Converged);
        var components = new Table($"{files}_varcomp.csv");
        foreach (var (expected, here) in components.Numbers("variance").Zip(fit.Components())) MixedModelTests.Relative(expected, here.Variance);
        MixedModelTests.FixedTerms(fit, $"{files}_fixed.csv");
        MixedModelTests.Predictions(fit, $"{files}_blup_pev.csv");
    }

    private static double Normal(Random random) => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
}
