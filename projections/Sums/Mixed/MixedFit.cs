using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>A variance and its standard error by the expected information; null where the variance is at zero.</summary>
public sealed record Component(string Name, double Variance, double? StandardError);

/// <summary>A fixed term.</summary>
public sealed record FixedTerm(string Name, double Estimate, double StandardError);

/// <summary>What is predicted for a level.</summary>
/// <param name="Blup">The best linear unbiased prediction.</param>
/// <param name="StandardError">√PEV from the full equations: the fixed terms are not taken as known.</param>
/// <param name="Reliability">1 − PEV / its variance before the records; 0 where that variance is zero.</param>
public sealed record Predicted(string Effect, string Level, double Blup, double StandardError, double Reliability);

/// <summary>The difference of two levels of one effect, with its standard error.</summary>
public sealed record Difference(string A, string B, double Value, double StandardError)
{
    /// <summary>The chance that A is above B, the variances taken as known; ½ where nothing tells them apart.</summary>
    public double ChanceAIsAbove => StandardError > 0 ? MathNet.Numerics.Distributions.Normal.CDF(0, 1, Value / StandardError) : Value == 0 ? .5 : Value > 0 ? 1 : 0;
}

/// <summary>A mixed model at its estimates.</summary>
public sealed class MixedFit : IFitted
{
    private readonly MixedModel _model;
    private readonly ModelState _state;
    private readonly IReadOnlyList<double> _ratios;
    private readonly Vector<double> _blups;
    private readonly Matrix<double> _pev;

    internal MixedFit(MixedModel model, ModelState state, IReadOnlyList<double> ratios, double error, bool converged)
    {
        (_model, _state, _ratios, Error, Converged) = (model, state, ratios, error, converged);
        double[] ofLevel = [.. model.Effects.SelectMany((effect, k) => Enumerable.Repeat(ratios[k], effect.Levels.Count))];
        var blups = Vector<double>.Build.Dense(ofLevel.Length, i => ofLevel[i] * state.T[i]);
        var pev = Matrix<double>.Build.Dense(ofLevel.Length, ofLevel.Length, (r, c) => error * ((r == c ? ofLevel[r] : 0) - (ofLevel[r] * state.B[r, c] * ofLevel[c])));
        (_blups, _pev) = model.LevelRoots is { } roots ? (roots * blups, roots * pev * roots.Transpose()) : (blups, pev);
    }

    /// <summary>The error's variance.</summary>
    public double Error { get; }

    /// <summary>Whether the search ended where the likelihood is level.</summary>
    public bool Converged { get; }

    /// <summary>The columns of the fixed part, those that cannot be told apart among them.</summary>
    public IReadOnlyList<string> Columns => _model.Part.Columns;

    /// <summary>Columns of the fixed part that cannot be told from its groups and the columns before them.</summary>
    public IReadOnlyList<string> Confounded => _model.Confounded;

    /// <summary>-2 × the restricted log-likelihood, constants included.</summary>
    public double RemlCriterion => (_model.Freedom * Math.Log(2 * Math.PI * Error)) + _state.LogDeterminants + (_state.Residual / Error);

    internal ModelState State => _state;

    internal IReadOnlyList<double> Ratios => _ratios;

    internal MixedModel Model => _model;

    /// <summary>The variance of an effect.</summary>
    public double Variance(int effect) => _ratios[effect] * Error;

    /// <inheritdoc/>
    public Contrast? Combine(IReadOnlyList<double> weights) => Contrast.KenwardRoger(this, weights);

    /// <summary>The variances, the error's last.</summary>
    public IReadOnlyList<Component> Components()
    {
        var names = _model.Effects.Select(effect => effect.Name).Append("residual").ToList();
        var there = Enumerable.Range(0, names.Count).Where(k => k == names.Count - 1 || _ratios[k] > 0).ToList();
        var information = _state.Information(_ratios);
        var part = Matrix<double>.Build.Dense(there.Count, there.Count, (r, c) => information[there[r], there[c]]);
        var covariance = Math.Abs(part.Determinant()) > 0 ? part.Inverse() * (Error * Error) : null;
        return
        [
            .. names.Select((name, k) => new Component(
                name, k == names.Count - 1 ? Error : Variance(k),
                there.IndexOf(k) is >= 0 and var at && covariance is { } known && known[at, at] is > 0 and var square ? Math.Sqrt(square) : null)),
        ];
    }

    /// <summary>The fixed terms: the groups' means at zero of every further column, then those columns that can be told apart.</summary>
    public IReadOnlyList<FixedTerm> Fixed()
    {
        var swept = _model.Swept;
        var (kept, levels) = (swept.Kept.Count, _blups.Count);
        var columns = kept == 0 ? null : _model.XxInverse * (swept.Xy - (swept.Xz * _blups));
        // The joint covariance of the columns' terms and of the predictions' errors.
        var joint = Matrix<double>.Build.Dense(kept + levels, kept + levels);
        joint.SetSubMatrix(kept, kept, _pev);
        if (kept > 0)
        {
            var over = _model.XxInverse * swept.Xz;
            var cross = -(over * _pev);
            joint.SetSubMatrix(0, 0, (_model.XxInverse * Error) - (cross * over.Transpose()));
            joint.SetSubMatrix(0, kept, cross);
            joint.SetSubMatrix(kept, 0, cross.Transpose());
        }

        var all = Vector<double>.Build.Dense(kept + levels, i => i < kept ? columns![i] : _blups[i - kept]);
        return
        [
            .. _model.Part.Groups.Select((name, group) =>
            {
                var means = swept.GroupMeans.Row(group);
                return new FixedTerm(name, swept.GroupMeanOfY[group] - (means * all), Math.Sqrt((Error / swept.GroupSizes[group]) + (means * (joint * means))));
            }),
            .. Enumerable.Range(0, kept).Select(c => new FixedTerm(_model.Part.Columns[swept.Kept[c]], columns![c], Math.Sqrt(joint[c, c]))),
        ];
    }

    /// <summary>What is predicted for the levels of an effect.</summary>
    public IReadOnlyList<Predicted> Predictions(int effect)
    {
        var (of, before) = (_model.Effects[effect], _model.LevelsBefore(effect));
        return
        [
            .. of.Levels.Select((level, i) =>
            {
                var (pev, variance) = (Math.Max(0, _pev[before + i, before + i]), Variance(effect) * (of.Kinship?[i, i] ?? 1));
                return new Predicted(of.Name, level, _blups[before + i], Math.Sqrt(pev), variance > 0 ? 1 - (pev / variance) : 0);
            }),
        ];
    }

    /// <summary>The differences of all pairs of levels of an effect.</summary>
    public IReadOnlyList<Difference> Differences(int effect)
    {
        var (levels, before) = (_model.Effects[effect].Levels, _model.LevelsBefore(effect));
        return
        [
            .. from a in Enumerable.Range(0, levels.Count)
               from b in Enumerable.Range(a + 1, levels.Count - a - 1)
               let square = _pev[before + a, before + a] + _pev[before + b, before + b] - (2 * _pev[before + a, before + b])
               select new Difference(levels[a], levels[b], _blups[before + a] - _blups[before + b], Math.Sqrt(Math.Max(0, square))),
        ];
    }
}
