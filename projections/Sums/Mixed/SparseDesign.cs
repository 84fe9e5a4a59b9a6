using ColonyLineage.Projections.Sums.Sparse;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>
/// What the equations of a sparse model look like before there are records: the unknowns are the groups of the fixed part, the levels of the effects, and the further columns,
/// which come last so that one that is a combination of others falls out as it does in the dense model.
/// </summary>
internal sealed class SparseDesign
{
    private readonly int[] _starts;
    private readonly SparseSystem _system;

    /// <summary>Where the products of a record's unknowns, each with each, lie among the entries: record after record.</summary>
    private readonly List<int> _slots = [];

    public SparseDesign(int records, FixedPart part, IReadOnlyList<RandomEffect> effects)
    {
        if (effects.Any(effect => effect.Kinship is not null)) throw new ArgumentException("Relations are given by their inverse here.", nameof(effects));
        (Records, Part, Effects) = (records, part, effects);
        _starts = new int[effects.Count + 1];
        _starts[0] = part.Groups.Count;
        for (var k = 0; k < effects.Count; k++) _starts[k + 1] = _starts[k] + effects[k].Levels.Count;
        Precisions = [.. effects.Select(effect => effect.Precision ?? Precision.None(effect.Levels.Count))];
        Entries = MakeEntries();
        _system = new SparseSystem(Unknowns, [.. Entries.Select(entry => (entry.Row, entry.Column))], part.Columns.Count);
    }

    public int Records { get; }

    public FixedPart Part { get; }

    public IReadOnlyList<RandomEffect> Effects { get; }

    public IReadOnlyList<Precision> Precisions { get; }

    /// <summary>The entries of the equations with their part of A⁻¹.</summary>
    public (int Row, int Column, double Precision)[] Entries { get; }

    public int Unknowns => _starts[^1] + Part.Columns.Count;

    /// <summary>The first unknown of an effect; of the further columns after the last.</summary>
    public int Start(int effect) => _starts[effect];

    /// <summary>A record's unknowns with their values.</summary>
    public void Read(int record, List<(int Unknown, double Value)> into)
    {
        into.Clear();
        into.Add((Part.GroupOf[record], 1));
        for (var k = 0; k < Effects.Count; k++)
            if (Effects[k].LevelOf[record] is >= 0 and var level) into.Add((_starts[k] + level, 1));
        for (var c = 0; c < Part.Columns.Count; c++)
            if (Part.Values[record][c] is not 0 and var value) into.Add((_starts[^1] + c, value));
    }

    /// <summary>The cross products of the records at the entries.</summary>
    /// <param name="weights">One for each record; null for 1.</param>
    public double[] Cross(double[]? weights)
    {
        var (cross, read, slot) = (new double[Entries.Length], new List<(int Unknown, double Value)>(), 0);
        for (var i = 0; i < Records; i++)
        {
            Read(i, read);
            var weight = weights?[i] ?? 1;
            for (var a = 0; a < read.Count; a++)
                for (var b = a; b < read.Count; b++) cross[_slots[slot++]] += weight * read[a].Value * read[b].Value;
        }

        return cross;
    }

    /// <summary>The root of the equations.</summary>
    public SparseRoot Root(double[] cross, IReadOnlyList<double> ratios)
    {
        var scale = Scale(ratios);
        var values = new double[Entries.Length];
        for (var i = 0; i < values.Length; i++)
        {
            var (row, column, precision) = Entries[i];
            values[i] = (cross[i] * scale[row] * scale[column]) + precision;
        }

        return _system.Factor(values, Part.Columns.Count);
    }

    /// <summary>What each unknown is counted by: √λ for a level, 1 for a fixed term.</summary>
    public double[] Scale(IReadOnlyList<double> ratios)
    {
        var scale = new double[Unknowns];
        Array.Fill(scale, 1);
        for (var k = 0; k < Effects.Count; k++) scale.AsSpan(_starts[k], Effects[k].Levels.Count).Fill(Math.Sqrt(ratios[k]));
        return scale;
    }

    /// <summary>What some unknowns make of every record: Xb + Zu.</summary>
    public double[] Fitted(IReadOnlyList<double> ratios, double[] unknowns)
    {
        var (scale, read, fitted) = (Scale(ratios), new List<(int Unknown, double Value)>(), new double[Records]);
        for (var i = 0; i < fitted.Length; i++)
        {
            Read(i, read);
            foreach (var (unknown, value) in read) fitted[i] += value * scale[unknown] * unknowns[unknown];
        }

        return fitted;
    }

    /// <summary>v'A⁻¹v of an effect.</summary>
    public double Square(int effect, double[] unknowns)
    {
        double sum = 0;
        foreach (var (row, column, value) in Precisions[effect].Entries)
            sum += (row == column ? 1 : 2) * value * unknowns[_starts[effect] + row] * unknowns[_starts[effect] + column];
        return sum;
    }

    private (int, int, double)[] MakeEntries()
    {
        var (places, precisions) = (new Dictionary<(int Row, int Column), int>(), new List<double>());
        int Place(int one, int other)
        {
            var key = one < other ? (one, other) : (other, one);
            if (places.TryGetValue(key, out var place)) return place;
            precisions.Add(0);
            return places[key] = precisions.Count - 1;
        }

        // A column that is nothing anywhere has its place on the diagonal as well.
        for (var unknown = 0; unknown < Unknowns; unknown++) Place(unknown, unknown);
        var read = new List<(int Unknown, double Value)>();
        for (var i = 0; i < Records; i++)
        {
            Read(i, read);
            for (var a = 0; a < read.Count; a++)
                for (var b = a; b < read.Count; b++) _slots.Add(Place(read[a].Unknown, read[b].Unknown));
        }

        for (var k = 0; k < Effects.Count; k++)
            foreach (var (row, column, value) in Precisions[k].Entries)
            {
                var place = Place(_starts[k] + row, _starts[k] + column);
                precisions[place] += value;
            }

        return [.. places.OrderBy(pair => pair.Value).Select(pair => (pair.Key.Row, pair.Key.Column, precisions[pair.Value]))];
    }
}
