using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

namespace ColonyLineage.Projections.Sums;

/// <summary>
/// Tukey's range: how far apart the largest and the smallest of several equal means lie, in standard errors of one of them. Source: Pearson and
/// Hartley, Biometrika Tables for Statisticians, table 29, for the definition; the integrals are done numerically.
/// </summary>
public static class StudentizedRange
{
    private const int Order = 20;

    /// <summary>The chance of a range of at most <paramref name="q"/>.</summary>
    /// <param name="means">How many means, 2 or more.</param>
    /// <param name="freedom">Degrees of freedom of the standard error, more than 0; may be infinite.</param>
    public static double Below(double q, int means, double freedom)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(means, 2);
        if (!(freedom > 0)) throw new ArgumentOutOfRangeException(nameof(freedom), "Degrees of freedom must be above 0.");
        if (q <= 0) return 0;
        if (freedom > 25_000) return OfNormal(q, means);
        // s is the standard error's ratio to the true one: s² × freedom is chi-squared. All but 1e-14 of it lies between the ends.
        var chi = new ChiSquared(freedom);
        var (least, most) = (Math.Sqrt(chi.InverseCumulativeDistribution(1e-14) / freedom), Math.Sqrt(chi.InverseCumulativeDistribution(1 - 1e-14) / freedom));
        return Math.Min(1, Panels(s => 2 * s * freedom * chi.Density(s * s * freedom) * OfNormal(q * s, means), least, most, 4));
    }

    /// <summary>The range that is exceeded with a chance of 1 − <paramref name="level"/>.</summary>
    public static double Quantile(double level, int means, double freedom)
    {
        if (level is not (> 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(level));
        var top = 10.0;
        while (Below(top, means, freedom) < level) top *= 2;
        return Brent.FindRoot(q => Below(q, means, freedom) - level, 0, top, 1e-9, 200);
    }

    /// <summary>The same where the standard error is known: the smallest lies at z, all others within q above it.</summary>
    private static double OfNormal(double q, int means) =>
        means * Panels(z => Normal.PDF(0, 1, z) * Math.Pow(Normal.CDF(0, 1, z + q) - Normal.CDF(0, 1, z), means - 1), -8, 8, 4);

    private static double Panels(Func<double, double> of, double from, double to, int panels)
    {
        double sum = 0;
        for (var i = 0; i < panels; i++)
            sum += GaussLegendreRule.Integrate(of, from + ((to - from) * i / panels), from + ((to - from) * (i + 1) / panels), Order);
        return sum;
    }
}
