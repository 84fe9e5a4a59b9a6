using MathNet.Numerics.Distributions;

namespace ColonyLineage.Projections.Sums;

/// <summary>Two groups side by side: of the first so many lost and so many not, of the second likewise.</summary>
public readonly record struct Fourfold(int Lost, int Kept, int OtherLost, int OtherKept)
{
    public int All => Lost + Kept + OtherLost + OtherKept;
}

/// <summary>An odds ratio: above 1 where the first group lost more.</summary>
/// <param name="Lower">Lower end of its interval.</param>
/// <param name="Upper">Upper end of its interval.</param>
public sealed record OddsRatio(double Ratio, double Lower, double Upper);

/// <summary>Comparing two rates.</summary>
public static class TwoByTwo
{
    /// <summary>
    /// The chance of tables as unlikely as this or more, if the two rates are equal: Fisher's exact test, two-sided by the sum of all tables that are no likelier.
    /// </summary>
    public static double Fisher(Fourfold table)
    {
        Check(table);
        var (hits, drawn) = (table.Lost + table.OtherLost, table.Lost + table.Kept);
        var chances = Enumerable.Range(0, Math.Min(hits, drawn) + 1).Where(lost => hits - lost <= table.All - drawn)
            .Select(lost => (Lost: lost, Chance: Hypergeometric.PMF(table.All, hits, drawn, lost))).ToList();
        // Tables of the same chance may differ in the last bits.
        var here = chances.First(chance => chance.Lost == table.Lost).Chance * (1 + 1e-7);
        return Math.Min(1, chances.Where(chance => chance.Chance <= here).Sum(chance => chance.Chance));
    }

    /// <summary>The odds ratio of all tables thrown together: it says what their mixture looks like, not what being in the first group does. Null where a cell is empty.</summary>
    public static double? Crude(IReadOnlyCollection<Fourfold> strata)
    {
        foreach (var table in strata) Check(table);
        var (a, b, c, d) = (strata.Sum(s => (double)s.Lost), strata.Sum(s => (double)s.Kept), strata.Sum(s => (double)s.OtherLost), strata.Sum(s => (double)s.OtherKept));
        return b * c > 0 && a * d > 0 ? a * d / (b * c) : null;
    }

    /// <summary>
    /// The odds ratio within strata (yards), pooled: Mantel and Haenszel 1959, Journal of the National Cancer Institute 22:719; the interval by Robins, Breslow and
    /// Greenland 1986, Biometrics 42:311. Null where the strata hold nothing to compare.
    /// </summary>
    public static OddsRatio? MantelHaenszel(IReadOnlyCollection<Fourfold> strata, double level = 0.95)
    {
        var (above, below, first, both, second) = (0.0, 0.0, 0.0, 0.0, 0.0);
        foreach (var table in strata)
        {
            Check(table);
            if (table.All == 0) continue;
            var (n, r, s) = ((double)table.All, (double)table.Lost * table.OtherKept, (double)table.Kept * table.OtherLost);
            var (p, q) = ((table.Lost + table.OtherKept) / n, (table.Kept + table.OtherLost) / n);
            above += r / n;
            below += s / n;
            first += p * r / n;
            both += ((p * s) + (q * r)) / n;
            second += q * s / n;
        }

        if (above <= 0 || below <= 0) return null;
        var half = Normal.InvCDF(0, 1, (1 + level) / 2) * Math.Sqrt((first / (2 * above * above)) + (both / (2 * above * below)) + (second / (2 * below * below)));
        return new OddsRatio(above / below, above / below * Math.Exp(-half), above / below * Math.Exp(half));
    }

    private static void Check(Fourfold table)
    {
        if (table.Lost < 0 || table.Kept < 0 || table.OtherLost < 0 || table.OtherKept < 0) throw new ArgumentOutOfRangeException(nameof(table), table, "Counts are 0 or more.");
    }
}
