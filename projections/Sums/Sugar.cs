using MathNet.Numerics;

namespace ColonyLineage.Projections.Sums;

/// <summary>Sugar (sucrose) in water: how dense the solution is, and how much dissolves. Shares are parts of the mass, 0 to 1.</summary>
public static class Sugar
{
    /// <summary>
    /// Kilograms of one litre of solution. The polynomial of Bubník et al. 1995, Sugar Technologists Manual, p. 164; it agrees with the table of
    /// NBS Circular 440 to 0.0001 up to a share of 0.5 and to 0.0003 above.
    /// </summary>
    /// <param name="share">Sugar by mass, 0 to 0.85.</param>
    /// <param name="celsius">0 to 100 °C.</param>
    public static double Density(double share, double celsius = 20)
    {
        Check(share, celsius);
        var x = (celsius - 20) / 100;
        // Powers of the share inside, of the temperature outside.
        var added = Polynomial.Evaluate(share, 0, 385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890);
        var first = Polynomial.Evaluate(share, 0, -46.2720, -7.1720, 1.1597, 5.1126, 17.5254);
        var second = Polynomial.Evaluate(share, 0, 59.7712, 7.2491, 12.3630, -35.4791);
        var third = Polynomial.Evaluate(share, 0, -47.2207, -21.6977, 27.6301);
        var fourth = Polynomial.Evaluate(share, 0, 18.3184, 12.3081);
        return (Water(celsius) + Polynomial.Evaluate(x, added, first, second, third, fourth)) / 1000;
    }

    /// <summary>
    /// The share at which a solution is saturated. Herzfeld's table of 1892 as its usual square fit, 64.1835 + 0.13477 t + 0.0005307 t² percent: the fit is
    /// from memory; it meets the rows of the table quoted by Mohos 2010 (197.0 g in 100 g of water at 15 °C, 203.9 g at 20 °C). Later measurements lie
    /// up to half a percent lower, so a syrup close to the limit may well crystallise.
    /// </summary>
    /// <param name="celsius">0 to 100 °C.</param>
    public static double Soluble(double celsius)
    {
        Check(0, celsius);
        return Polynomial.Evaluate(celsius, 64.1835, 0.13477, 0.0005307) / 100;
    }

    /// <summary>The temperature in °C below which sugar comes out of a solution; null where that is below 0 °C, and above 100 °C where it never all dissolves.</summary>
    public static double? CrystallisesBelow(double share)
    {
        Check(share, 0);
        const double Slope = 0.13477;
        const double Bend = 0.0005307;
        var rise = (100 * share) - 64.1835;
        return rise < 0 ? null : (Math.Sqrt((Slope * Slope) + (4 * Bend * rise)) - Slope) / (2 * Bend);
    }

    /// <summary>Kilograms of a cubic metre of water: Kell 1975, as the polynomial takes it.</summary>
    private static double Water(double t) =>
        Polynomial.Evaluate(t, 999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9, -281.03006e-12) / (1 + (16.887236e-3 * t));

    private static void Check(double share, double celsius)
    {
        if (share is not (>= 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(share), share, "From 0 to 1.");
        if (celsius is not (>= 0 and <= 100)) throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "From 0 to 100.");
    }
}
