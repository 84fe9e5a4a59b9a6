using System.Collections.Concurrent;
using MathNet.Numerics.Distributions;

namespace ColonyLineage.Projections.Sums;

/// <summary>How many it takes to see a difference that is there.</summary>
public static class SampleSize
{
    /// <summary>The chance with which a difference is to be seen, where nobody asks for another (common practice in planning trials).</summary>
    public const double Power = .8;

    // Asked for again and again: each takes some milliseconds.
    private static readonly ConcurrentDictionary<(int Lines, int Mothers), double> Ranges = new();

    /// <summary>
    /// How many in each of two groups to tell two shares apart: Fleiss 1981, Statistical Methods for Rates and Proportions, without continuity correction (from memory).
    /// Null where the shares are alike.
    /// </summary>
    public static int? TwoShares(double one, double other, double power = Power, double error = .05)
    {
        if (one == other) return null;
        var mean = (one + other) / 2;
        var both = (Quantile(1 - (error / 2)) * Math.Sqrt(2 * mean * (1 - mean))) + (Quantile(power) * Math.Sqrt((one * (1 - one)) + (other * (1 - other))));
        return (int)Math.Ceiling(both * both / ((one - other) * (one - other)));
    }

    /// <summary>
    /// How many mothers in each line to tell two of several lines apart by Tukey's range: the smallest m with difference ≥ (q/√2 + z) × the standard error that m would give, which
    /// falls with √m from what it is now. Null where more than <paramref name="most"/> would be needed, or the difference is nothing.
    /// </summary>
    /// <param name="standardError">Of the difference, as it is now.</param>
    /// <param name="now">Mothers in each of the two lines now; their harmonic mean where they are not alike.</param>
    public static int? Mothers(double difference, double standardError, double now, int lines, double power = Power, int most = 500)
    {
        bool Enough(int m) => Math.Abs(difference) >= ((Ranges.GetOrAdd((lines, m), of => StudentizedRange.Quantile(.95, of.Lines, of.Lines * (of.Mothers - 1))) / Math.Sqrt(2)) + Quantile(power)) * standardError * Math.Sqrt(now / m);
        if (difference == 0 || !Enough(most)) return null;
        var (low, high) = (1, most);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (Enough(middle)) high = middle;
            else low = middle;
        }

        return high;
    }

    private static double Quantile(double level) => Normal.InvCDF(0, 1, level);
}
