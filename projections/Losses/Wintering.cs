using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Projections.Losses;

/// <summary>Losses by winter, summer and year.</summary>
public static class Wintering
{
    /// <summary>The rates of every period that began by the day asked for: the whole outfit first, then by yard, line, queen's age and treatment.</summary>
    /// <param name="rows">The lives, as of <paramref name="asked"/> or later.</param>
    /// <param name="winter">When the winter is; null for the north's.</param>
    /// <param name="beside">What other questions tell of the colonies; null for nothing.</param>
    public static IReadOnlyList<LossRow> Of(IEnumerable<LifeRow> rows, OutfitCard outfit, DateOnly asked, Winter? winter = null, Beside? beside = null)
    {
        var when = winter ?? Winter.North;
        var atRisk = new AtRisk(rows, outfit, asked, when, beside ?? Beside.Nothing);
        return
        [
            .. from year in atRisk.Winters
               from period in Enum.GetValues<LossPeriod>()
               let colonies = atRisk.In(period, year)
               where colonies.Count > 0
               from kind in Enum.GetValues<LossBy>()
               where kind != LossBy.Treatment || (period == LossPeriod.Winter && atRisk.KnowsTreatment)
               from alike in colonies.GroupBy(colony => colony.Of(kind)).OrderBy(alike => alike.Key, StringComparer.Ordinal)
               where alike.Any(colony => !colony.Sold)
               select Row(period, year, when, asked, kind, alike.Key, [.. alike]),
        ];
    }

    private static LossRow Row(LossPeriod period, int year, Winter winter, DateOnly asked, LossBy by, string name, IReadOnlyList<ColonyInPeriod> colonies)
    {
        var (from, to) = winter.Of(period, year);
        var atRisk = colonies.Where(colony => !colony.Sold).ToList();
        var yards = atRisk.GroupBy(colony => colony.Yard).Select(yard => new LostOf(yard.Count(colony => colony.Lost), yard.Count())).ToList();
        var (wilson, quasi, clustered) = (LossRate.Wilson(yards), LossRate.QuasiBinomial(yards), LossRate.Clustered(yards));
        // Where none or all were lost the yards do not differ, and an interval of no width would say that this is sure.
        if (yards.All(yard => yard.Lost == 0) || yards.All(yard => yard.Lost == yard.AtRisk)) clustered = null;
        return new LossRow
        {
            Period = period,
            Winter = year,
            From = from,
            To = to,
            Over = to <= asked,
            By = by,
            Group = name,
            AtRisk = atRisk.Count,
            Lost = atRisk.Count(colony => colony.Lost),
            Combined = atRisk.Count(colony => colony.Combined),
            Sold = colonies.Count - atRisk.Count,
            LostUnsure = atRisk.Count(colony => colony.LostUnsure),
            Yards = yards.Count,
            OverallRate = Rounded(LossRate.Overall(yards)),
            OverallWilsonLower = Rounded(wilson.Lower),
            OverallWilsonUpper = Rounded(wilson.Upper),
            OverallQuasiLower = quasi is null ? null : Rounded(quasi.Lower),
            OverallQuasiUpper = quasi is null ? null : Rounded(quasi.Upper),
            Dispersion = quasi is null ? null : Rounded(quasi.Dispersion),
            OverallClusteredLower = clustered is null ? null : Rounded(clustered.Lower),
            OverallClusteredUpper = clustered is null ? null : Rounded(clustered.Upper),
            AverageRate = Rounded(LossRate.Average(yards)),
            Entries = [.. colonies.SelectMany(colony => colony.Life.Entries).Distinct()],
        };
    }

    private static decimal Rounded(double rate) => Math.Round((decimal)rate, 4);
}
