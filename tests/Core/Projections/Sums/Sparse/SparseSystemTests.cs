using ColonyLineage.Projections.Sums.Sparse;
using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Core.Tests.Projections.Sums.Sparse;

/// <summary>The root of a sparse system, its solutions and its inverse against those of a library's dense one.</summary>
public class SparseSystemTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 40)];

    [Theory, MemberData(nameof(Seeds))]
    public void It_solves_and_inverts_as_the_dense_one_does(int seed)
    {
        var random = new Random(seed);
        var size = random.Next(1, 60);
        var (dense, entries, values) = Made(random, size);
        var system = new SparseSystem(size, entries, last: random.Next(Math.Min(size, 4)));
        var root = system.Factor(values);
        var right = Vector<double>.Build.Dense(size, _ => random.NextDouble() - .5);
        Assert.Equal(dense.Cholesky().DeterminantLn, root.LogDeterminant, 1e-9);
        Assert.True((dense.Solve(right) - Vector<double>.Build.Dense(root.Solve(right.ToArray()))).L2Norm() < 1e-9);
        var (inverse, here) = (dense.Inverse(), root.Inverse());
        for (var i = 0; i < entries.Count; i++) Assert.Equal(inverse[entries[i].Row, entries[i].Column], here[i], 1e-10);
        Assert.Equal(Enumerable.Range(0, size), system.Order.Order());
    }

    [Fact]
    public void The_last_keep_their_order_and_a_combination_falls_out()
    {
        // The third is the sum of the first two; the last is on its own.
        var columns = Matrix<double>.Build.DenseOfArray(new double[,] { { 1, 0, 1, 0 }, { 0, 1, 1, 0 }, { 1, 1, 2, 0 }, { 0, 0, 0, 1 } });
        var products = columns.TransposeThisAndMultiply(columns);
        var entries = (from r in Enumerable.Range(0, 4) from c in Enumerable.Range(r, 4 - r) select (r, c)).ToList();
        var system = new SparseSystem(4, entries, last: 4);
        var root = system.Factor([.. entries.Select(entry => products[entry.r, entry.c])], mayFall: 4);
        Assert.Equal([0, 1, 2, 3], system.Order);
        Assert.Equal([false, false, true, false], Enumerable.Range(0, 4).Select(root.IsLeftOut));
        Assert.Equal(Math.Log(3), root.LogDeterminant, 12);
        var solved = root.Solve([2, 3, 5, 7]);
        Assert.Equal(2, (products[0, 0] * solved[0]) + (products[0, 1] * solved[1]), 12);
        Assert.Equal((0, 7), (solved[2], solved[3]));
        Assert.Equal(2.0 / 3, root.Inverse()[0], 12);
        Assert.Throws<ArithmeticException>(() => system.Factor([.. entries.Select(entry => products[entry.r, entry.c])]));
    }

    /// <summary>What fills is little where it can be: the leaves of a star go before its middle.</summary>
    [Fact]
    public void The_middle_of_a_star_goes_last()
    {
        List<(int, int)> entries = [.. Enumerable.Range(0, 500).Select(i => (i, i)), .. Enumerable.Range(1, 499).Select(i => (0, i))];
        Assert.Equal(999, new SparseSystem(500, entries).Rows.Length);
    }

    private static (Matrix<double> Dense, List<(int Row, int Column)> Entries, double[] Values) Made(Random random, int size)
    {
        var pairs = Enumerable.Range(0, random.Next(3 * size)).Select(_ => (Row: random.Next(size), Column: random.Next(size))).Where(pair => pair.Row < pair.Column).Distinct().ToList();
        var dense = Matrix<double>.Build.Dense(size, size);
        foreach (var (row, column) in pairs) dense[row, column] = dense[column, row] = random.NextDouble() - .5;
        for (var i = 0; i < size; i++) dense[i, i] = .1 + dense.Row(i).L1Norm() + random.NextDouble();
        List<(int Row, int Column)> entries = [.. Enumerable.Range(0, size).Select(i => (i, i)), .. pairs.Select(pair => random.Next(2) == 0 ? pair : (pair.Column, pair.Row))];
        return (dense, entries, [.. entries.Select(entry => dense[entry.Row, entry.Column])]);
    }
}
