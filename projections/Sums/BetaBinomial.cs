using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace ColonyLineage.Projections.Sums;

/// <summary>
/// Rates that differ from group to group (yard to yard, line to line) by a beta distribution: its maximum likelihood fit.
/// </summary>
/// <param name="Mean">The mean rate, 0 to 1.</param>
/// <param name="Spread">1 / (α + β); 0 where the groups differ by chance only.</param>
/// <param name="LogLikelihood">At the fit, with the binomial coefficients.</param>
public sealed record BetaBinomial(double Mean, double Spread, double LogLikelihood)
{
    /// <summary>The correlation of two colonies of one group, 1 / (α + β + 1); 0 to 1.</summary>
    public double Rho => Spread / (1 + Spread);

    /// <summary>Infinite where the groups differ by chance only.</summary>
    public double Alpha => Mean / Spread;

    /// <summary>Infinite where the groups differ by chance only.</summary>
    public double Beta => (1 - Mean) / Spread;

    /// <summary>What is to be expected of a group of which this was seen: drawn towards the mean of all, the more the less was seen. The interval holds 95 % of its distribution.</summary>
    public (double Rate, double Lower, double Upper) Shrunk(LostOf seen)
    {
        if (Spread == 0 || Mean is 0 or 1) return (Mean, Mean, Mean);
        var (a, b) = (Alpha + seen.Lost, Beta + seen.AtRisk - seen.Lost);
        return (a / (a + b), MathNet.Numerics.Distributions.Beta.InvCDF(a, b, 0.025), MathNet.Numerics.Distributions.Beta.InvCDF(a, b, 0.975));
    }

    /// <summary>
    /// Fits it. The likelihood is written as products over single colonies, which are sound down to a spread of 0; where it falls from there on, 0 is the answer.
    /// </summary>
    public static BetaBinomial Fit(IReadOnlyCollection<LostOf> groups)
    {
        LossRate.Check(groups);
        var counts = new Counts(groups);
        var rate = LossRate.Overall(groups);
        if (rate is 0 or 1) return new BetaBinomial(rate, 0, 0);

        // The likelihood may rise again from a spread at which it fell: a coarse look over all spreads finds where to be exact.
        var best = Enumerable.Range(-24, 40).Select(i => Math.Pow(2, i / 2.0)).Prepend(0).Select(spread => (Spread: spread, Log: counts.Log(counts.MeanAt(spread), spread))).MaxBy(tried => tried.Log).Spread;
        var (low, high) = best == 0 ? (0.0, Math.Pow(2, -12)) : (best / Math.Sqrt(2), best * Math.Sqrt(2));
        if (best == Math.Pow(2, -12)) low = 0;
        var spread = low == 0 && counts.BySpread(counts.MeanAt(0), 0) <= 0 ? 0 : Halving.Root(at => counts.BySpread(counts.MeanAt(at), at), low, high);
        var mean = counts.MeanAt(spread);
        return new BetaBinomial(mean, spread, counts.Log(mean, spread) + groups.Sum(group => SpecialFunctions.BinomialLn(group.AtRisk, group.Lost)));
    }

    /// <summary>For each number j, how many groups lost more than j, kept more than j, and had more than j.</summary>
    private sealed class Counts
    {
        private readonly int[] _lost;
        private readonly int[] _kept;
        private readonly int[] _all;

        public Counts(IReadOnlyCollection<LostOf> groups)
        {
            var most = groups.Max(group => group.AtRisk);
            (_lost, _kept, _all) = (new int[most], new int[most], new int[most]);
            foreach (var (lost, atRisk) in groups)
                for (var j = 0; j < atRisk; j++)
                {
                    if (j < lost) _lost[j]++;
                    if (j < atRisk - lost) _kept[j]++;
                    _all[j]++;
                }
        }

        public double Log(double mean, double spread) =>
            Sum(j => Term(_lost[j], Math.Log(mean + (j * spread))) + Term(_kept[j], Math.Log(1 - mean + (j * spread))) - Term(_all[j], Math.Log(1 + (j * spread))));

        public double BySpread(double mean, double spread) =>
            Sum(j => Term(_lost[j], j / (mean + (j * spread))) + Term(_kept[j], j / (1 - mean + (j * spread))) - Term(_all[j], j / (1 + (j * spread))));

        /// <summary>The likeliest mean at a spread: the slope falls all the way from 0 to 1.</summary>
        public double MeanAt(double spread) =>
            Halving.Root(mean => Sum(j => Term(_lost[j], 1 / (mean + (j * spread))) - Term(_kept[j], 1 / (1 - mean + (j * spread)))), 1e-12, 1 - 1e-12);

        private double Sum(Func<int, double> term)
        {
            var sum = 0.0;
            for (var j = 0; j < _all.Length; j++) sum += term(j);
            return sum;
        }

        private static double Term(int count, double value) => count == 0 ? 0 : count * value;
    }
}
