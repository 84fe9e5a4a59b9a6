namespace ColonyLineage.Projections.Sums;

/// <summary>What it takes to see at least one, and what it says to have seen none.</summary>
public static class Detection
{
    /// <summary>The chance to see none among so many, each having it with the same chance on its own.</summary>
    public static double ChanceOfNone(double share, int seen) => Math.Pow(1 - share, seen);

    /// <summary>How many have to be looked at to see at least one with a chance of at least <paramref name="level"/>; each has it on its own.</summary>
    /// <param name="share">The share that has it, above 0 and below 1.</param>
    /// <param name="level">The chance wanted, above 0 and below 1.</param>
    public static int Needed(double share, double level) => (int)Math.Ceiling(Math.Round(Math.Log(1 - level) / Math.Log(1 - share), 9));

    /// <summary>
    /// The same out of few, none looked at twice: exact (hypergeometric), as in Cannon and Roe 1982, Livestock Disease Surveys, table 1.
    /// </summary>
    /// <param name="all">How many there are.</param>
    /// <param name="affected">How many of them have it: a whole number. Whoever has a share decides how it is rounded, and says so.</param>
    /// <param name="level">The chance wanted, above 0 and below 1.</param>
    public static int NeededOf(int all, int affected, double level)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(affected, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(affected, all);
        var none = 1.0;
        for (var seen = 0; ; seen++)
        {
            if (1 - none >= level - 1e-12) return seen;
            none *= Math.Max(0, (double)(all - affected - seen)) / (all - seen);
        }
    }
}
