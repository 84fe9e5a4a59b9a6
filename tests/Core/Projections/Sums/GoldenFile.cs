using System.Globalization;
using ColonyLineage.Support;

namespace ColonyLineage.Core.Tests.Projections.Sums;

/// <summary>Reads the tables under Golden, and compares with them.</summary>
internal static class GoldenFile
{
    /// <summary>The numbers of a table, its heading left out; an empty cell is infinite. Cells that are no numbers are left out too.</summary>
    public static IReadOnlyList<double[]> Rows(string file) =>
    [
        .. File.ReadLines(Path.Combine(Repository.Root, "tests/Core/Projections/Sums/Golden", file)).Skip(1)
            .Select(line => line.Replace("\"", "").Split(',').Where(cell => cell.Length == 0 || cell == "Inf" || double.TryParse(cell, CultureInfo.InvariantCulture, out _))
                .Select(cell => cell is "Inf" or "" ? double.PositiveInfinity : double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()),
    ];

    /// <summary>Fails with the source beside the two numbers.</summary>
    public static void Near(double expected, double? actual, double within, string source) =>
        Assert.True(actual is { } value && (expected.Equals(value) || Math.Abs(expected - value) <= within), $"{expected:R} by {source}, {actual:R} here");
}
