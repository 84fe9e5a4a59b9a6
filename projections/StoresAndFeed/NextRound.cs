using ColonyLineage.Entries;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Projections.StoresAndFeed;

/// <summary>Sugar, water, syrup and feeders that the next round takes: yard by yard, then all of them.</summary>
public static class NextRound
{
    public static IReadOnlyList<RoundFeedRow> Of(IEnumerable<StoresRow> rows)
    {
        var all = rows.ToList();
        return
        [
            .. all.Where(row => row.YardId is not null).GroupBy(row => (row.YardId, row.Yard)).OrderBy(yard => yard.Key.Yard, ByNumber.Order).ThenBy(yard => yard.Key.YardId?.Value)
                .Select(yard => Row([.. yard]) with { YardId = yard.Key.YardId, Yard = yard.Key.Yard }),
            Row(all),
        ];
    }

    private static RoundFeedRow Row(IReadOnlyList<StoresRow> rows)
    {
        var lacking = rows.Where(row => row.LackingKg > 0).ToList();
        var unknown = rows.Where(row => row.LackingKg is null).ToList();
        var light = unknown.Where(row => row.Heft == Heft.Light).ToList();
        var kilograms = lacking.Sum(row => row.LackingKg!.Value);
        var sugar = (double)kilograms / Feed.StoresOfSugar;
        var syrup = new Syrup(sugar, sugar / 2, 20);
        var feeders = lacking.Concat(light).Where(row => row.FeederOn is null).ToList();
        return new RoundFeedRow
        {
            Colonies = rows.Count,
            Lacking = lacking.Count,
            LackingKg = kilograms,
            NotKnown = unknown.Count,
            Light = light.Count,
            SugarKg = Round(sugar),
            WaterL = sugar == 0 ? 0 : Round(syrup.WaterLitres),
            SyrupL = sugar == 0 ? 0 : Round(syrup.Litres),
            LargeFeeders = feeders.Count(row => !row.Small),
            SmallFeeders = feeders.Count(row => row.Small),
            FeedersOn = rows.Count(row => row.FeederOn is not null),
            Entries = [.. lacking.Concat(light).SelectMany(row => row.Entries).Distinct()],
        };
    }

    private static decimal Round(double value) => Math.Round((decimal)value, 1);
}
