using MathNet.Numerics.Distributions;

namespace ColonyLineage.Projections.Sums;

/// <summary>Intervals for a proportion, two-sided, as numbers from 0 to 1.</summary>
public static class Proportion
{
    /// <summary>The score interval: Wilson 1927, as in Newcombe 1998, Statistics in Medicine 17:857, method 3.</summary>
    /// <param name="hits">How many of them had it, 0 to <paramref name="of"/>.</param>
    /// <param name="of">How many there were; at least 1.</param>
    /// <param name="level">How sure, above 0 and below 1.</param>
    public static (double Lower, double Upper) Wilson(int hits, int of, double level = 0.95)
    {
        Check(hits, of, level);
        var z = Normal.InvCDF(0, 1, (1 + level) / 2);
        var share = (double)hits / of;
        var (middle, half) = ((2 * of * share) + (z * z), z * Math.Sqrt((z * z) + (4 * of * share * (1 - share))));
        var below = 2 * (of + (z * z));
        // At either end the formula gives 0 and 1 but for the last bits.
        return (hits == 0 ? 0 : (middle - half) / below, hits == of ? 1 : (middle + half) / below);
    }

    /// <summary>The exact interval: Clopper and Pearson 1934, Biometrika 26:404.</summary>
    /// <param name="hits">How many of them had it, 0 to <paramref name="of"/>.</param>
    /// <param name="of">How many there were; at least 1.</param>
    /// <param name="level">How sure, above 0 and below 1.</param>
    public static (double Lower, double Upper) ClopperPearson(int hits, int of, double level = 0.95)
    {
        Check(hits, of, level);
        var tail = (1 - level) / 2;
        return (hits == 0 ? 0 : Beta.InvCDF(hits, of - hits + 1, tail), hits == of ? 1 : Beta.InvCDF(hits + 1, of - hits, 1 - tail));
    }

    private static void Check(int hits, int of, double level)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(of, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(hits);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hits, of);
        if (level is not (> 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(level), level, "Above 0 and below 1.");
    }
}
