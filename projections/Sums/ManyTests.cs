namespace ColonyLineage.Projections.Sums;

/// <summary>Probabilities of many tests at once, each made larger for the company it is in. They come back in the order in which they were given.</summary>
public static class ManyTests
{
    /// <summary>Keeps the chance of any false claim: Holm 1979, Scandinavian Journal of Statistics 6:65.</summary>
    public static IReadOnlyList<double> Holm(IReadOnlyList<double> p)
    {
        var (adjusted, least) = (new double[p.Count], 0.0);
        var order = Order(p);
        for (var i = 0; i < order.Length; i++) adjusted[order[i]] = least = Math.Max(least, Math.Min(1, (p.Count - i) * p[order[i]]));
        return adjusted;
    }

    /// <summary>Keeps the share of false claims among all claims: Benjamini and Hochberg 1995, Journal of the Royal Statistical Society B 57:289.</summary>
    public static IReadOnlyList<double> BenjaminiHochberg(IReadOnlyList<double> p)
    {
        var (adjusted, most) = (new double[p.Count], 1.0);
        var order = Order(p);
        for (var i = order.Length - 1; i >= 0; i--) adjusted[order[i]] = most = Math.Min(most, p.Count * p[order[i]] / (i + 1));
        return adjusted;
    }

    private static int[] Order(IReadOnlyList<double> p)
    {
        if (p.Any(one => one is not (>= 0 and <= 1))) throw new ArgumentOutOfRangeException(nameof(p), "Probabilities are from 0 to 1.");
        return [.. Enumerable.Range(0, p.Count).OrderBy(i => p[i])];
    }
}
