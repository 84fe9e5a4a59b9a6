namespace ColonyLineage.Projections.Sums.Sparse;

/// <summary>The Cholesky root of a sparse symmetric system, column by column.</summary>
public sealed class SparseRoot
{
    /// <summary>An unknown of whose diagonal no more than this part is left is a combination of those before it.</summary>
    private const double Combination = 1e-9;

    private readonly SparseSystem _system;
    private readonly double[] _root;
    private readonly bool[] _fallen;

    /// <param name="values">The values of the system in the places of the root; taken over.</param>
    /// <exception cref="ArithmeticException">The system is not positive definite.</exception>
    internal SparseRoot(SparseSystem system, double[] values, int mayFall)
    {
        (_system, _root, _fallen) = (system, values, new bool[system.Size]);
        var (starts, rows) = (system.Starts, system.Rows);
        // Of every column done the next row to be used, and the columns that are to be used at a row, as chains.
        var (next, first, chain) = (new int[system.Size], new int[system.Size], new int[system.Size]);
        Array.Fill(first, -1);
        var work = new double[system.Size];
        for (var column = 0; column < system.Size; column++)
        {
            for (var place = starts[column]; place < starts[column + 1]; place++) work[rows[place]] = _root[place];
            var before = _root[starts[column]];
            for (var done = first[column]; done >= 0;)
            {
                var (after, from, end) = (chain[done], next[done], starts[done + 1]);
                var factor = _root[from];
                for (var place = from; place < end; place++) work[rows[place]] -= factor * _root[place];
                Chain(done, from + 1);
                done = after;
            }

            var pivot = work[column];
            _fallen[column] = system.Order[column] >= system.Size - mayFall && pivot <= Combination * before;
            if (!_fallen[column] && !(pivot > 0)) throw new ArithmeticException("The system is not positive definite.");
            var root = _fallen[column] ? 1 : Math.Sqrt(pivot);
            for (var place = starts[column]; place < starts[column + 1]; place++)
            {
                _root[place] = _fallen[column] ? 0 : work[rows[place]] / root;
                work[rows[place]] = 0;
            }

            _root[starts[column]] = root;
            LogDeterminant += 2 * Math.Log(root);
            if (!_fallen[column]) Chain(column, starts[column] + 1);
        }

        void Chain(int column, int place)
        {
            if (place >= starts[column + 1]) return;
            next[column] = place;
            (chain[column], first[rows[place]]) = (first[rows[place]], column);
        }
    }

    /// <summary>ln of the determinant, those left out not counted.</summary>
    public double LogDeterminant { get; }

    /// <summary>Whether an unknown is left out, being a combination of those before it.</summary>
    public bool IsLeftOut(int unknown) => _fallen[_system.Turn[unknown]];

    public double[] Solve(ReadOnlySpan<double> right)
    {
        var (starts, rows, size) = (_system.Starts, _system.Rows, _system.Size);
        var x = new double[size];
        for (var turn = 0; turn < size; turn++) x[turn] = _fallen[turn] ? 0 : right[_system.Order[turn]];
        for (var turn = 0; turn < size; turn++)
        {
            if (_fallen[turn]) { x[turn] = 0; continue; }
            x[turn] /= _root[starts[turn]];
            for (var place = starts[turn] + 1; place < starts[turn + 1]; place++) x[rows[place]] -= _root[place] * x[turn];
        }

        for (var turn = size - 1; turn >= 0; turn--)
        {
            if (_fallen[turn]) { x[turn] = 0; continue; }
            for (var place = starts[turn] + 1; place < starts[turn + 1]; place++) x[turn] -= _root[place] * x[rows[place]];
            x[turn] /= _root[starts[turn]];
        }

        var solution = new double[size];
        for (var turn = 0; turn < size; turn++) solution[_system.Order[turn]] = x[turn];
        return solution;
    }

    /// <summary>
    /// The inverse, at the entries of the system only, in their order: all that variances and their traces need. After Takahashi, Fagan and Chen 1973; Misztal and
    /// Perez-Enciso 1993, J. Dairy Sci. 76:1479 (both from memory).
    /// </summary>
    public double[] Inverse()
    {
        var (starts, rows, size) = (_system.Starts, _system.Rows, _system.Size);
        var (inverse, scaled, sums) = (new double[_root.Length], new double[size], new double[size]);
        for (var column = size - 1; column >= 0; column--)
        {
            if (_fallen[column]) continue;
            var (from, end) = (starts[column] + 1, starts[column + 1]);
            var diagonal = _root[from - 1];
            for (var place = from; place < end; place++) scaled[rows[place]] = _root[place] / diagonal;
            for (var place = from; place < end; place++)
            {
                var row = rows[place];
                var (of, sum) = (scaled[row], inverse[starts[row]] * scaled[row]);
                for (var other = starts[row] + 1; other < starts[row + 1]; other++)
                {
                    sums[rows[other]] += inverse[other] * of;
                    sum += inverse[other] * scaled[rows[other]];
                }

                sums[row] += sum;
            }

            var own = 1 / (diagonal * diagonal);
            for (var place = from; place < end; place++)
            {
                inverse[place] = -sums[rows[place]];
                own += sums[rows[place]] * scaled[rows[place]];
            }

            inverse[from - 1] = own;
            for (var place = from; place < end; place++)
            {
                // What was added beyond this column's rows belongs to nobody.
                var row = rows[place];
                for (var other = starts[row]; other < starts[row + 1]; other++) sums[rows[other]] = 0;
            }

            for (var place = from; place < end; place++) scaled[rows[place]] = 0;
        }

        var at = new double[_system.Entries];
        for (var entry = 0; entry < at.Length; entry++) at[entry] = inverse[_system.PlaceOf(entry)];
        return at;
    }
}
