using ColonyLineage.Projections.Sums.Mixed;
using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Core.Tests.Projections.Sums.Mixed;

/// <summary>A mixed model at given variances as the books define it: V = ZGZ' + R, whole and dense, no sweeping. It shares nothing with the code but the records.</summary>
internal sealed class DenseOracle
{
    public double Criterion { get; }

    public double[] Fixed { get; }

    public double[] FixedErrors { get; }

    public double[][] Blups { get; }

    public double[][] BlupErrors { get; }

    public DenseOracle(double[] y, string[] groups, double[] x, RandomEffect[] effects, double[] variances, double error, bool covariate = true)
    {
        var n = y.Length;
        var names = groups.Distinct().Order(StringComparer.Ordinal).ToList();
        var design = Matrix<double>.Build.Dense(n, names.Count + (covariate ? 1 : 0), (r, c) => c == names.Count ? x[r] : groups[r] == names[c] ? 1 : 0);
        var z = effects.Select(effect => Matrix<double>.Build.Dense(n, effect.Levels.Count, (r, c) => effect.LevelOf[r] == c ? 1 : 0)).ToArray();
        var v = Matrix<double>.Build.DenseIdentity(n) * error;
        for (var k = 0; k < z.Length; k++) v += variances[k] * (z[k] * Kinship(effects[k]) * z[k].Transpose());
        var inverse = v.Inverse();
        var weights = (design.Transpose() * inverse * design).Inverse();
        var records = Vector<double>.Build.Dense(y);
        var fixedPart = weights * design.Transpose() * inverse * records;
        var projection = inverse - (inverse * design * weights * design.Transpose() * inverse);
        Fixed = [.. fixedPart];
        FixedErrors = [.. Enumerable.Range(0, fixedPart.Count).Select(i => Math.Sqrt(weights[i, i]))];
        Criterion = ((n - design.ColumnCount) * Math.Log(2 * Math.PI)) + Math.Log(v.Determinant()) + Math.Log((design.Transpose() * inverse * design).Determinant()) + (records * (projection * records));
        var g = effects.Select((effect, k) => Kinship(effect) * variances[k]).ToArray();
        Blups = [.. z.Select((of, k) => (g[k] * of.Transpose() * projection * records).ToArray())];
        BlupErrors = [.. z.Select((of, k) => { var pev = g[k] - (g[k] * of.Transpose() * projection * of * g[k]); return Enumerable.Range(0, pev.RowCount).Select(i => Math.Sqrt(pev[i, i])).ToArray(); })];
    }

    private static Matrix<double> Kinship(RandomEffect effect) => effect.Kinship ?? Matrix<double>.Build.DenseIdentity(effect.Levels.Count);
}
