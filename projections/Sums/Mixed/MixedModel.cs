using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>
/// A linear mixed model, y = fixed part + random effects + error, and its estimate by restricted maximum likelihood (REML).
/// Sources: Patterson and Thompson 1971, Biometrika 58:545, for the likelihood; Henderson 1975, Biometrics 31:423, for the prediction of
/// the effects and their errors.
/// </summary>
/// <remarks>
/// Everything is worked out from cross products (<see cref="Swept"/>) in the ratios λ of the variances to that of the error, with
/// H = I + D W D, D² = λ: so a variance of zero is a value like others, and the time depends on the number of levels, not of records. Levels that
/// are related are turned into unrelated ones first, u = L v with L L' their kinship.
/// </remarks>
public sealed class MixedModel : ILikelihood
{
    /// <summary>Beyond these the cross products no longer fit a desk's machine.</summary>
    public const int MostLevels = 5_000;

    private readonly FixedPart _part;
    private readonly IReadOnlyList<RandomEffect> _effects;
    private readonly Swept _swept;
    private readonly Matrix<double>? _roots;
    private readonly Matrix<double> _xxInverse;
    private readonly double _logOfXx;

    /// <summary>Cross products of levels after the whole fixed part is swept out.</summary>
    private readonly Matrix<double> _w;
    private readonly Vector<double> _wy;
    private readonly double _yy;

    /// <param name="y">The records. At least one more than the fixed part has terms.</param>
    /// <exception cref="TooFewRecordsException">The fixed part takes all there is.</exception>
    public MixedModel(IReadOnlyList<double> y, FixedPart part, IReadOnlyList<RandomEffect> effects)
    {
        if (effects.Sum(effect => effect.Levels.Count) > MostLevels) throw new ArgumentException($"At most {MostLevels} levels of random effects.", nameof(effects));
        if (effects.Any(effect => effect.Precision is not null)) throw new ArgumentException("Relations are given by the kinship here.", nameof(effects));
        (_part, _effects) = (part, effects);
        _swept = new Swept(y, part, effects);
        var kept = _swept.Kept.Count;
        Freedom = y.Count - part.Groups.Count - kept;
        if (Freedom < 1) throw new TooFewRecordsException(y.Count, part.Groups.Count + kept);
        _roots = Roots(effects);
        var (xz, zz, zy) = _roots is null ? (_swept.Xz, _swept.Zz, _swept.Zy) : (_swept.Xz * _roots, _roots.TransposeThisAndMultiply(_swept.Zz) * _roots, _roots.TransposeThisAndMultiply(_swept.Zy));
        _logOfXx = _swept.GroupSizes.Sum(size => Math.Log(size));
        (_xxInverse, _w, _wy, _yy) = (_swept.Xx, zz, zy, _swept.Yy);
        if (kept == 0) return;
        var root = _swept.Xx.Cholesky();
        _logOfXx += root.DeterminantLn;
        _xxInverse = root.Solve(Matrix<double>.Build.DenseIdentity(kept));
        var taken = xz.TransposeThisAndMultiply(_xxInverse);
        (_w, _wy, _yy) = (zz - (taken * xz), zy - (taken * _swept.Xy), _yy - (_swept.Xy * (_xxInverse * _swept.Xy)));
    }

    /// <summary>Records less terms of the fixed part.</summary>
    public int Freedom { get; }

    /// <summary>Further columns of the fixed part that are a combination of the groups and of columns before them: they cannot be told apart.</summary>
    public IReadOnlyList<string> Confounded => [.. _part.Columns.Where((_, c) => !_swept.Kept.Contains(c))];

    internal IReadOnlyList<RandomEffect> Effects => _effects;

    internal FixedPart Part => _part;

    internal Swept Swept => _swept;

    internal Matrix<double>? LevelRoots => _roots;

    internal Matrix<double> XxInverse => _xxInverse;

    internal Matrix<double> W => _w;

    internal int LevelsBefore(int effect) => _effects.Take(effect).Sum(one => one.Levels.Count);

    /// <summary>The variances that make the records likeliest, none below zero, and all that follows from them.</summary>
    public MixedFit Reml()
    {
        var (ratios, converged) = RatioSearch.From(this, [.. _effects.Select(_ => 1.0)]);
        var state = State(ratios);
        return new MixedFit(this, state, ratios, state.Residual / Freedom, converged);
    }

