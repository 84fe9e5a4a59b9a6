using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Projections.MiteWatch;

/// <summary>Growth from the last round of washes on.</summary>
public static class Forecast
{
    /// <summary>From the last round of each yard.</summary>
    /// <param name="rounds">Rounds of any yards.</param>
    /// <param name="aDay">The growth assumed: a share a day, above 0.</param>
    public static IReadOnlyList<ForecastRow> OfLast(IEnumerable<RoundRow> rounds, decimal aDay = (decimal)Growth.ADay) =>
        [.. rounds.GroupBy(round => round.YardId).Select(yard => Of(yard.MaxBy(round => round.To)!, aDay)).OrderBy(row => row.Yard, StringComparer.Ordinal).ThenBy(row => row.YardId.Value)];

    /// <summary>From one round. The threshold is the one that the round was judged by.</summary>
    public static ForecastRow Of(RoundRow round, decimal aDay = (decimal)Growth.ADay)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(aDay);
        var (mean, upper) = (Days(round.Per100Bees, round.Threshold, aDay), Days(round.UpperPer100, round.Threshold, aDay));
        return new ForecastRow
        {
            YardId = round.YardId,
            Yard = round.Yard,
            From = round.To,
            Per100Bees = round.Per100Bees,
            UpperPer100 = round.UpperPer100,
            Threshold = round.Threshold,
            GrowthADay = aDay,
            DaysByMean = mean,
            OnByMean = mean is { } days ? round.To.AddDays(days) : null,
            DaysByUpper = upper,
            OnByUpper = upper is { } soonest ? round.To.AddDays(soonest) : null,
            Assumptions =
            [
                FormattableString.Invariant($"Mites grow by {100 * aDay:0.##} % a day, as they do while there is brood (Fries et al. 1994; Martin 1998); without brood they do not."),
                "Mites per 100 bees grow as mites do: that the bees become fewer in autumn, which raises them further, is not in it.",
                "No dose is given meanwhile, and none given before still works.",
                "No mites come with drifting or robbing bees.",
            ],
            Entries = round.Entries,
        };
    }

    /// <summary>Whole days, rounded down: rather too soon than too late.</summary>
    private static int? Days(decimal now, decimal then, decimal aDay) => Growth.DaysUntil((double)now, (double)then, (double)aDay) is { } days ? (int)Math.Floor(days) : null;
}
