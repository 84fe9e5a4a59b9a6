namespace ColonyLineage.Projections.Sums;

/// <summary>Roots by halving: slow, sure, and the same on every machine.</summary>
internal static class Halving
{
    /// <summary>Where a function comes down through 0: it is above 0 at <paramref name="low"/> and below at <paramref name="high"/>, else one of the two is the answer.</summary>
    public static double Root(Func<double, double> falling, double low, double high)
    {
        for (var i = 0; i < 200 && high - low > 1e-15 * Math.Abs(high); i++)
        {
            var middle = (low + high) / 2;
            if (falling(middle) > 0) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }
}
