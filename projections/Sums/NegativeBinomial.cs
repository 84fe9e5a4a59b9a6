using MathNet.Numerics;

namespace ColonyLineage.Projections.Sums;

/// <summary>
/// Counts that differ from one to the next by more than chance alone: negative binomial with a mean and an aggregation k, variance
/// mean + mean²/k. An infinite k is Poisson's. The sum of n such counts has the mean n·mean and the aggregation n·k.
/// </summary>
public static class NegativeBinomial
{
    /// <summary>The logarithm of the chance of exactly <paramref name="count"/>.</summary>
    public static double LogChance(int count, double mean, double k)
    {
        if (mean == 0) return count == 0 ? 0 : double.NegativeInfinity;
        if (double.IsPositiveInfinity(k)) return (count * Math.Log(mean)) - mean - SpecialFunctions.FactorialLn(count);
        return SpecialFunctions.GammaLn(count + k) - SpecialFunctions.GammaLn(k) - SpecialFunctions.FactorialLn(count) - (k * Log1P(mean / k)) + (count * (Math.Log(mean) - Math.Log(mean + k)));
    }

    /// <summary>The chance of <paramref name="count"/> or fewer; 0 below 0.</summary>
    public static double Below(int count, double mean, double k)
    {
        // From the rarest side up, small terms first.
        var sum = 0.0;
        for (var i = 0; i <= count; i++) sum += Math.Exp(LogChance(i, mean, k));
        return Math.Min(1, sum);
    }

    /// <summary>
    /// The largest total of <paramref name="washes"/> counts that still speaks for a mean below <paramref name="threshold"/>: where the mean is the
    /// threshold, so small a total has a chance of at most <paramref name="error"/>. Null where not even none would do.
    /// </summary>
    public static int? LargestTotal(int washes, double threshold, double k, double error = 0.05)
    {
        var (sum, total) = (0.0, -1);
        while (true)
        {
            sum += Math.Exp(LogChance(total + 1, washes * threshold, washes * k));
            if (sum > error) return total < 0 ? null : total;
            total++;
        }
    }

    /// <summary>The mean of one count, above which so small a total of several has a chance of less than <paramref name="error"/>: an upper limit, one-sided.</summary>
    public static double UpperMean(int total, int washes, double k, double error = 0.05)
    {
        double Excess(double mean) => Below(total, washes * mean, washes * k) - error;
        var (low, high) = ((double)total / washes, ((double)total / washes) + 1);
        while (Excess(high) > 0) high *= 2;
        for (var i = 0; i < 200 && high - low > 1e-13 * high; i++)
        {
            var middle = (low + high) / 2;
            if (Excess(middle) > 0) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    private static double Log1P(double x) => Math.Abs(x) < 1e-4 ? x - (x * x / 2) + (x * x * x / 3) : Math.Log(1 + x);
}
