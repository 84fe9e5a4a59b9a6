using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>
/// A combination of unknowns of a sparse model, by Kenward and Roger 1997, Biometrics 53:983, as <see cref="Contrast"/> has it, but with the average information of the
/// variances in place of the expected one: that needs the traces of whole matrices. They part where there are few levels, and there the dense model is the one to ask.
/// </summary>
internal static class SparseContrast
{
    /// <summary>Of further columns of the fixed part.</summary>
    /// <param name="weights">One for every column, in its order.</param>
    /// <param name="estimated">Of which effects the variance was estimated.</param>
    /// <returns>Null where a column with a weight cannot be told apart from the rest.</returns>
    public static Contrast? OfColumns(SparseModel model, IReadOnlyList<double> ratios, double error, IReadOnlyList<double> weights, IReadOnlyList<bool> estimated, bool errorIsGiven) =>
        weights.Where((weight, c) => weight != 0 && !model.Kept.Contains(c)).Any() ? null : Of(model, ratios, error, estimated, errorIsGiven, at =>
        {
            var start = at.Start(at.Effects.Count);
            return [.. weights.Select((weight, c) => (start + c, weight))];
        });

    /// <summary>Of the levels of the first effect, whose variance is given and not zero, in a model whose error is given.</summary>
    /// <param name="weights">One for every level.</param>
    /// <param name="estimated">Of which effects the variance was estimated.</param>
    public static Contrast OfLevels(SparseModel model, IReadOnlyList<double> variances, IReadOnlyList<bool> estimated, IReadOnlyList<double> weights) =>
        Of(model, variances, 1, estimated, true, at => [.. weights.Select((weight, level) => (at.Start(0) + level, weight * Math.Sqrt(variances[0])))]);

    private static Contrast Of(SparseModel model, IReadOnlyList<double> ratios, double error, IReadOnlyList<bool> estimated, bool errorIsGiven, Func<SparseDesign, (int Unknown, double Weight)[]> weigh)
    {
        // A ratio at zero takes no part: its variance is not estimated.
        var there = Enumerable.Range(0, ratios.Count).Where(k => ratios[k] > 0).ToList();
        if (there.Count < ratios.Count) return Of(model.Only(there), [.. there.Select(k => ratios[k])], error, [.. there.Select(k => estimated[k])], errorIsGiven, weigh);

        var state = new SparseState(model, ratios);
        var at = new double[model.Design.Unknowns];
        foreach (var (unknown, weight) in weigh(model.Design)) at[unknown] = weight;
        var solved = state.Solve(at);
        double scaled = 0, value = 0;
        for (var c = 0; c < at.Length; c++) (scaled, value) = (scaled + (at[c] * solved[c]), value + (at[c] * state.Solution[c]));
        List<int> known = [.. Enumerable.Range(0, ratios.Count).Where(k => estimated[k])];
        if (!errorIsGiven) known.Add(ratios.Count);
        if (known.Count == 0) return new Contrast(value, Math.Sqrt(error * scaled), double.PositiveInfinity);

        // The estimate is a'y with a = W(Xs + Zu) of the solution; ZAZ'a is -Zu / λ, and a'ZAZ'a is u'A⁻¹u / λ.
        var fitted = state.Fitted(solved);
        double[] squares = [.. state.SquaresOf(solved), state.Dot(fitted, fitted)];
        List<double[]> columns = [.. Enumerable.Range(0, ratios.Count).Select(k => state.WorkingOf(solved, k).Select(one => -one).ToArray()), fitted];
        var moves = Vector<double>.Build.Dense([.. known.Select(k => squares[k])]);
        var whole = state.Information();
        var information = Matrix<double>.Build.Dense(known.Count, known.Count, (r, c) => whole[known[r], known[c]]);
        if (!(Math.Abs(information.Determinant()) > 0)) return new Contrast(value, Math.Sqrt(error * scaled), double.PositiveInfinity);
        var spread = information.Inverse() * (2 * error);
        var slant = moves * (spread * moves);
        // Where the error is given the model is a linearised one: there the correction was seen to overdo it, and the degrees of freedom alone are taken.
        var more = errorIsGiven ? 0 : 2 * spread.PointwiseMultiply(state.Products([.. known.Select(k => columns[k])])).RowSums().Sum();
        return new Contrast(value, Math.Sqrt(error * (scaled + Math.Max(0, more))), slant > 0 ? 2 * scaled * scaled / slant : double.PositiveInfinity);
    }
}
