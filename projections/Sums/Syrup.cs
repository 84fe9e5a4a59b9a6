using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Sums;

/// <summary>Sugar syrup: so much sugar and water make so much syrup. A gallon of water with sugar in it is more than a gallon of syrup.</summary>
/// <param name="Sugar">Kilograms of sugar.</param>
/// <param name="Water">Kilograms of water.</param>
/// <param name="Celsius">The temperature for which volumes are meant.</param>
public sealed record Syrup(double Sugar, double Water, double Celsius)
{
    /// <summary>
    /// Kilograms of a litre of dry white sugar as it is poured: 200 g in a US cup of 236.588 mL (household tables, from memory). It depends on the grain and on
    /// how it is poured: a recipe by volume is never exact.
    /// </summary>
    public const double SugarPoured = 0.845;

    /// <summary>Sugar by mass, 0 to 1.</summary>
    public double Share => Sugar / (Sugar + Water);

    /// <summary>Litres of syrup.</summary>
    public double Litres => (Sugar + Water) / Sums.Sugar.Density(Share, Celsius);

    /// <summary>Litres of water in it.</summary>
    public double WaterLitres => Water / Sums.Sugar.Density(0, Celsius);

    /// <summary>Whether all the sugar dissolves, and stays dissolved.</summary>
    public bool Dissolves => Share <= Sums.Sugar.Soluble(Celsius);

    /// <summary>Below this many °C sugar comes out of it; null where it never does above freezing.</summary>
    public double? CrystallisesBelow => Sums.Sugar.CrystallisesBelow(Share);

    /// <summary>Sugar by mass of a recipe of so many parts of sugar to so many of water.</summary>
    /// <param name="poured">Kilograms of a litre of the dry sugar; counts by volume only.</param>
    public static double ShareOf(double sugar, double water, PartsBy parts, double celsius = 20, double poured = SugarPoured)
    {
        if (!(sugar >= 0 && water >= 0 && sugar + water > 0)) throw new ArgumentOutOfRangeException(nameof(sugar), sugar, "Parts are 0 or more, and not both 0.");
        if (parts == PartsBy.Volume) (sugar, water) = (sugar * poured, water * Sums.Sugar.Density(0, celsius));
        return sugar / (sugar + water);
    }

    /// <summary>The sugar and the water that go into so many litres of syrup.</summary>
    /// <param name="share">Sugar by mass, 0 to 1.</param>
    public static Syrup Filling(double litres, double share, double celsius = 20)
    {
        var mass = litres * Sums.Sugar.Density(share, celsius);
        return new Syrup(share * mass, (1 - share) * mass, celsius);
    }

    /// <summary>The syrup that comes of stirring sugar into water.</summary>
    /// <param name="sugar">A mass, in a unit of mass.</param>
    /// <param name="water">A volume or a mass.</param>
    public static Syrup Of(Quantity sugar, Quantity water, double celsius = 20)
    {
        var kilograms = sugar.InKilograms() ?? throw new ArgumentException("Sugar is given by weight.", nameof(sugar));
        var ofWater = (double?)water.InKilograms() ?? ((double?)water.InLitres() * Sums.Sugar.Density(0, celsius)) ?? throw new ArgumentException("Water is given by volume or weight.", nameof(water));
        return new Syrup((double)kilograms, ofWater, celsius);
    }
}
