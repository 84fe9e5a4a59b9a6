namespace ColonyLineage.Projections.Sums.Sparse;

/// <summary>
/// A symmetric system of which most entries are nothing: where its entries lie stays, their values change. The places that fill are worked out once, after
/// Davis 2006, Direct Methods for Sparse Linear Systems (SIAM), chapter 4 (from memory).
/// </summary>
public sealed class SparseSystem
{
    /// <summary>The place of every entry among those of the root.</summary>
    private readonly int[] _places;

    /// <param name="size">How many unknowns.</param>
    /// <param name="entries">Rows and columns of the entries, each pair once, either way round; the diagonal among them.</param>
    /// <param name="last">So many unknowns, the last ones, are eliminated last, in their own order.</param>
    public SparseSystem(int size, IReadOnlyList<(int Row, int Column)> entries, int last = 0)
    {
        Size = size;
        var neighbours = Enumerable.Range(0, size).Select(_ => new HashSet<int>()).ToArray();
        foreach (var (row, column) in entries)
            if (row != column)
            {
                neighbours[row].Add(column);
                neighbours[column].Add(row);
            }

        Order = FillOrder.Of(neighbours, last);
        Turn = new int[size];
        for (var turn = 0; turn < size; turn++) Turn[Order[turn]] = turn;
        (Starts, Rows) = Filled(neighbours);
        _places = [.. entries.Select(entry => Place(entry.Row, entry.Column))];
    }

    public int Size { get; }

    /// <summary>The unknowns in the order of elimination.</summary>
    public int[] Order { get; }

    /// <summary>When an unknown is eliminated.</summary>
    public int[] Turn { get; }

    /// <summary>Where each column of the root begins, the diagonal first.</summary>
    public int[] Starts { get; }

    /// <summary>The rows of the root's entries, upwards within a column.</summary>
    public int[] Rows { get; }

    public int Entries => _places.Length;

    /// <summary>The Cholesky root of the system with these values, in the order of the entries.</summary>
    /// <param name="mayFall">Of the unknowns of the end so many may turn out a combination of those before them, and are then left out: their solution is nothing.</param>
    public SparseRoot Factor(ReadOnlySpan<double> values, int mayFall = 0)
    {
        var filled = new double[Rows.Length];
        for (var i = 0; i < _places.Length; i++) filled[_places[i]] += values[i];
        return new SparseRoot(this, filled, mayFall);
    }

    /// <summary>The place of an entry in the root.</summary>
    public int PlaceOf(int entry) => _places[entry];

    private int Place(int row, int column)
    {
        var (low, high) = (Math.Min(Turn[row], Turn[column]), Math.Max(Turn[row], Turn[column]));
        return Array.BinarySearch(Rows, Starts[low], Starts[low + 1] - Starts[low], high);
    }

    /// <summary>A column of the root has the rows of its own entries, and of the columns whose first row below the diagonal it is.</summary>
    private (int[] Starts, int[] Rows) Filled(HashSet<int>[] neighbours)
    {
        var (starts, columns) = (new int[Size + 1], new int[Size][]);
        var parts = Enumerable.Range(0, Size).Select(_ => new List<int>()).ToArray();
        for (var turn = 0; turn < Size; turn++)
        {
            var rows = new HashSet<int>(neighbours[Order[turn]].Select(one => Turn[one]).Where(other => other > turn));
            foreach (var part in parts[turn])
                foreach (var row in columns[part])
                    if (row > turn) rows.Add(row);
            columns[turn] = [turn, .. rows.Order()];
            if (columns[turn].Length > 1) parts[columns[turn][1]].Add(turn);
            starts[turn + 1] = starts[turn] + columns[turn].Length;
        }

        return (starts, [.. columns.SelectMany(column => column)]);
    }
}
