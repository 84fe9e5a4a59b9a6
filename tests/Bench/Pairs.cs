using System.Diagnostics;

namespace ColonyLineage.Bench;

/// <summary>
/// Two things timed in turns, so that whatever else the machine does meanwhile falls on both; the figure is the median of the
/// ratios of the pairs, and which of the two goes first changes from pair to pair.
/// </summary>
internal static class Pairs
{
    /// <summary>Times both, after a warm-up of each that does not count.</summary>
    /// <param name="count">Pairs that count; at least 7.</param>
    /// <param name="ours">What is measured; given the number of the pair, warm-ups below 0.</param>
    /// <param name="floor">What it is measured against.</param>
    /// <param name="before">What has to be done before ours, untimed.</param>
    /// <param name="warmUps">Warm-ups of each.</param>
    public static async Task<Measured> RunAsync(int count, Func<int, Task> ours, Func<int, Task> floor, Func<int, Task>? before = null, int warmUps = 1)
    {
        var pairs = new List<(double Ours, double Floor)>();
        for (var i = -warmUps; i < count; i++)
        {
            if (before is not null) await before(i);
            double one, other;
            if (i % 2 == 0)
            {
                one = await TimeAsync(ours, i);
                other = await TimeAsync(floor, i);
            }
            else
            {
                other = await TimeAsync(floor, i);
                one = await TimeAsync(ours, i);
            }

            if (i >= 0) pairs.Add((one, other));
        }

        return new Measured(pairs);
    }

    private static async Task<double> TimeAsync(Func<int, Task> what, int number)
    {
        // Neither pays for the other's garbage.
        GC.Collect();
        var watch = Stopwatch.StartNew();
        await what(number);
        return watch.Elapsed.TotalMilliseconds;
    }
}

/// <summary>What came of the pairs, in milliseconds.</summary>
internal sealed record Measured(IReadOnlyList<(double Ours, double Floor)> Pairs)
{
    /// <summary>The median of the pairs' ratios.</summary>
    public double Ratio => Median(Pairs.Select(pair => pair.Ours / pair.Floor));

    /// <summary>Both medians and the spread of the ratios, for whoever wants to know how sure it is.</summary>
    public string Details
    {
        get
        {
            var ratios = Pairs.Select(pair => pair.Ours / pair.Floor).Order().ToList();
            return FormattableString.Invariant($"{Median(Pairs.Select(pair => pair.Ours)):0.0} ms / {Median(Pairs.Select(pair => pair.Floor)):0.0} ms, ratios {ratios[0]:0.00} to {ratios[^1]:0.00} over {ratios.Count} pairs");
        }
    }

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return sorted.Count % 2 == 1 ? sorted[sorted.Count / 2] : (sorted[(sorted.Count / 2) - 1] + sorted[sorted.Count / 2]) / 2;
    }
}
