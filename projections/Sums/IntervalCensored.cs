using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums;

/// <summary>Something ended after the one age and not after the other: seen alive at the first, gone at the second.</summary>
/// <param name="After">0 or more.</param>
/// <param name="UpTo">Above <paramref name="After"/>; infinite where it was never found to have ended.</param>
public readonly record struct Between(double After, double UpTo);

/// <summary>A stretch of ages in which ends lie, and the share of all ends that lies in it. Where within it nobody can say.</summary>
/// <param name="Gradient">How much the likelihood gains by mass put here: 1 where there is mass, at most 1 where there is none.</param>
public sealed record Stretch(double After, double UpTo, double Mass, double Gradient);

/// <summary>The estimate, and how well it meets the conditions for being the best.</summary>
/// <param name="Stretches">All stretches that may hold mass, by age.</param>
/// <param name="LogLikelihood">At the estimate.</param>
/// <param name="Rounds">How many steps it took.</param>
public sealed record IntervalEstimate(IReadOnlyList<Stretch> Stretches, double LogLikelihood, int Rounds)
{
    /// <summary>The share that lives on after an age; null inside of a stretch with mass, where it falls nobody knows how.</summary>
    public double? ShareAfter(double age)
    {
        if (Stretches.Any(stretch => stretch.Mass > 0 && stretch.After < age && age < stretch.UpTo)) return null;
        return Math.Max(0, 1 - Stretches.Where(stretch => stretch.UpTo <= age).Sum(stretch => stretch.Mass));
    }

    /// <summary>The stretch in which the share that lives on comes to half or less; null where there is none.</summary>
    public Stretch? Median
    {
        get
        {
            var gone = 0.0;
            return Stretches.FirstOrDefault(stretch => (gone += stretch.Mass) >= 0.5 - 1e-9 && stretch.Mass > 0);
        }
    }
}

/// <summary>
/// How long things last, of ends that are known only to lie between two visits: the estimate of Turnbull 1976, Journal of the Royal Statistical Society B 38:290.
/// </summary>
/// <remarks>
/// With the expected counts alone (EM) the estimate creeps, and small steps say nothing of how far it still is. So Newton's steps on the concave
/// likelihood are taken within the bounds, and it stops where the conditions of Karush, Kuhn and Tucker hold: no gradient is above 1, and those with
/// mass are 1. The gain that is left is then below the number of ends times the tolerance.
/// </remarks>
public static class IntervalCensored
{
    private const double Tolerance = 1e-9;
    private const int MostRounds = 2000;

    /// <summary>Fits the masses. Left truncation is not in it: all have to be watched from age 0, or from their last sight at <see cref="Between.After"/>.</summary>
    public static IntervalEstimate Turnbull(IReadOnlyCollection<Between> ends)
    {
        foreach (var end in ends)
            if (!(end.After >= 0 && end.After < end.UpTo)) throw new ArgumentException($"An end lies after {end.After} and up to {end.UpTo}: nowhere.", nameof(ends));
        if (ends.Count == 0) return new IntervalEstimate([], 0, 0);

        var stretches = Innermost(ends);
        var spans = Spans(ends, stretches);
        var masses = Enumerable.Repeat(1.0 / stretches.Count, stretches.Count).ToArray();
        for (var round = 0; ; round++)
        {
            var (chances, gradient) = Gradient(spans, masses, ends.Count);
            if (Holds(masses, gradient)) return Estimate(stretches, masses, gradient, spans, chances, round);
            if (round == MostRounds) throw new InvalidOperationException($"The conditions do not hold after {round} rounds: the largest gradient is {gradient.Max():R}.");
            // A step by expected counts from every point of Newton's: it is sure to gain, if little.
            masses = [.. masses.Zip(gradient, (mass, slope) => mass * slope)];
            (chances, gradient) = Gradient(spans, masses, ends.Count);
            masses = Newton(spans, masses, chances, gradient, ends.Count);
        }
    }

    private static bool Holds(double[] masses, double[] gradient) =>
        gradient.Max() <= 1 + Tolerance && masses.Zip(gradient).All(pair => pair.First == 0 || pair.Second >= 1 - Tolerance);

    /// <summary>Stretches from a left end to the next right end: elsewhere mass would be of no use to anybody.</summary>
    private static List<(double After, double UpTo)> Innermost(IReadOnlyCollection<Between> ends)
    {
        // An interval holds its right end and not its left: of equals the right end comes first.
        var points = ends.Select(end => (At: end.After, IsLeft: true)).Concat(ends.Select(end => (At: end.UpTo, IsLeft: false))).Distinct().Order().ToList();
        return [.. points.Zip(points.Skip(1)).Where(pair => pair.First.IsLeft && !pair.Second.IsLeft).Select(pair => (pair.First.At, pair.Second.At))];
    }

