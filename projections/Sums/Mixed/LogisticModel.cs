using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>
/// A logistic model of noughts and ones with any number of random effects, related or not: logit P = fixed part + random effects. The variances are those of the restricted likelihood,
/// with fixed and random effects integrated out by Laplace's approximation around their common mode (Tierney and Kadane 1986, JASA 81:82, for the approximation; Stiratelli, Laird and
/// Ware 1984, Biometrics 40:961, for the restricted likelihood; both from memory).
/// </summary>
public sealed class LogisticModel
{
    /// <summary>A logit beyond this, or a deviation, means that the likelihood runs away.</summary>
    private const double RunsAway = 15;

    private readonly double[] _y;
    private readonly SparseDesign _design;
    private readonly int[] _estimated;

    /// <summary>Where the last search ended: the next one begins there.</summary>
    private double[] _mode;
    private IReadOnlyList<int>? _kept;

    /// <param name="y">Noughts and ones.</param>
    public LogisticModel(IReadOnlyList<double> y, FixedPart part, IReadOnlyList<RandomEffect> effects)
    {
        if (y.Any(value => value is not (0 or 1))) throw new ArgumentException("Noughts and ones only.", nameof(y));
        (_y, _design) = ([.. y], new SparseDesign(y.Count, part, effects));
        _estimated = [.. Enumerable.Range(0, effects.Count).Where(k => effects[k].GivenVariance is null)];
        _mode = new double[_design.Unknowns];
    }

    /// <exception cref="SeparatedException">The fixed part tells all ones from all noughts: there is no finite estimate.</exception>
    /// <exception cref="TooFewRecordsException">The fixed part takes all there is.</exception>
    public LogisticFit Fit()
    {
        if (_y.Distinct().Count() < 2) throw new SeparatedException("the mean");
        var start = Start();
        var (at, converged) = _estimated.Length == 0 ? (start, true) : Descent.From(deviations => Criterion(Variances(deviations), out _), start, deviations =>
        {
            if (deviations.Enumerate().Any(deviation => Math.Abs(deviation) > RunsAway)) throw new SeparatedException("a random effect");
        }, within: 1e-6, gain: 1e-8, apart: 1e-3);
        // A deviation of next to nothing is nothing: the likelihood is the same on both sides of it.
        var variances = Variances(at.Map(deviation => Math.Abs(deviation) < 1e-4 ? 0 : deviation));
        var criterion = Criterion(variances, out var linear);
        // Groups are a fixed part: one without a one, or without a nought, has no finite logit.
        for (var group = 0; group < _design.Part.Groups.Count; group++)
            if (Math.Abs(_mode[group]) > RunsAway) throw new SeparatedException(_design.Part.Groups[group]);
        for (var c = 0; c < _design.Part.Columns.Count; c++)
            if (Math.Abs(_mode[_design.Start(_design.Effects.Count) + c]) > RunsAway) throw new SeparatedException(_design.Part.Columns[c]);
        var terms = _design.Part.Groups.Count + linear.Kept.Count;
        return new LogisticFit(linear, variances, (terms * Math.Log(2 * Math.PI) / 2) - (criterion / 2), converged);
    }

    /// <summary>A few rounds of Schall 1991, Biometrika 78:719 (from memory), each the cost of a single likelihood, lead near the top of it.</summary>
    private Vector<double> Start()
    {
        var variances = new double[_design.Effects.Count];
        for (var k = 0; k < variances.Length; k++) variances[k] = _design.Effects[k].GivenVariance ?? .25;
        for (var round = 0; round < 8 && _estimated.Length > 0; round++)
        {
            Mode(variances, out var linear);
            var state = new SparseState(linear, variances);
            foreach (var k in _estimated)
                variances[k] = Math.Clamp(variances[k] * _design.Square(k, _mode) / Math.Max(state.Told(k), 1e-6), 1e-4, RunsAway);
        }

        return Vector<double>.Build.Dense(_estimated.Length, i => Math.Sqrt(variances[_estimated[i]]));
    }

    private double[] Variances(Vector<double> deviations)
    {
        double[] variances = [.. _design.Effects.Select(effect => effect.GivenVariance ?? 0)];
        for (var i = 0; i < _estimated.Length; i++) variances[_estimated[i]] = deviations[i] * deviations[i];
        return variances;
    }

    /// <summary>-2 × the restricted log-likelihood by Laplace, less p ln 2π, with the model linearised at the mode.</summary>
    private double Criterion(double[] variances, out SparseModel linear)
    {
        var penalised = Mode(variances, out linear);
        return penalised + linear.Root(variances).LogDeterminant - _design.Precisions.Sum(precision => precision.LogDeterminant);
    }

    /// <summary>Newton's steps to the common mode of fixed and random effects; -2 ln of the joint density there, without constants.</summary>
    private double Mode(double[] variances, out SparseModel linear)
    {
        var value = Joint(_mode, variances);
        if (!double.IsFinite(value)) value = Joint(_mode = new double[_design.Unknowns], variances);
        for (var step = 0; ; step++)
        {
            linear = Linearised(variances);
            if (step == 100) return value;
            var root = linear.Root(variances);
            var next = SparseState.Taken(linear, root, variances, linear.Y).Solution;
            var there = Joint(next, variances);
            for (var halved = 0; halved < 40 && !(there <= value + (1e-13 * Math.Abs(value))); halved++)
            {
                next = [.. next.Zip(_mode, (one, other) => (one + other) / 2)];
                there = Joint(next, variances);
            }

            var (gain, far) = (value - there, next.Zip(_mode, (one, other) => Math.Abs(one - other)).Max());
            if (!(there <= value + (1e-13 * Math.Abs(value)))) return value;
            (_mode, value) = (next, there);
            // Newton's steps square what is missing: after one as small as this nothing is.
            if (far < 1e-6 || (gain < 1e-13 && far < 1e-5))
            {
                linear = Linearised(variances);
                return value;
            }
        }
    }

    /// <summary>The working records and their weights at the mode.</summary>
    private SparseModel Linearised(double[] variances)
    {
        var logits = _design.Fitted(variances, _mode);
        var (working, weights) = (new double[_y.Length], new double[_y.Length]);
        for (var i = 0; i < _y.Length; i++)
        {
            var chance = SpecialFunctions.Logistic(logits[i]);
            weights[i] = Math.Max(chance * (1 - chance), 1e-10);
            working[i] = logits[i] + ((_y[i] - chance) / weights[i]);
        }

        var linear = new SparseModel(_design, working, weights, _kept);
        _kept = linear.Kept;
        return linear;
    }

    private double Joint(double[] unknowns, double[] variances)
    {
        var logits = _design.Fitted(variances, unknowns);
        double sum = 0;
        for (var i = 0; i < _y.Length; i++) sum -= 2 * ((_y[i] * logits[i]) - (logits[i] > 0 ? logits[i] + Math.Log(1 + Math.Exp(-logits[i])) : Math.Log(1 + Math.Exp(logits[i]))));
        for (var k = 0; k < variances.Length; k++) sum += _design.Square(k, unknowns);
        return sum;
    }
}
