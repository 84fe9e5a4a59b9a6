using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Desk;

/// <summary>A batch of syrup that somebody wants to mix.</summary>
/// <param name="Wanted">How much syrup, in <paramref name="Unit"/>.</param>
/// <param name="Unit">A unit of volume: litres, US or imperial gallons.</param>
/// <param name="SugarParts">Parts of sugar.</param>
/// <param name="WaterParts">Parts of water.</param>
/// <param name="By">How the parts are measured.</param>
/// <param name="Celsius">The temperature at which the volume is meant, and at which it is to stay dissolved; 0 to 60 °C.</param>
public sealed record SyrupBatch(decimal Wanted, string Unit, decimal SugarParts, decimal WaterParts, PartsBy By, decimal Celsius)
{
    /// <summary>The density of sugar solutions is known up to this share.</summary>
    private const double MostSugar = 0.85;

    /// <summary>Later measurements of what dissolves lie up to so much lower than the table of 1892 that is reckoned with.</summary>
    private const double CloseToLimit = 0.005;

    /// <summary>The units to choose from.</summary>
    public static readonly IReadOnlyList<(string Unit, string Said)> UnitsOfVolume = [("L", "litres"), ("gal-us", "US gallons"), ("gal-imp", "imperial gallons")];

    /// <summary>Sugar by mass, 0 to 1.</summary>
    public double Share => Syrup.ShareOf((double)SugarParts, (double)WaterParts, By, (double)Celsius);

    /// <summary>The sugar and water in it.</summary>
    public Syrup Mixed => Syrup.Filling((double)new Quantity(Wanted, Unit).InLitres()!.Value, Share, (double)Celsius);

    /// <summary>Reads it from named values; what is missing is two to one by weight at 20 °C.</summary>
    /// <param name="value">The value of a name; null where it is missing.</param>
    /// <param name="usual">Litres where no amount is given.</param>
    public static (SyrupBatch? Batch, IReadOnlyList<(string Name, string Message)> Faults) Read(Func<string, string?> value, decimal usual)
    {
        var faults = new List<(string, string)>();
        var batch = new SyrupBatch(Number("mix", usual, 0.01m, 1_000_000), Unit(), Number("mix-sugar", 2, 0.01m, 1000), Number("mix-water", 1, 0.01m, 1000), Parts(), Number("mix-at", 20, 0, 60));
        if (faults.Count == 0 && batch.Share > MostSugar) faults.Add(("mix-sugar", "So much sugar makes no syrup: take more water."));
        return (faults.Count == 0 ? batch : null, faults);

        decimal Number(string name, decimal initial, decimal least, decimal most)
        {
            if (value(name) is not { } text) return initial;
            var number = 0m;
            if (text.Length >= 20 || !decimal.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out number)) faults.Add((name, $"'{(text.Length > 40 ? text[..40] + "…" : text)}' is not a number."));
            else if (number < least || number > most) faults.Add((name, FormattableString.Invariant($"From {least:0.##} to {most:0.##}.")));
            else return number;
            return initial;
        }

        string Unit()
        {
            var unit = value("mix-unit") ?? "L";
            if (UnitsOfVolume.Any(known => known.Unit == unit)) return unit;
            faults.Add(("mix-unit", "Take one of the units."));
            return "L";
        }

        PartsBy Parts()
        {
            if (value("mix-by") is not { } by) return PartsBy.Weight;
            if (Enum.TryParse<PartsBy>(by, ignoreCase: true, out var parts) && Enum.IsDefined(parts)) return parts;
            faults.Add(("mix-by", "Take one of weight, volume."));
            return PartsBy.Weight;
        }
    }

    /// <summary>What to beware of; null where it stays dissolved and well so.</summary>
    public string? Warning()
    {
        var (share, soluble) = (Share, Sugar.Soluble((double)Celsius));
        if (share > soluble) return FormattableString.Invariant($"{100 * share:0.0} % sugar is more than the {100 * soluble:0.0} % that stay dissolved at {Celsius:0.#} °C. Sugar comes out of it{Below()}.");
        return share > soluble - CloseToLimit ? FormattableString.Invariant($"{100 * share:0.0} % sugar is close to the {100 * soluble:0.0} % that stay dissolved at {Celsius:0.#} °C: it may well crystallise.") : null;
    }

    /// <summary>In words from which temperature down sugar comes out; empty where it does not above freezing.</summary>
    public string Below() => Mixed.CrystallisesBelow switch { null => "", > 100 => ", however warm", var at => FormattableString.Invariant($" below {at:0} °C") };

    /// <summary>Two decimals below 1, one below 100, none above.</summary>
    public static string Rounded(double amount) => amount.ToString(amount < 1 ? "0.00" : amount < 100 ? "0.0" : "#,0", CultureInfo.InvariantCulture);

    /// <summary>'20.1 kg (44.3 lb)'.</summary>
    public static string Mass(double kilograms) => $"{Rounded(kilograms)} kg ({Rounded(kilograms / (double)new Quantity(1, "lb").InKilograms()!.Value)} lb)";

    /// <summary>'10.1 L (2.7 US or 2.2 imperial gallons)'.</summary>
    public static string Volume(double litres) => $"{Rounded(litres)} L ({Rounded(litres / (double)new Quantity(1, "gal-us").InLitres()!.Value)} US or {Rounded(litres / (double)new Quantity(1, "gal-imp").InLitres()!.Value)} imperial gallons)";
}
