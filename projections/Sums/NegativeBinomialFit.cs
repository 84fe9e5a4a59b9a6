using MathNet.Numerics;

namespace ColonyLineage.Projections.Sums;

/// <summary>
/// The mean and the aggregation k of counts, by maximum likelihood, where each count came of a wash of its own size: the mean of a wash is the rate times its size.
/// </summary>
/// <param name="Rate">The mean of a wash of size 1.</param>
/// <param name="K">Infinite where the counts differ by no more than Poisson's chance.</param>
/// <param name="StandardErrorOfK">By the bend of the likelihood at the fit, the mean held; null where k is infinite.</param>
public sealed record NegativeBinomialFit(double Rate, double K, double? StandardErrorOfK, double LogLikelihood)
{
    // Beyond this the counts cannot be told from Poisson's.
    private const double LeastSpread = 1e-9;

    /// <summary>Fits counts of washes of one size.</summary>
    public static NegativeBinomialFit Of(IReadOnlyList<int> counts) => Of([.. counts.Select(count => (count, 1.0))]);

    /// <summary>Fits counts of washes of any sizes: for instance mites with bees / 100, for a rate per 100 bees.</summary>
    public static NegativeBinomialFit Of(IReadOnlyList<(int Count, double Size)> washes)
    {
        if (washes.Count == 0 || washes.Any(wash => wash.Count < 0 || !(wash.Size > 0))) throw new ArgumentException("Counts of 0 or more, each of a size above 0, at least one.", nameof(washes));
        if (washes.All(wash => wash.Count == 0)) return new NegativeBinomialFit(0, double.PositiveInfinity, null, 0);

        // The slope is that of the likelihood by 1/k along its best rates: at 0 it tells whether there is more spread than Poisson's.
        double Slope(double spread) => BySpread(washes, RateAt(washes, spread), spread);
        var high = 1.0;
        while (high < 1e6 && Slope(high) > 0) high *= 2;
        var spread = Slope(0) <= 0 ? 0 : Halving.Root(Slope, 0, high);
        if (spread < LeastSpread) spread = 0;
        var (rate, k) = (RateAt(washes, spread), spread == 0 ? double.PositiveInfinity : 1 / spread);
        var log = washes.Sum(wash => NegativeBinomial.LogChance(wash.Count, rate * wash.Size, k));
        return new NegativeBinomialFit(rate, k, spread == 0 ? null : 1 / Math.Sqrt(washes.Sum(wash => Bend(wash.Count, rate * wash.Size, k))), log);
    }

    /// <summary>The likeliest rate where 1/k is <paramref name="spread"/>.</summary>
    private static double RateAt(IReadOnlyList<(int Count, double Size)> washes, double spread)
    {
        // The rate of the sums, and no more than a bracket for it where the sizes differ.
        var rates = washes.Select(wash => wash.Count / wash.Size).ToList();
        return Halving.Root(rate => washes.Sum(wash => (wash.Count - (rate * wash.Size)) / (1 + (spread * rate * wash.Size))), 0, rates.Max() * (1 + 1e-9));
    }

    private static double BySpread(IReadOnlyList<(int Count, double Size)> washes, double rate, double spread)
    {
        var sum = 0.0;
        foreach (var (count, size) in washes)
        {
            var mean = rate * size;
            for (var j = 1; j < count; j++) sum += j / (1 + (j * spread));
            var x = spread * mean;
            // (log(1 + x) − x/(1 + x)) / x², as a series where x is small.
            var tail = x < 1e-3 ? 0.5 - (2 * x / 3) + (3 * x * x / 4) - (4 * x * x * x / 5) : (Math.Log(1 + x) - (x / (1 + x))) / (x * x);
            sum += (mean * mean * tail) - (count * mean / (1 + x));
        }

        return sum;
    }

    /// <summary>How sharply the log-likelihood of one count bends down over k.</summary>
    private static double Bend(int count, double mean, double k)
    {
        var sum = 0.0;
        for (var j = 0; j < count; j++) sum += 1 / ((k + j) * (k + j));
        return sum - (1 / k) + (2 / (mean + k)) - ((count + k) / ((mean + k) * (mean + k)));
    }
}
