namespace ColonyLineage.Projections.Losses;

/// <summary>When the winter is, as days of the year. In the south it starts before the turn of the half-year: for instance 1 May to 31 August.</summary>
/// <param name="FromMonth">1 to 12.</param>
/// <param name="FromDay">1 to 31; the last of the month where it has fewer days.</param>
/// <param name="ToMonth">1 to 12.</param>
/// <param name="ToDay">The last day of the winter, 1 to 31.</param>
public sealed record Winter(int FromMonth, int FromDay, int ToMonth, int ToDay)
{
    /// <summary>1 October to 15 April: the north (common practice, no source).</summary>
    public static readonly Winter North = new(10, 1, 4, 15);

    /// <summary>The first day of the winter that starts in this calendar year.</summary>
    public DateOnly From(int year) => Day(year, FromMonth, FromDay);

    /// <summary>Its last day, which may lie in the next year.</summary>
    public DateOnly To(int year) => Day(year, ToMonth, ToDay) is var same && same > From(year) ? same : Day(year + 1, ToMonth, ToDay);

    /// <summary>The first and the last day of a period that is named by this winter.</summary>
    public (DateOnly From, DateOnly To) Of(LossPeriod period, int year) => period switch
    {
        LossPeriod.Winter => (From(year), To(year)),
        LossPeriod.Summer => (To(year).AddDays(1), From(year + 1).AddDays(-1)),
        _ => (From(year), From(year + 1).AddDays(-1)),
    };

    private static DateOnly Day(int year, int month, int day) => new(year, month, Math.Min(day, DateTime.DaysInMonth(year, month)));
}
