namespace ColonyLineage.Projections.Sums;

/// <summary>
/// Mites multiply by the same factor every day while there is brood: Fries et al. 1994, Bee World 75:5; Martin 1998, Ecological Modelling 109:267 (the rate
/// from memory). Drifting bees, robbing, broodless weeks and treatments are not in it.
/// </summary>
public static class Growth
{
    /// <summary>By so much a day they grow while there is brood: the difference of births and deaths, as a share.</summary>
    public const double ADay = 0.021;

    /// <summary>The number after so many days, of so many now.</summary>
    public static double After(double now, double days, double aDay = ADay) => now * Math.Exp(aDay * days);

    /// <summary>Days until it has doubled; null where it does not grow.</summary>
    public static double? Doubling(double aDay = ADay) => aDay > 0 ? Math.Log(2) / aDay : null;

    /// <summary>Days until so many are that many; 0 where they are already, null where they never will be.</summary>
    public static double? DaysUntil(double now, double then, double aDay = ADay) =>
        now >= then ? 0 : now > 0 && aDay > 0 ? Math.Log(then / now) / aDay : null;
}
