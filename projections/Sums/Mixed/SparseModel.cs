using ColonyLineage.Projections.Sums.Sparse;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>
/// The same model as <see cref="MixedModel"/>, worked out from Henderson's mixed-model equations as a sparse system: for tens of thousands of levels, and for
/// queens of a pedigree, whose kinship is dense while its inverse is not. Slopes and steps by average information, Gilmour, Thompson and Cullis 1995, Biometrics
/// 51:1440 (from memory).
/// </summary>
/// <remarks>
/// The effects are taken as u = √λ v, so that the equations stay whole where a ratio λ is 0: [X'X X'Z√λ; √λZ'X √λZ'Z√λ + A⁻¹]. The unknowns are the groups of the
/// fixed part, the levels, and the further columns, which come last so that one that is a combination of others falls out as it does in the dense model.
/// </remarks>
public sealed class SparseModel : ILikelihood
{
    private readonly int[] _starts;
    private readonly SparseSystem _system;

    /// <summary>Of every entry of the system: its unknowns, its part of the cross products and of A⁻¹.</summary>
    private readonly (int Row, int Column, double Cross, double Precision)[] _entries;

    private readonly double[] _groupMeans;

    /// <summary>Records less their group's mean: fewer digits are lost.</summary>
    private readonly double[] _centred;

    /// <param name="y">The records. At least one more than the fixed part has terms.</param>
    /// <exception cref="TooFewRecordsException">The fixed part takes all there is.</exception>
    public SparseModel(IReadOnlyList<double> y, FixedPart part, IReadOnlyList<RandomEffect> effects)
    {
        if (effects.Any(effect => effect.Kinship is not null)) throw new ArgumentException("Relations are given by their inverse here.", nameof(effects));
        (Y, Part, Effects) = (y, part, effects);
        _starts = new int[effects.Count + 1];
        _starts[0] = part.Groups.Count;
        for (var k = 0; k < effects.Count; k++) _starts[k + 1] = _starts[k] + effects[k].Levels.Count;
        Precisions = [.. effects.Select(effect => effect.Precision ?? Precision.None(effect.Levels.Count))];
        _entries = Entries();
        _system = new SparseSystem(Unknowns, [.. _entries.Select(entry => (entry.Row, entry.Column))], part.Columns.Count);
        var sizes = new int[part.Groups.Count];
        _groupMeans = new double[sizes.Length];
        for (var i = 0; i < y.Count; i++)
        {
            sizes[part.GroupOf[i]]++;
            _groupMeans[part.GroupOf[i]] += y[i];
        }

        for (var group = 0; group < sizes.Length; group++) _groupMeans[group] /= sizes[group];
        _centred = [.. y.Select((value, i) => value - _groupMeans[part.GroupOf[i]])];
        // Which columns fall out does not depend on the ratios: they are a combination of other fixed ones.
        var root = Root([.. effects.Select(_ => 0.0)]);
        Kept = [.. Enumerable.Range(0, part.Columns.Count).Where(column => !root.IsLeftOut(_starts[^1] + column))];
        Freedom = y.Count - part.Groups.Count - Kept.Count;
        if (Freedom < 1) throw new TooFewRecordsException(y.Count, part.Groups.Count + Kept.Count);
    }

    /// <summary>Records less terms of the fixed part.</summary>
    public int Freedom { get; }

    internal IReadOnlyList<double> Y { get; }

    internal FixedPart Part { get; }

    internal IReadOnlyList<RandomEffect> Effects { get; }

    internal IReadOnlyList<Precision> Precisions { get; }

    /// <summary>Columns that are no combination of the groups and of columns before them.</summary>
    internal IReadOnlyList<int> Kept { get; }

    internal int Unknowns => _starts[^1] + Part.Columns.Count;

    internal double GroupMean(int group) => _groupMeans[group];

    /// <summary>The first unknown of an effect; of the further columns after the last.</summary>
    internal int Start(int effect) => _starts[effect];

    /// <summary>The variances that make the records likeliest, none below zero, and all that follows from them.</summary>
    public SparseFit Reml()
    {
        var (ratios, converged) = RatioSearch.From(this, [.. Effects.Select(_ => 1.0)]);
        var state = new SparseState(this, ratios);
        return new SparseFit(this, state, ratios, state.Residual / Freedom, converged);
    }

