namespace ColonyLineage.Entries;

/// <summary>An amount in the unit in which it was given. It is never converted in an entry.</summary>
/// <param name="Amount">How much, in <paramref name="Unit"/>; 0 or more.</param>
/// <param name="Unit">One of <see cref="Units.All"/>.</param>
public sealed record Quantity(decimal Amount, string Unit);

/// <summary>The units that a quantity may be given in.</summary>
/// <remarks>
/// Exact factors: 1 lb = 0.45359237 kg; 1 US gal = 3.785411784 L; 1 imperial gal = 4.54609 L (international
/// yard and pound agreement of 1959; NIST Special Publication 811, appendix B).
/// </remarks>
public static class Units
{
    private static readonly Dictionary<string, decimal> Kilograms = new(StringComparer.Ordinal)
    {
        ["kg"] = 1m, ["g"] = 0.001m, ["lb"] = 0.45359237m, ["oz"] = 0.028349523125m,
    };

    private static readonly Dictionary<string, decimal> Litres = new(StringComparer.Ordinal)
    {
        ["L"] = 1m, ["mL"] = 0.001m, ["gal-us"] = 3.785411784m, ["qt-us"] = 0.946352946m, ["gal-imp"] = 4.54609m,
    };

    /// <summary>Counted things: strips, tablets, frames, patties.</summary>
    public const string Piece = "piece";

    /// <summary>All units, by their written form.</summary>
    public static readonly IReadOnlyList<string> All = [.. Kilograms.Keys, .. Litres.Keys, Piece];

    /// <summary>Whether the unit is one that the outfit's books know.</summary>
    public static bool IsKnown(string unit) => unit == Piece || Kilograms.ContainsKey(unit) || Litres.ContainsKey(unit);

    /// <summary>The mass in kilograms, or null where the quantity is not a mass.</summary>
    public static decimal? InKilograms(this Quantity quantity) =>
        Kilograms.TryGetValue(quantity.Unit, out var factor) ? quantity.Amount * factor : null;

    /// <summary>The volume in litres, or null where the quantity is not a volume.</summary>
    public static decimal? InLitres(this Quantity quantity) =>
        Litres.TryGetValue(quantity.Unit, out var factor) ? quantity.Amount * factor : null;
}
