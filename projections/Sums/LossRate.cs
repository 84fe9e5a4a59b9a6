using MathNet.Numerics.Distributions;

namespace ColonyLineage.Projections.Sums;

/// <summary>How many of a group were lost.</summary>
/// <param name="Lost">0 to <paramref name="AtRisk"/>.</param>
/// <param name="AtRisk">1 or more.</param>
public readonly record struct LostOf(int Lost, int AtRisk);

/// <summary>A rate on the scale of its odds, with more spread between groups than chance makes, or less.</summary>
/// <param name="Logit">log(rate / (1 − rate)).</param>
/// <param name="Dispersion">The spread between the groups; 1 where it is that of chance.</param>
public sealed record LogitRate(double Logit, double StandardError, double Dispersion, double Lower, double Upper);

/// <summary>A rate with the standard error of a sample of whole groups.</summary>
/// <param name="Freedom">Degrees of freedom of the t interval: groups less 1.</param>
public sealed record ClusteredRate(double Rate, double StandardError, int Freedom, double Lower, double Upper);

/// <summary>
/// Rates of loss over groups (yards, or owners): COLOSS BEEBOOK vol. II, survey methods, van der Zee et al. 2013, Journal of Apicultural Research 52(4), 10.3.2.
/// There are two rates, and an interval for a proportion belongs to the overall rate only.
/// </summary>
public static class LossRate
{
    /// <summary>All that were lost, of all at risk.</summary>
    public static double Overall(IReadOnlyCollection<LostOf> groups) => (double)Lost(groups) / AtRisk(groups);

    /// <summary>The mean of the groups' rates, small groups counting as much as large ones.</summary>
    public static double Average(IReadOnlyCollection<LostOf> groups)
    {
        Check(groups);
        return groups.Average(group => (double)group.Lost / group.AtRisk);
    }

    /// <summary>The interval of the overall rate as if every colony were lost on its own, or not: too narrow where those of a yard share their fate.</summary>
    public static (double Lower, double Upper) Wilson(IReadOnlyCollection<LostOf> groups, double level = 0.95) => Proportion.Wilson(Lost(groups), AtRisk(groups), level);

    /// <summary>
    /// The interval of the overall rate by a quasi-binomial model with an intercept only: the standard error of the logit is widened by the spread between the
    /// groups (Pearson), z interval. Null with one group only, or where none or all were lost.
    /// </summary>
    public static LogitRate? QuasiBinomial(IReadOnlyCollection<LostOf> groups, double level = 0.95)
    {
        var rate = Overall(groups);
        if (groups.Count < 2 || rate is 0 or 1) return null;
        var dispersion = groups.Sum(group => Squared(group.Lost - (group.AtRisk * rate)) / (group.AtRisk * rate * (1 - rate))) / (groups.Count - 1);
        var logit = Math.Log(rate / (1 - rate));
        var error = Math.Sqrt(dispersion / (AtRisk(groups) * rate * (1 - rate)));
        var half = Normal.InvCDF(0, 1, (1 + level) / 2) * error;
        return new LogitRate(logit, error, dispersion, Share(logit - half), Share(logit + half));
    }

    /// <summary>
    /// The interval of the overall rate with the groups as the units that were drawn: the linearised variance of a ratio, Cochran 1977, Sampling Techniques, chapter 6,
    /// and t with as many degrees of freedom as groups less one, cut at 0 and 1. Null with one group only.
    /// </summary>
    public static ClusteredRate? Clustered(IReadOnlyCollection<LostOf> groups, double level = 0.95)
    {
        var rate = Overall(groups);
        if (groups.Count < 2) return null;
        var freedom = groups.Count - 1;
        var error = Math.Sqrt((double)groups.Count / freedom * groups.Sum(group => Squared(group.Lost - (group.AtRisk * rate)))) / AtRisk(groups);
        var half = StudentT.InvCDF(0, 1, freedom, (1 + level) / 2) * error;
        return new ClusteredRate(rate, error, freedom, Math.Max(0, rate - half), Math.Min(1, rate + half));
    }

    internal static double Share(double logit) => 1 / (1 + Math.Exp(-logit));

    internal static void Check(IReadOnlyCollection<LostOf> groups)
    {
        if (groups.Count == 0) throw new ArgumentException("There is no rate of no groups.", nameof(groups));
        foreach (var (lost, atRisk) in groups)
            if (atRisk < 1 || lost < 0 || lost > atRisk) throw new ArgumentException($"{lost} of {atRisk} cannot be lost.", nameof(groups));
    }

    private static int Lost(IReadOnlyCollection<LostOf> groups)
    {
        Check(groups);
        return groups.Sum(group => group.Lost);
    }

    private static int AtRisk(IReadOnlyCollection<LostOf> groups) => groups.Sum(group => group.AtRisk);

    private static double Squared(double x) => x * x;
}
