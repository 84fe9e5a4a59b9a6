using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Projections.Losses;

/// <summary>Comparisons of losses, pooled and within yards, side by side.</summary>
public static class Paradox
{
    /// <summary>
    /// Each line, age of queen and state of treatment against all others of which the same is known, winter by winter. Left out where nobody of one side was lost or kept,
    /// and where no yard holds both: then there is nothing to compare fairly.
    /// </summary>
    public static IReadOnlyList<ParadoxRow> Of(IEnumerable<LifeRow> rows, OutfitCard outfit, DateOnly asked, Winter? winter = null, Beside? beside = null)
    {
        var atRisk = new AtRisk(rows, outfit, asked, winter ?? Winter.North, beside ?? Beside.Nothing);
        return
        [
            .. from year in atRisk.Winters
               let colonies = atRisk.In(LossPeriod.Winter, year).Where(colony => !colony.Sold).ToList()
               from kind in new[] { LossBy.Line, LossBy.QueenAge, LossBy.Treatment }
               where kind != LossBy.Treatment || atRisk.KnowsTreatment
               let known = colonies.Where(colony => colony.Of(kind) != AtRisk.Unknown).ToList()
               let names = known.Select(colony => colony.Of(kind)).Distinct().Order(StringComparer.Ordinal).ToList()
               // Of two groups the one against the other says it all.
               from name in names.Take(names.Count == 2 ? 1 : names.Count)
               let row = Row(year, kind, name, known)
               where row is not null
               select row,
        ];
    }

    private static ParadoxRow? Row(int year, LossBy by, string name, IReadOnlyList<ColonyInPeriod> colonies)
    {
        var yards = colonies.GroupBy(colony => colony.Yard).OrderBy(yard => yard.Key, StringComparer.Ordinal).Select(yard => Table(yard, by, name)).ToList();
        if (TwoByTwo.Crude(yards) is not { } pooled || TwoByTwo.MantelHaenszel(yards) is not { } within) return null;
        return new ParadoxRow
        {
            Winter = year,
            By = by,
            Group = name,
            Lost = yards.Sum(yard => yard.Lost),
            AtRisk = yards.Sum(yard => yard.Lost + yard.Kept),
            OthersLost = yards.Sum(yard => yard.OtherLost),
            OthersAtRisk = yards.Sum(yard => yard.OtherLost + yard.OtherKept),
            PooledOddsRatio = Math.Round((decimal)pooled, 4),
            WithinYardsOddsRatio = Math.Round((decimal)within.Ratio, 4),
            WithinYardsLower = Math.Round((decimal)within.Lower, 4),
            WithinYardsUpper = Math.Round((decimal)within.Upper, 4),
            Disagree = (pooled - 1) * (within.Ratio - 1) < 0,
            Entries = [.. colonies.SelectMany(colony => colony.Life.Entries).Distinct()],
        };
    }

    private static Fourfold Table(IEnumerable<ColonyInPeriod> yard, LossBy by, string name)
    {
        var sides = yard.ToLookup(colony => (colony.Of(by) == name, colony.Lost));
        return new Fourfold(sides[(true, true)].Count(), sides[(true, false)].Count(), sides[(false, true)].Count(), sides[(false, false)].Count());
    }
}
