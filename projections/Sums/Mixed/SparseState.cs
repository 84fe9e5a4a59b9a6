using ColonyLineage.Projections.Sums.Sparse;
using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>A sparse model at given ratios of variances.</summary>
internal sealed class SparseState : ISlopes
{
    /// <summary>The slopes at a ratio of zero are taken just above it: there the same formulas hold.</summary>
    private const double JustAbove = 1e-7;

    private readonly SparseModel _model;
    private readonly double[] _ratios;
    private readonly SparseRoot _root;
    private readonly double[] _left;

    public SparseState(SparseModel model, IReadOnlyList<double> ratios)
    {
        (_model, _ratios) = (model, [.. ratios]);
        _root = model.Root(_ratios);
        Residual = Left(model, _root, _ratios, model.Centred, out var solution, out _left);
        Solution = solution;
    }

    public double Residual { get; }

    /// <summary>The unknowns; levels in units of √λ.</summary>
    public double[] Solution { get; }

    /// <summary>The inverse of the equations at their entries.</summary>
    public double[] Inverse => field ??= _root.Inverse();

    /// <summary>ln|V| + ln|X'V⁻¹X|, in units of the error's variance.</summary>
    public double LogDeterminants => _root.LogDeterminant - Design.Precisions.Sum(precision => precision.LogDeterminant);

    private SparseDesign Design => _model.Design;

    /// <summary>y'Py of some column: what is left of its sum of squares once all unknowns are taken out.</summary>
    public static double Left(SparseModel model, SparseRoot root, IReadOnlyList<double> ratios, IReadOnlyList<double> y, out double[] solution) => Left(model, root, ratios, y, out solution, out _);

    /// <summary>The unknowns for some column.</summary>
    public static (double[] Right, double[] Solution) Taken(SparseModel model, SparseRoot root, IReadOnlyList<double> ratios, IReadOnlyList<double> y)
    {
        var (right, scale, read) = (new double[model.Design.Unknowns], model.Design.Scale(ratios), new List<(int Unknown, double Value)>());
        for (var i = 0; i < y.Count; i++)
        {
            if (y[i] == 0) continue;
            model.Design.Read(i, read);
            var weighted = y[i] * (model.Weights?[i] ?? 1);
            foreach (var (unknown, value) in read) right[unknown] += value * scale[unknown] * weighted;
        }

        return (right, root.Solve(right));
    }

    public Vector<double> Slope()
    {
        var above = Above();
        if (above != this) return above.Slope();
        var squares = SquaresOf(Solution);
        return Vector<double>.Build.Dense(_ratios.Length, k => Trace(k) - (_model.Freedom * squares[k] / Residual));
    }

    public IEnumerable<Matrix<double>> Curvatures()
    {
        var above = Above();
        if (above != this) return above.Curvatures();
        // The mean of the curvature that is and the one that is expected: never downwards.
        var (squares, information) = (SquaresOf(Solution), Information());
        return [Matrix<double>.Build.Dense(_ratios.Length, _ratios.Length, (k, j) => _model.Freedom * (information[k, j] - (squares[k] * squares[j] / Residual)) / Residual)];
    }

    /// <summary>w'Pw for the working columns of the effects, and of the error last: half of it, over σ⁶, is the average information of the variances.</summary>
    public Matrix<double> Information() => Products([.. Enumerable.Range(0, _ratios.Length).Select(k => WorkingOf(Solution, k)), _left]);

    /// <summary>w'Pw for some columns of records.</summary>
    public Matrix<double> Products(IReadOnlyList<double[]> columns)
    {
        var taken = columns.Select(column => Taken(_model, _root, _ratios, column)).ToList();
        return Matrix<double>.Build.Dense(columns.Count, columns.Count, (r, c) => Dot(columns[r], columns[c]) - taken[r].Right.Zip(taken[c].Solution, (a, b) => a * b).Sum());
    }

    /// <summary>The sum of products over the records, each by its weight.</summary>
    public double Dot(double[] one, double[] other) => Dot(_model, one, other);

    /// <summary>v'A⁻¹v / λ of each effect for some unknowns.</summary>
    public double[] SquaresOf(double[] unknowns) => [.. _ratios.Select((ratio, k) => Design.Square(k, unknowns) / ratio)];

    /// <summary>Zv / √λ of an effect, record by record: ZAZ'Py where the unknowns are the solution.</summary>
    public double[] WorkingOf(double[] unknowns, int effect)
    {
        var (start, scale) = (Design.Start(effect), 1 / Math.Sqrt(_ratios[effect]));
        return [.. Design.Effects[effect].LevelOf.Select(level => level < 0 ? 0 : unknowns[start + level] * scale)];
    }

    /// <summary>The prediction of a level.</summary>
    public double Level(int effect, int level) => Math.Sqrt(_ratios[effect]) * Solution[Design.Start(effect) + level];

    /// <summary>The solution of the equations for another right side.</summary>
    public double[] Solve(double[] right) => _root.Solve(right);

    /// <summary>What some unknowns make of every record: Xb + Zu.</summary>
    public double[] Fitted(double[] unknowns) => Design.Fitted(_ratios, unknowns);

    private SparseState Above() => _ratios.All(ratio => ratio >= JustAbove) ? this : new SparseState(_model, [.. _ratios.Select(ratio => Math.Max(ratio, JustAbove))]);

    /// <summary>tr(PZAZ') of an effect.</summary>
    private double Trace(int effect) => Told(effect) / _ratios[effect];

    /// <summary>How many of the levels of an effect the records tell, as it were: their number less tr(A⁻¹C), C what is left unknown of them.</summary>
    public double Told(int effect)
    {
        var (from, to) = (Design.Start(effect), Design.Start(effect + 1));
        double sum = 0;
        for (var i = 0; i < Design.Entries.Length; i++)
        {
            var (row, column, precision) = Design.Entries[i];
            if (precision != 0 && row >= from && row < to) sum += (row == column ? 1 : 2) * precision * Inverse[i];
        }

        return to - from - sum;
    }

    private static double Left(SparseModel model, SparseRoot root, IReadOnlyList<double> ratios, IReadOnlyList<double> y, out double[] solution, out double[] left)
    {
        solution = Taken(model, root, ratios, y).Solution;
        left = [.. y.Zip(model.Design.Fitted(ratios, solution), (record, fitted) => record - fitted)];
        // y'Py = y'W(y − Xb − Zu): the smaller of two large sums is not taken from the larger.
        return Math.Max(0, Dot(model, y, left));
    }

    private static double Dot(SparseModel model, IReadOnlyList<double> one, double[] other)
    {
        double sum = 0;
        for (var i = 0; i < other.Length; i++) sum += (model.Weights?[i] ?? 1) * one[i] * other[i];
        return sum;
    }
}