    /// <summary>The same with variances that are given.</summary>
    /// <param name="variances">One for each effect, 0 or more.</param>
    public SparseFit At(IReadOnlyList<double> variances, double error)
    {
        double[] ratios = [.. variances.Select(variance => variance / error)];
        return new SparseFit(this, new SparseState(this, ratios), ratios, error, true);
    }

    double ILikelihood.Criterion(IReadOnlyList<double> ratios)
    {
        SparseRoot root;
        try
        {
            root = Root(ratios);
        }
        catch (ArithmeticException)
        {
            // So large that a double holds nothing of the error beside them.
            return double.PositiveInfinity;
        }

        var residual = SparseState.Left(this, root, ratios, _centred, out _);
        return residual <= 0 ? double.NegativeInfinity : (Freedom * Math.Log(residual)) + root.LogDeterminant;
    }

    ISlopes ILikelihood.At(IReadOnlyList<double> ratios) => new SparseState(this, ratios);

    internal IReadOnlyList<double> Centred => _centred;

    internal SparseRoot Root(IReadOnlyList<double> ratios)
    {
        var scale = Scale(ratios);
        var values = new double[_entries.Length];
        for (var i = 0; i < values.Length; i++)
        {
            var (row, column, cross, precision) = _entries[i];
            values[i] = (cross * scale[row] * scale[column]) + precision;
        }

        return _system.Factor(values, Part.Columns.Count);
    }

    /// <summary>What each unknown is counted by: √λ for a level, 1 for a fixed term.</summary>
    internal double[] Scale(IReadOnlyList<double> ratios)
    {
        var scale = new double[Unknowns];
        Array.Fill(scale, 1);
        for (var k = 0; k < Effects.Count; k++) scale.AsSpan(_starts[k], Effects[k].Levels.Count).Fill(Math.Sqrt(ratios[k]));
        return scale;
    }

    /// <summary>The places of the diagonal and of A⁻¹ among the entries: of each its effect (-1: none), its unknowns and its value.</summary>
    internal IEnumerable<(int Entry, int Row, int Column, double Precision)> PrecisionEntries()
    {
        for (var i = 0; i < _entries.Length; i++) yield return (i, _entries[i].Row, _entries[i].Column, _entries[i].Precision);
    }

    /// <summary>A record's unknowns with their values.</summary>
    internal void Read(int record, List<(int Unknown, double Value)> into)
    {
        into.Clear();
        into.Add((Part.GroupOf[record], 1));
        for (var k = 0; k < Effects.Count; k++)
            if (Effects[k].LevelOf[record] is >= 0 and var level) into.Add((_starts[k] + level, 1));
        for (var c = 0; c < Part.Columns.Count; c++)
            if (Part.Values[record][c] is not 0 and var value) into.Add((_starts[^1] + c, value));
    }

    private (int, int, double, double)[] Entries()
    {
        var sums = new Dictionary<(int Row, int Column), (double Cross, double Precision)>();
        void Add(int one, int other, double cross, double precision)
        {
            var key = one < other ? (one, other) : (other, one);
            var (before, known) = sums.GetValueOrDefault(key);
            sums[key] = (before + cross, known + precision);
        }

        // A column that is nothing anywhere has its place on the diagonal as well.
        for (var unknown = 0; unknown < Unknowns; unknown++) Add(unknown, unknown, 0, 0);
        var read = new List<(int Unknown, double Value)>();
        for (var i = 0; i < Y.Count; i++)
        {
            Read(i, read);
            for (var a = 0; a < read.Count; a++)
                for (var b = a; b < read.Count; b++) Add(read[a].Unknown, read[b].Unknown, read[a].Value * read[b].Value, 0);
        }

        for (var k = 0; k < Effects.Count; k++)
            foreach (var (row, column, value) in Precisions[k].Entries) Add(_starts[k] + row, _starts[k] + column, 0, value);
        return [.. sums.OrderBy(pair => pair.Key).Select(pair => (pair.Key.Row, pair.Key.Column, pair.Value.Cross, pair.Value.Precision))];
    }
}