    /// <summary>Which stretches each interval holds, first and last, and how many intervals hold the same.</summary>
    private static List<(int First, int Last, int Count)> Spans(IEnumerable<Between> ends, List<(double After, double UpTo)> stretches) =>
    [
        .. ends.GroupBy(end => (stretches.FindIndex(stretch => stretch.After >= end.After), stretches.FindLastIndex(stretch => stretch.UpTo <= end.UpTo)))
            .OrderBy(span => span.Key).Select(span => (span.Key.Item1, span.Key.Item2, span.Count())),
    ];

    private static (double[] Chances, double[] Gradient) Gradient(List<(int First, int Last, int Count)> spans, double[] masses, int all)
    {
        var chances = spans.Select(span => masses[span.First..(span.Last + 1)].Sum()).ToArray();
        var gradient = new double[masses.Length];
        for (var i = 0; i < spans.Count; i++)
            for (var j = spans[i].First; j <= spans[i].Last; j++)
                gradient[j] += spans[i].Count / chances[i] / all;
        return (chances, gradient);
    }

    /// <summary>
    /// Newton's step for the likelihood less the number of ends times the sum of the masses, whose maximum over all masses not below 0 has the sum 1. Masses at
    /// their bound that would go below it stay there; the others are cut at it.
    /// </summary>
    private static double[] Newton(List<(int First, int Last, int Count)> spans, double[] masses, double[] chances, double[] gradient, int all)
    {
        var free = Enumerable.Range(0, masses.Length).Where(j => gradient[j] >= 1 || masses[j] > Math.Min(1e-4, 1 - gradient[j])).ToList();
        var place = new int[masses.Length];
        Array.Fill(place, -1);
        for (var i = 0; i < free.Count; i++) place[free[i]] = i;
        var bend = Matrix<double>.Build.Dense(free.Count, free.Count);
        for (var i = 0; i < spans.Count; i++)
        {
            var weight = spans[i].Count / (chances[i] * chances[i]) / all;
            var held = Enumerable.Range(spans[i].First, spans[i].Last - spans[i].First + 1).Select(j => place[j]).Where(at => at >= 0).ToArray();
            foreach (var row in held)
                foreach (var column in held)
                    bend[row, column] += weight;
        }

        // A trace on the diagonal: where the data do not tell two stretches apart there would be no step.
        for (var i = 0; i < free.Count; i++) bend[i, i] *= 1 + 1e-10;
        var step = new double[masses.Length];
        var solved = bend.LU().Solve(Vector<double>.Build.Dense(free.Count, i => gradient[free[i]] - 1));
        for (var i = 0; i < free.Count; i++) step[free[i]] = solved[i];
        // What is pressed against its bound goes to it at once.
        for (var j = 0; j < masses.Length; j++)
            if (place[j] < 0) step[j] = -masses[j];

        var now = Gain(spans, masses, all);
        for (var length = 1.0; length > 1e-10; length /= 2)
        {
            var tried = masses.Zip(step, (mass, by) => Math.Max(0, mass + (length * by))).ToArray();
            // Close to the end a step gains less than the sum can show.
            if (Gain(spans, tried, all) >= now - 1e-13) return Scaled(tried);
        }

        return masses;
    }

    private static double Gain(List<(int First, int Last, int Count)> spans, double[] masses, int all)
    {
        var sum = 0.0;
        foreach (var (first, last, count) in spans) sum += count * Math.Log(masses[first..(last + 1)].Sum());
        return double.IsNaN(sum) ? double.NegativeInfinity : (sum / all) - masses.Sum();
    }

    private static double[] Scaled(double[] masses)
    {
        var sum = masses.Sum();
        return [.. masses.Select(mass => mass / sum)];
    }

    private static IntervalEstimate Estimate(
        List<(double After, double UpTo)> stretches, double[] masses, double[] gradient, List<(int First, int Last, int Count)> spans, double[] chances, int rounds) =>
        new([.. stretches.Select((stretch, j) => new Stretch(stretch.After, stretch.UpTo, masses[j], gradient[j]))], spans.Zip(chances, (span, chance) => span.Count * Math.Log(chance)).Sum(), rounds);
}
