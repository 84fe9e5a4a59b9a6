using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>A combination of fixed columns, with the standard error and the degrees of freedom that belong to estimated variances.</summary>
/// <param name="Freedom">Infinite where the variances take no part in it.</param>
public sealed record Contrast(double Value, double StandardError, double Freedom)
{
    /// <summary>The difference divided by its standard error.</summary>
    public double Ratio => Value / StandardError;

    /// <summary>
    /// By Kenward and Roger 1997, Biometrics 53:983. For one combination their degrees of freedom are Satterthwaite's, 2v² / (g'Wg), and their scale is 1.
    /// </summary>
    /// <param name="weights">One for every further column of the fixed part, in its order.</param>
    /// <returns>Null where a column with a weight cannot be told apart from the rest.</returns>
    public static Contrast? KenwardRoger(MixedFit fit, IReadOnlyList<double> weights)
    {
        var (model, state) = (fit.Model, fit.State);
        var swept = model.Swept;
        if (weights.Where((weight, c) => weight != 0 && !swept.Kept.Contains(c)).Any()) return null;
        var c = Vector<double>.Build.Dense(swept.Kept.Count, i => weights[swept.Kept[i]]);
        var xz = model.LevelRoots is { } roots ? swept.Xz * roots : swept.Xz;
        double[] ratio = [.. model.Effects.SelectMany((effect, k) => Enumerable.Repeat(fit.Ratios[k], effect.Levels.Count))];

        // a is what the records are weighted with: the estimate is a'y, and Z'a all that is needed of it.
        var plain = model.XxInverse * c;
        var swayed = xz.TransposeThisAndMultiply(plain);
        var za = Vector<double>.Build.Dense(swayed.Count, i => swayed[i]) - (state.B * Scaled(ratio, swayed));
        var scaled = (c * plain) + (swayed * Scaled(ratio, za));
        var value = c * (model.XxInverse * (swept.Xy - (xz * Scaled(ratio, state.T))));

        // How the variance moves with each of the variances: a'V_i a.
        var n = state.Effects;
        var starts = Enumerable.Range(0, n + 1).Select(model.LevelsBefore).ToArray();
        var moves = Vector<double>.Build.Dense(n + 1, k => k == n ? 0 : Enumerable.Range(starts[k], starts[k + 1] - starts[k]).Sum(i => za[i] * za[i]));
        moves[n] = scaled - Enumerable.Range(0, n).Sum(k => fit.Ratios[k] * moves[k]);
        var there = Enumerable.Range(0, n + 1).Where(k => k == n || fit.Ratios[k] > 0).ToArray();
        var information = state.Information(fit.Ratios);
        var part = Matrix<double>.Build.Dense(there.Length, there.Length, (r, q) => information[there[r], there[q]]);
        var spread = part.Inverse();
        var g = Vector<double>.Build.Dense(there.Length, i => moves[there[i]]);
        var slant = g * (spread * g);

        // 2 Σ W_ij a'V_i P V_j a: what an estimated variance makes the variance too small by.
        var inner = Matrix<double>.Build.Dense(n + 1, n + 1);
        for (var k = 0; k < n; k++)
            for (var j = 0; j < n; j++)
                inner[k, j] = za.SubVector(starts[k], starts[k + 1] - starts[k]) * (state.Block(k, j) * za.SubVector(starts[j], starts[j + 1] - starts[j]));
        for (var k = 0; k < n; k++) inner[k, n] = inner[n, k] = -Enumerable.Range(0, n).Sum(j => fit.Ratios[j] * inner[k, j]);
        inner[n, n] = -Enumerable.Range(0, n).Sum(k => fit.Ratios[k] * inner[k, n]);
        double more = 0;
        for (var r = 0; r < there.Length; r++)
            for (var q = 0; q < there.Length; q++) more += 2 * spread[r, q] * inner[there[r], there[q]];
        return new Contrast(value, Math.Sqrt(fit.Error * (scaled + Math.Max(0, more))), slant > 0 ? 2 * scaled * scaled / slant : double.PositiveInfinity);
    }

    private static Vector<double> Scaled(double[] ratio, Vector<double> levels) => Vector<double>.Build.Dense(levels.Count, i => ratio[i] * levels[i]);
}
