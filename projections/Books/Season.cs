namespace ColonyLineage.Projections;

/// <summary>
/// A season is named by the calendar year in which it starts; the month in which it starts is the outfit's setting, never the
/// calendar year (March in the north, July in the south).
/// </summary>
public static class Season
{
    /// <summary>The season that a day falls in.</summary>
    public static int Of(DateOnly day, int startMonth) => day.Month >= startMonth ? day.Year : day.Year - 1;

    /// <summary>Its first day.</summary>
    public static DateOnly FirstDay(int season, int startMonth) => new(season, startMonth, 1);

    /// <summary>Its last day.</summary>
    public static DateOnly LastDay(int season, int startMonth) => FirstDay(season + 1, startMonth).AddDays(-1);
}
