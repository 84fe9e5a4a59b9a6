using ColonyLineage.Projections.Sums.Mixed;
using MathNet.Numerics.LinearAlgebra;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums.Mixed;

/// <summary>Differences of fixed lines by the sparse model, against the formulas written out with whole matrices, and against the dense model where both must agree.</summary>
public class SparseContrastTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 12)];

    [Theory, MemberData(nameof(Seeds))]
    public void They_are_what_the_formulas_say(int seed)
    {
        var random = new Random(seed);
        string[] lines = [.. Enumerable.Range(0, 60).Select(i => $"L{i % 3}")];
        string[] mothers = [.. lines.Select(line => $"{line} {random.Next(4)}")];
        string[] yards = [.. lines.Select(_ => $"Y{random.Next(5)}")];
        var ofMother = mothers.Distinct().ToDictionary(mother => mother, _ => 2 * random.NextDouble());
        double[] y = [.. Enumerable.Range(0, 60).Select(i => ofMother[mothers[i]] + (seed % 2 * yards[i][1]) + random.NextDouble() + (lines[i] == "L1" ? 1 : 0))];
        var part = FixedPart.Mean(60).With("line", lines);
        RandomEffect[] effects = [RandomEffect.Of("mother", mothers), RandomEffect.Of("yard", yards)];
        var fit = new SparseModel(y, part, effects).Reml();
        var contrast = fit.Combine([1, -1])!;

        // Everything again, as the paper has it, with matrices of 60 × 60; a variance at zero is not estimated.
        var design = Matrix<double>.Build.Dense(60, 3, (r, c) => c == 0 || lines[r] == $"L{c}" ? 1 : 0);
        var components = fit.Components();
        var parts = effects.Select(effect => Matrix<double>.Build.Dense(60, effect.Levels.Count, (r, c) => effect.LevelOf[r] == c ? 1 : 0)).Select(z => z * z.Transpose()).Append(Matrix<double>.Build.DenseIdentity(60))
            .Where((_, k) => components[k].Variance > 0).ToList();
        var variances = components.Select(one => one.Variance).Where(variance => variance > 0).ToList();
        var v = parts.Zip(variances, (one, variance) => one * variance).Aggregate((a, b) => a + b).Inverse();
        var spread = (design.Transpose() * v * design).Inverse();
        var p = v - (v * design * spread * design.Transpose() * v);
        var records = p * Vector<double>.Build.Dense(y);
        var information = Matrix<double>.Build.Dense(parts.Count, parts.Count, (i, j) => (parts[i] * records) * (p * (parts[j] * records)) / 2);
        var w = information.Inverse();
        var weights = Vector<double>.Build.Dense([0, 1, -1]);
        var a = v * design * (spread * weights);
        var moves = Vector<double>.Build.Dense(parts.Count, i => a * (parts[i] * a));
        var plain = weights * spread * weights;
        double more = 0;
        for (var i = 0; i < parts.Count; i++)
            for (var j = 0; j < parts.Count; j++) more += 2 * w[i, j] * ((parts[i] * a) * (p * (parts[j] * a)));

        Near(a * Vector<double>.Build.Dense(y), contrast.Value, 1e-7, $"whole matrices, seed {seed}");
        Near(Math.Sqrt(plain + Math.Max(0, more)), contrast.StandardError, 1e-6, $"whole matrices, seed {seed}");
        Near(2 * plain * plain / (moves * (w * moves)), contrast.Freedom, 1e-5 * contrast.Freedom, $"whole matrices, seed {seed}");
        foreach (var (error, one) in w.Diagonal().Zip(components.Where(one => one.Variance > 0))) Near(Math.Sqrt(error), one.StandardError!.Value, 1e-6, $"whole matrices, seed {seed}");
    }

    /// <summary>Balanced, the average information is the expected one: three lines of four mothers with two colonies each.</summary>
    [Fact]
    public void Where_it_is_balanced_they_are_those_of_the_dense_model()
    {
        string[] mothers = [.. from line in Enumerable.Range(0, 3) from mother in Enumerable.Range(0, 4) from colony in Enumerable.Range(0, 2) select $"L{line} {mother}"];
        double[] y = [.. mothers.Select((mother, i) => mother[1] + (Math.Pow(mother[3] - '0', 2) * (mother[1] == '1' ? -1 : 1)) + (.1 * (i % 2) * (mother[3] - '0')))];
        var part = FixedPart.Mean(y.Length).With("line", [.. mothers.Select(mother => mother[..2])]);
        var (dense, sparse) = (new MixedModel(y, part, [RandomEffect.Of("mother", mothers)]).Reml().Combine([1, -1])!, new SparseModel(y, part, [RandomEffect.Of("mother", mothers)]).Reml().Combine([1, -1])!);
        Near(9, sparse.Freedom, 1e-5, "3 × (4 − 1)");
        Near(dense.Freedom, sparse.Freedom, 1e-5, "the dense model");
        Near(dense.StandardError, sparse.StandardError, 1e-7, "the dense model");
        Near(dense.Value, sparse.Value, 1e-9, "the dense model");
    }

    [Fact]
    public void What_cannot_be_told_apart_has_none()
    {
        string[] lines = ["A", "A", "B", "B", "A", "B"];
        var part = FixedPart.By(lines).With("line", lines);
        Assert.Null(new SparseModel([1, 2, 3, 5, 4, 2], part, [RandomEffect.Of("mother", ["m", "n", "m", "n", "n", "m"])]).Reml().Combine([1]));
    }
}
