using ColonyLineage.Entries;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Projections.StoresAndFeed;

/// <summary>How much sugar is in what was fed, and how much of it becomes stores.</summary>
public static class Feed
{
    /// <summary>
    /// Stores of a kilogram of sugar: a US gallon of 2:1 holds 7.38 lb of sugar and adds about 7 lb (extension guides; if nothing were lost it would be 9.23 lb
    /// at 80 % sugar).
    /// </summary>
    public const double StoresOfSugar = 7 / 7.38;

    /// <summary>A feeder that holds more, in litres, is a large one: it is not for a small colony. Common practice, no source.</summary>
    public const decimal LargeFrom = 4;

    /// <summary>Sugar in kilograms; null where the entry does not tell.</summary>
    public static double? SugarOf(Fed fed)
    {
        if (fed is not { Amount: { } amount, SugarParts: { } sugar }) return null;
        if (fed.WaterParts is not { } water) return (double?)amount.InKilograms();
        var share = Share(sugar, water, fed.PartsBy);
        return amount.InLitres() is { } litres ? Syrup.Filling((double)litres, share).Sugar : amount.InKilograms() is { } mass ? share * (double)mass : null;
    }

    /// <summary>In a word why a syrup does not stay dissolved at 20 °C; null where it does.</summary>
    public static string? TooStrong(Fed fed)
    {
        if (fed is not { SugarParts: { } sugar, WaterParts: { } water }) return null;
        var share = Share(sugar, water, fed.PartsBy);
        return share <= Sugar.Soluble(20) ? null : FormattableString.Invariant($"syrup of {100 * share:0.0} % sugar: more than the {100 * Sugar.Soluble(20):0.0} % that stay dissolved at 20 °C");
    }

    private static double Share(decimal sugar, decimal water, PartsBy? by) =>
        Syrup.ShareOf((double)sugar, (double)water, by ?? PartsBy.Weight);
}