    /// <summary>The same with variances that are given.</summary>
    /// <param name="variances">One for each effect, 0 or more.</param>
    public MixedFit At(IReadOnlyList<double> variances, double error)
    {
        double[] ratios = [.. variances.Select(variance => variance / error)];
        return new MixedFit(this, State(ratios), ratios, error, true);
    }

    /// <summary>-2 × the restricted log-likelihood, the error's variance taken out, without constants.</summary>
    double ILikelihood.Criterion(IReadOnlyList<double> ratios)
    {
        if (RootOrNone(ratios) is not var (root, scaled)) return double.PositiveInfinity;
        var residual = _yy - (scaled * root.Solve(scaled));
        return residual <= 0 ? double.NegativeInfinity : (Freedom * Math.Log(residual)) + root.DeterminantLn;
    }

    ISlopes ILikelihood.At(IReadOnlyList<double> ratios) => State(ratios);

    internal ModelState State(IReadOnlyList<double> ratios)
    {
        var (root, scaled) = Root(ratios);
        var roots = Scale(ratios);
        // B = Z'PZ and t = Z'Py, in units of the error's variance.
        var inner = root.Solve(Matrix<double>.Build.Dense(_w.RowCount, _w.ColumnCount, (r, c) => roots[r] * _w[r, c]));
        var outer = Matrix<double>.Build.Dense(_w.RowCount, _w.ColumnCount, (r, c) => _w[r, c] * roots[c]);
        var solved = root.Solve(scaled);
        return new ModelState(this, _w - (outer * inner), _wy - (outer * solved), Math.Max(0, _yy - (scaled * solved)), root.DeterminantLn + _logOfXx);
    }

    /// <summary>None where the ratios are so large that a double holds nothing of the error beside them: two effects that are one and the same lead there.</summary>
    private (MathNet.Numerics.LinearAlgebra.Factorization.Cholesky<double> Root, Vector<double> Scaled)? RootOrNone(IReadOnlyList<double> ratios)
    {
        try
        {
            return Root(ratios);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private (MathNet.Numerics.LinearAlgebra.Factorization.Cholesky<double> Root, Vector<double> Scaled) Root(IReadOnlyList<double> ratios)
    {
        var roots = Scale(ratios);
        var h = Matrix<double>.Build.Dense(_w.RowCount, _w.ColumnCount, (r, c) => (roots[r] * _w[r, c] * roots[c]) + (r == c ? 1 : 0));
        return (h.Cholesky(), Vector<double>.Build.Dense(_wy.Count, r => roots[r] * _wy[r]));
    }

    private double[] Scale(IReadOnlyList<double> ratios) => [.. _effects.SelectMany((effect, k) => Enumerable.Repeat(Math.Sqrt(ratios[k]), effect.Levels.Count))];

    /// <summary>L with L L' the kinship of all levels; null where none are related. Clones have no Cholesky root: then by eigenvectors.</summary>
    private static Matrix<double>? Roots(IReadOnlyList<RandomEffect> effects)
    {
        if (effects.All(effect => effect.Kinship is null)) return null;
        var roots = Matrix<double>.Build.DenseIdentity(effects.Sum(effect => effect.Levels.Count));
        var before = 0;
        foreach (var effect in effects)
        {
            if (effect.Kinship is { } kinship)
            {
                var eigen = kinship.Evd(Symmetricity.Symmetric);
                var values = eigen.EigenValues.Select(value => value.Real).ToArray();
                if (values.Min() < -1e-8 * values.Max()) throw new ArgumentException($"The kinship of {effect.Name} is none: it has a negative eigenvalue.", nameof(effects));
                var root = eigen.EigenVectors * Matrix<double>.Build.DenseOfDiagonalArray([.. values.Select(value => Math.Sqrt(Math.Max(0, value)))]);
                roots.SetSubMatrix(before, before, root);
            }

            before += effect.Levels.Count;
        }

        return roots;
    }
}

/// <summary>There are no more records than terms of the fixed part.</summary>
public sealed class TooFewRecordsException(int records, int terms)
    : Exception(FormattableString.Invariant($"{records} records cannot tell {terms} fixed terms and an error apart. Leave some terms out, or add records."));
