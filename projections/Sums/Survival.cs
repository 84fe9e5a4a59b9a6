using MathNet.Numerics.Distributions;

namespace ColonyLineage.Projections.Sums;

/// <summary>One life, or the part of it that was watched.</summary>
/// <param name="Entry">The age from which it was watched: above 0 for one that came late, of which others like it had died before.</param>
/// <param name="Exit">The age at its end, or at which it was last watched; above <paramref name="Entry"/>.</param>
/// <param name="Ended">It ended there; else nobody knows what came after.</param>
public readonly record struct Life(double Entry, double Exit, bool Ended);

/// <summary>How the interval of a survival is reckoned.</summary>
public enum SurvivalScale
{
    /// <summary>On the scale of log(−log S): never below 0 or above 1, and the best of the three with few lives.</summary>
    LogLog,

    /// <summary>On the scale of log S.</summary>
    Log,

    /// <summary>On the scale of S itself, cut at 0 and 1.</summary>
    Plain,
}

/// <summary>A step of a survival curve: what holds from this age to the next step.</summary>
/// <param name="At">The age.</param>
/// <param name="AtRisk">Lives watched just before it.</param>
/// <param name="Ended">Of these, how many ended at it.</param>
/// <param name="Share">The share that lives on.</param>
/// <param name="StandardError">Greenwood's; null once none lives on.</param>
/// <param name="Lower">Lower end of the interval; null once none lives on.</param>
/// <param name="Upper">Upper end of the interval; null once none lives on.</param>
public sealed record SurvivalStep(double At, int AtRisk, int Ended, double Share, double? StandardError, double? Lower, double? Upper);

/// <summary>How long things last, of lives that may be watched in part only.</summary>
public static class Survival
{
    /// <summary>
    /// The product-limit estimate, one step for each age at which a life ended: Kaplan and Meier 1958, Journal of the American Statistical Association 53:457; the
    /// variance is Greenwood's. A life that entered late is at risk after its entry only. Where few were watched at low ages, one end among them pulls the
    /// whole curve down: look at <see cref="SurvivalStep.AtRisk"/>.
    /// </summary>
    /// <param name="level">How sure the interval is, above 0 and below 1.</param>
    public static IReadOnlyList<SurvivalStep> KaplanMeier(IReadOnlyCollection<Life> lives, SurvivalScale scale = SurvivalScale.LogLog, double level = 0.95)
    {
        Check(lives);
        if (level is not (> 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(level), level, "Above 0 and below 1.");
        var z = Normal.InvCDF(0, 1, (1 + level) / 2);
        var (share, sum) = (1.0, 0.0);
        var steps = new List<SurvivalStep>();
        foreach (var (at, atRisk, ended) in Steps(lives))
        {
            share *= 1 - ((double)ended / atRisk);
            sum += ended == atRisk ? 0 : (double)ended / ((double)atRisk * (atRisk - ended));
            var (lower, upper) = share > 0 ? Interval(share, z * Math.Sqrt(sum), scale) : ((double?)null, (double?)null);
            steps.Add(new SurvivalStep(at, atRisk, ended, share, share > 0 ? share * Math.Sqrt(sum) : null, lower, upper));
        }

        return steps;
    }

    /// <summary>The first age at which no more than half live on; null where more than half do to the end.</summary>
    public static double? Median(IReadOnlyList<SurvivalStep> curve) => curve.FirstOrDefault(step => step.Share <= 0.5 + 1e-12)?.At;

    /// <summary>The share that lives on at an age: 1 before the first step.</summary>
    public static double ShareAt(IReadOnlyList<SurvivalStep> curve, double age) => curve.LastOrDefault(step => step.At <= age)?.Share ?? 1;

    /// <summary>The log-rank test of two groups: Mantel 1966, Cancer Chemotherapy Reports 50:163.</summary>
    /// <returns>The statistic on one degree of freedom, its probability, and the ends expected in each group if they were alike; null where nothing can be compared.</returns>
    public static (double ChiSquare, double P, double ExpectedFirst, double ExpectedSecond)? LogRank(IReadOnlyCollection<Life> first, IReadOnlyCollection<Life> second)
    {
        Check(first);
        Check(second);
        var (observed, expected, variance, all) = (0.0, 0.0, 0.0, 0.0);
        foreach (var (at, atRisk, ended) in Steps([.. first, .. second]))
        {
            double ofFirst = first.Count(life => life.Entry < at && at <= life.Exit);
            observed += first.Count(life => life.Ended && life.Exit == at);
            expected += ended * ofFirst / atRisk;
            all += ended;
            if (atRisk > 1) variance += ended * (ofFirst / atRisk) * (1 - (ofFirst / atRisk)) * (atRisk - ended) / (atRisk - 1);
        }

        if (variance <= 0) return null;
        var chi = (observed - expected) * (observed - expected) / variance;
        return (chi, 1 - ChiSquared.CDF(1, chi), expected, all - expected);
    }

    /// <summary>Each age at which a life ended, with how many were at risk and how many ended.</summary>
    internal static IEnumerable<(double At, int AtRisk, int Ended)> Steps(IReadOnlyCollection<Life> lives)
    {
        // Those that entered before an age, less those that left before it.
        var entries = lives.Select(life => life.Entry).Order().ToArray();
        var exits = lives.Select(life => life.Exit).Order().ToArray();
        var (entered, left) = (0, 0);
        foreach (var end in lives.Where(life => life.Ended).GroupBy(life => life.Exit).OrderBy(group => group.Key))
        {
            while (entered < entries.Length && entries[entered] < end.Key) entered++;
            while (left < exits.Length && exits[left] < end.Key) left++;
            yield return (end.Key, entered - left, end.Count());
        }
    }

    private static (double? Lower, double? Upper) Interval(double share, double half, SurvivalScale scale) => scale switch
    {
        SurvivalScale.Plain => (Math.Max(0, share - (share * half)), Math.Min(1, share + (share * half))),
        SurvivalScale.Log => (share * Math.Exp(-half), Math.Min(1, share * Math.Exp(half))),
        _ => (Math.Pow(share, Math.Exp(-half / Math.Log(share))), Math.Pow(share, Math.Exp(half / Math.Log(share)))),
    };

    private static void Check(IEnumerable<Life> lives)
    {
        foreach (var life in lives)
            if (!(life.Entry < life.Exit)) throw new ArgumentException($"A life is watched from {life.Entry} to {life.Exit}: no time at all.", nameof(lives));
    }
}
