using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>A model at given ratios of variances: B = Z'PZ, t = Z'Py, both in units of the error's variance.</summary>
internal sealed record ModelState(MixedModel Model, Matrix<double> B, Vector<double> T, double Residual, double LogDeterminants) : ISlopes
{
    private readonly int[] _starts = [.. Enumerable.Range(0, Model.Effects.Count + 1).Select(Model.LevelsBefore)];

    public int Effects => Model.Effects.Count;

    public int Levels(int effect) => _starts[effect + 1] - _starts[effect];

    public Matrix<double> Block(int effect, int other) => B.SubMatrix(_starts[effect], Levels(effect), _starts[other], Levels(other));

    public Vector<double> Part(int effect) => T.SubVector(_starts[effect], Levels(effect));

    /// <summary>tr(B_kk).</summary>
    public double Trace(int effect)
    {
        double sum = 0;
        for (var i = _starts[effect]; i < _starts[effect + 1]; i++) sum += B[i, i];
        return sum;
    }

    /// <summary>tr(B_kj B_jk).</summary>
    public double Squares(int effect, int other)
    {
        double sum = 0;
        for (var r = _starts[effect]; r < _starts[effect + 1]; r++)
            for (var c = _starts[other]; c < _starts[other + 1]; c++) sum += B[r, c] * B[r, c];
        return sum;
    }

    /// <summary>The slope of -2 log-likelihood along each ratio.</summary>
    public Vector<double> Slope() => Vector<double>.Build.Dense(Effects, k => Trace(k) - (Model.Freedom * Square(k) / Residual));

    /// <summary>The exact one; where that curves downwards, the expected one, which never does.</summary>
    public IEnumerable<Matrix<double>> Curvatures()
    {
        yield return Curvature();
        yield return ExpectedCurvature();
    }

    private Matrix<double> Curvature() => Matrix<double>.Build.Dense(Effects, Effects, (k, j) =>
        (Model.Freedom * ((2 * (Part(k) * (Block(k, j) * Part(j))) / Residual) - (Square(k) * Square(j) / (Residual * Residual)))) - Squares(k, j));

    private Matrix<double> ExpectedCurvature() => Matrix<double>.Build.Dense(Effects, Effects, (k, j) => Squares(k, j) - (Trace(k) * Trace(j) / Model.Freedom));

    /// <summary>
    /// The expected information of the variances, the effects' and the error's last, in units of the error's variance squared: ½ tr(P V_i P V_j).
    /// The error's rows follow from P V P = P and tr(PV) = freedom.
    /// </summary>
    public Matrix<double> Information(IReadOnlyList<double> ratios)
    {
        var n = Effects;
        var squares = Matrix<double>.Build.Dense(n, n, Squares);
        var mixed = Vector<double>.Build.Dense(n, k => Trace(k) - Enumerable.Range(0, n).Sum(j => ratios[j] * squares[k, j]));
        var all = Matrix<double>.Build.Dense(n + 1, n + 1);
        all.SetSubMatrix(0, 0, squares);
        for (var k = 0; k < n; k++) all[k, n] = all[n, k] = mixed[k];
        all[n, n] = Model.Freedom - Enumerable.Range(0, n).Sum(k => ratios[k] * (Trace(k) + mixed[k]));
        return all / 2;
    }

    private double Square(int effect) => Part(effect) * Part(effect);
}
