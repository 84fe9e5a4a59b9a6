using System.Globalization;
using ColonyLineage.Support;

namespace ColonyLineage.Core.Tests.Projections.Sums.Mixed;

/// <summary>A table under Golden by the names of its columns.</summary>
internal sealed class Table
{
    private readonly string[] _heading;
    private readonly string[][] _rows;

    public Table(string file)
    {
        var lines = File.ReadAllLines(Path.Combine(Repository.Root, "tests/Core/Projections/Sums/Golden", file)).Select(line => line.Replace("\"", "").Split(',')).ToArray();
        (_heading, _rows) = (lines[0], lines[1..]);
    }

    public int Count => _rows.Length;

    public IReadOnlyList<string> Texts(string column) => [.. _rows.Select(row => row[Array.IndexOf(_heading, column)])];

    public double[] Numbers(string column) => [.. Texts(column).Select(cell => cell is "" or "NA" ? double.NaN : cell == "Inf" ? double.PositiveInfinity : double.Parse(cell, CultureInfo.InvariantCulture))];
}
