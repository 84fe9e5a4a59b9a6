using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>A sparse mixed model at its estimates.</summary>
public sealed class SparseFit : IFitted
{
    private readonly SparseModel _model;
    private readonly SparseState _state;
    private readonly IReadOnlyList<double> _ratios;

    internal SparseFit(SparseModel model, SparseState state, IReadOnlyList<double> ratios, double error, bool converged) =>
        (_model, _state, _ratios, Error, Converged) = (model, state, ratios, error, converged);

    /// <inheritdoc/>
    public double Error { get; }

    /// <inheritdoc/>
    public bool Converged { get; }

    /// <inheritdoc/>
    public IReadOnlyList<string> Columns => _model.Design.Part.Columns;

    /// <inheritdoc/>
    public IReadOnlyList<string> Confounded => [.. _model.Design.Part.Columns.Where((_, column) => !_model.Kept.Contains(column))];

    /// <inheritdoc/>
    public double RemlCriterion => (_model.Freedom * Math.Log(2 * Math.PI * Error)) + _state.LogDeterminants + (_state.Residual / Error);

    /// <inheritdoc/>
    public double Variance(int effect) => _ratios[effect] * Error;

    /// <inheritdoc/>
    public Contrast? Combine(IReadOnlyList<double> weights) => SparseContrast.OfColumns(_model, _ratios, Error, weights, [.. _ratios.Select(_ => true)], errorIsGiven: false);

    /// <summary>The variances, the error's last, with standard errors by the average information.</summary>
    public IReadOnlyList<Component> Components()
    {
        var names = _model.Design.Effects.Select(effect => effect.Name).Append("residual").ToList();
        var there = Enumerable.Range(0, names.Count).Where(k => k == names.Count - 1 || _ratios[k] > 0).ToList();
        // Ratios at zero have no working column, and are not asked for one.
        var information = there.Count == names.Count ? _state.Information() : Without(there);
        var covariance = Math.Abs(information.Determinant()) > 0 ? information.Inverse() * (2 * Error * Error * Error) : null;
        return [.. names.Select((name, k) => new Component(
            name, k == names.Count - 1 ? Error : Variance(k), there.IndexOf(k) is >= 0 and var at && covariance is { } known && known[at, at] is > 0 and var square ? Math.Sqrt(square) : null))];
    }

    /// <inheritdoc/>
    public IReadOnlyList<FixedTerm> Fixed()
    {
        var errors = Errors();
        double Of(int unknown) => Math.Sqrt(Error * errors[unknown]);
        return
        [
            .. _model.Design.Part.Groups.Select((name, group) => new FixedTerm(name, _model.GroupMean(group) + _state.Solution[group], Of(group))),
            .. _model.Kept.Select(column => new FixedTerm(_model.Design.Part.Columns[column], _state.Solution[_model.Design.Start(_model.Design.Effects.Count) + column], Of(_model.Design.Start(_model.Design.Effects.Count) + column))),
        ];
    }

    /// <inheritdoc/>
    public IReadOnlyList<Predicted> Predictions(int effect)
    {
        var (of, start, variance, errors) = (_model.Design.Effects[effect], _model.Design.Start(effect), Variance(effect), Errors());
        return
        [
            .. of.Levels.Take(of.Reported ?? of.Levels.Count).Select((level, i) =>
            {
                var pev = variance * errors[start + i];
                return new Predicted(of.Name, level, _state.Level(effect, i), Math.Sqrt(pev), variance > 0 ? 1 - (pev / (variance * _model.Design.Precisions[effect].Kinship[i])) : 0);
            }),
        ];
    }

    /// <summary>The diagonal of the equations' inverse.</summary>
    private double[] Errors()
    {
        var errors = new double[_model.Design.Unknowns];
        for (var i = 0; i < _model.Design.Entries.Length; i++)
            if (_model.Design.Entries[i] is var (row, column, _) && row == column) errors[row] = Math.Max(0, _state.Inverse[i]);
        return errors;
    }

    private Matrix<double> Without(List<int> there)
    {
        var effects = there.Where(k => k < _model.Design.Effects.Count).ToList();
        return new SparseState(_model.Only(effects), [.. effects.Select(k => _ratios[k])]).Information();
    }
}
