namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>A logistic mixed model at its estimates, on the logit scale.</summary>
public sealed class LogisticFit : IFitted
{
    /// <summary>The variance of the standard logistic distribution: what noughts and ones scatter by of themselves.</summary>
    public const double OwnVariance = Math.PI * Math.PI / 3;

    private readonly SparseModel _linear;
    private readonly double[] _variances;
    private readonly SparseFit _fit;

    internal LogisticFit(SparseModel linear, double[] variances, double logLikelihood, bool converged)
    {
        (_linear, _variances, LogLikelihood, Converged) = (linear, variances, logLikelihood, converged);
        _fit = linear.At(variances, 1);
    }

    private bool[] Estimated => [.. _linear.Design.Effects.Select(effect => effect.GivenVariance is null)];

    /// <summary>The restricted log-likelihood.</summary>
    public double LogLikelihood { get; }

    /// <inheritdoc/>
    public double Error => OwnVariance;

    /// <inheritdoc/>
    public bool Converged { get; }

    /// <inheritdoc/>
    public IReadOnlyList<string> Columns => _fit.Columns;

    /// <inheritdoc/>
    public IReadOnlyList<string> Confounded => _fit.Confounded;

    /// <inheritdoc/>
    public double RemlCriterion => -2 * LogLikelihood;

    /// <inheritdoc/>
    public double Variance(int effect) => _variances[effect];

    /// <inheritdoc/>
    public Contrast? Combine(IReadOnlyList<double> weights) => SparseContrast.OfColumns(_linear, _variances, 1, weights, Estimated, errorIsGiven: true);

    /// <summary>
    /// A combination of the levels of the first effect, whose variance is given, in the model linearised at the mode: the degrees of freedom are Satterthwaite's there.
    /// </summary>
    /// <param name="weights">One for every level.</param>
    public Contrast CombineLevels(IReadOnlyList<double> weights) => SparseContrast.OfLevels(_linear, _variances, Estimated, weights);

    /// <summary>The variances that were estimated, and last the logistic distribution's own.</summary>
    public IReadOnlyList<Component> Components() =>
        [.. _linear.Design.Effects.Select((effect, k) => (effect, k)).Where(one => one.effect.GivenVariance is null).Select(one => new Component(one.effect.Name, _variances[one.k], null)), new Component("residual", OwnVariance, null)];

    /// <inheritdoc/>
    public IReadOnlyList<FixedTerm> Fixed() => _fit.Fixed();

    /// <inheritdoc/>
    public IReadOnlyList<Predicted> Predictions(int effect) => _fit.Predictions(effect);
}
