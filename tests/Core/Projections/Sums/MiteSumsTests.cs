using System.Globalization;
using ColonyLineage.Projections.Sums;
using ColonyLineage.Support;

namespace ColonyLineage.Core.Tests.Projections.Sums;

/// <summary>Counts between colonies, against values worked out in R (see Golden/mites/SOURCE.md) and the printed example of Henderson and Tilton.</summary>
public class MiteSumsTests
{
    [Fact]
    public void Allowed_totals()
    {
        var rows = 0;
        foreach (var row in Rows("allowed-totals.csv"))
        {
            var (washes, k, threshold, most) = ((int)row[0], row[1], row[2], (int)row[3]);
            Assert.True((NegativeBinomial.LargestTotal(washes, threshold, k) ?? -1) == most, $"{washes} washes, k {k}, T {threshold}: {most} by R's pnbinom");
            Close(row[4], NegativeBinomial.Below(most, washes * threshold, washes * k), 1e-9);
            Close(row[5], NegativeBinomial.Below(most, washes * threshold / 3, washes * k), 1e-9);
            rows++;
        }

        Assert.Equal(180, rows);
    }

    [Fact]
    public void Upper_limits()
    {
        var rows = Rows("upper-limits.csv").ToList();
        Assert.Equal(60, rows.Count);
        foreach (var row in rows)
        {
            var upper = NegativeBinomial.UpperMean((int)row[1], (int)row[0], row[2]);
            Close(row[3], upper, 1e-8);
            Close(row[4], upper / 3, 1e-8);
        }
    }

    // The rule of Poisson's claims falsely in 32.3 % of the cases where k is 1: computed in R 4.2.2. It must not be used.
    [Fact]
    public void Poissons_rule_would_claim_too_much()
    {
        var most = NegativeBinomial.LargestTotal(8, 9, double.PositiveInfinity)!.Value;
        Assert.Equal(57, most);
        Assert.Equal(.323, NegativeBinomial.Below(most, 8 * 9, 8 * 1), 3);
    }

    // Henderson and Tilton 1955, Journal of Economic Entomology 48:157; computed from their formula.
    [Fact]
    public void Efficacy_with_and_without_controls()
    {
        Assert.Equal(88.89, 100 * Efficacy.HendersonTilton(12, 2, 10, 15)!.Value, 2);
        Assert.Equal(83.33, 100 * Efficacy.Naive(12, 2)!.Value, 2);
        Assert.Null(Efficacy.HendersonTilton(0, 0, 10, 15));
        Assert.Null(Efficacy.HendersonTilton(12, 2, 10, 0));
        Assert.Null(Efficacy.Naive(0, 0));
    }

    private static void Close(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(expected - actual) <= relative * Math.Max(Math.Abs(expected), 1e-12), $"{expected:R} by R, {actual:R} here");

    private static IEnumerable<double[]> Rows(string file) =>
        File.ReadLines(Path.Combine(Repository.Root, "tests/Core/Projections/Sums/Golden/mites", file)).Skip(1)
            .Select(line => line.Split(',').Select(cell => cell == "Inf" ? double.PositiveInfinity : double.Parse(cell, CultureInfo.InvariantCulture)).ToArray());
}
