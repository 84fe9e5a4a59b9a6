using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>
/// A combination of fixed columns of a sparse model, by Kenward and Roger 1997, Biometrics 53:983, as <see cref="Contrast"/> has it, but with the average information of the
/// variances in place of the expected one: that needs the traces of whole matrices. They part where there are few levels, and there the dense model is the one to ask.
/// </summary>
internal static class SparseContrast
{
    /// <param name="weights">One for every further column of the fixed part, in its order.</param>
    /// <returns>Null where a column with a weight cannot be told apart from the rest.</returns>
    public static Contrast? Of(SparseModel model, IReadOnlyList<double> ratios, double error, IReadOnlyList<double> weights)
    {
        if (weights.Where((weight, c) => weight != 0 && !model.Kept.Contains(c)).Any()) return null;
        // A ratio at zero takes no part: its variance is not estimated.
        var there = Enumerable.Range(0, ratios.Count).Where(k => ratios[k] > 0).ToList();
        if (there.Count < ratios.Count) return Of(new SparseModel(model.Y, model.Part, [.. there.Select(k => model.Effects[k])]), [.. there.Select(k => ratios[k])], error, weights);

        var state = new SparseState(model, ratios);
        var at = new double[model.Unknowns];
        for (var c = 0; c < weights.Count; c++) at[model.Start(model.Effects.Count) + c] = weights[c];
        var solved = state.Solve(at);
        double scaled = 0, value = 0;
        for (var c = 0; c < at.Length; c++) (scaled, value) = (scaled + (at[c] * solved[c]), value + (at[c] * state.Solution[c]));

        // The estimate is a'y with a = Xs + Zu of the solution; ZAZ'a is -Zu / λ, and a'ZAZ'a is u'A⁻¹u / λ.
        var n = ratios.Count;
        var moves = Vector<double>.Build.Dense([.. state.SquaresOf(solved), 0]);
        var columns = Enumerable.Range(0, n).Select(k => state.WorkingOf(solved, k).Select(one => -one).ToArray()).Append(state.Fitted(solved)).ToList();
        moves[n] = columns[n].Sum(one => one * one);
        var spread = state.Information().Inverse() * (2 * error);
        var slant = moves * (spread * moves);
        var inner = state.Products(columns);
        var more = 2 * (spread.PointwiseMultiply(inner)).RowSums().Sum();
        return new Contrast(value, Math.Sqrt(error * (scaled + Math.Max(0, more))), slant > 0 ? 2 * scaled * scaled / slant : double.PositiveInfinity);
    }
}
