using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Losses;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Desk;

/// <summary>How colonies fare from one age to the next: what the curves show, in a few rows.</summary>
/// <param name="After">The age before, in days.</param>
/// <param name="UpTo">The age, in days.</param>
/// <param name="Watched">How many were watched at it.</param>
/// <param name="Share">The share not lost by it, 0 to 1.</param>
/// <param name="Ended">The share that had ended in each way by it.</param>
/// <param name="Entries">Of the colonies that ended since the age before.</param>
public sealed record AgeRow(double After, double UpTo, int Watched, decimal Share, decimal? Lower, decimal? Upper, IReadOnlyDictionary<string, decimal> Ended, IReadOnlyList<EntryId> Entries);

/// <summary>Makes it.</summary>
public static class LastingTable
{
    /// <summary>A row for each age but the first.</summary>
    public static IReadOnlyList<AgeRow> At(Lasting lasting, IReadOnlyList<Life> watched, IReadOnlyList<double> ages) =>
    [
        .. ages.Zip(ages.Skip(1)).Select(pair =>
        {
            var step = lasting.Curve.LastOrDefault(step => (double)step.Days <= pair.Second);
            return new AgeRow(
                pair.First, pair.Second, Drawing.LastingPlot.WatchedAt(watched, pair.Second), step?.Share ?? 1, step?.Lower, step?.Upper,
                lasting.Ends.Where(end => (double)end.Days <= pair.Second).GroupBy(end => end.How).ToDictionary(way => way.Key, way => way.Last().Share),
                Entries(lasting, pair.First, pair.Second));
        }),
    ];

    /// <summary>The steps of both curves between two ages, for the entries they rest on.</summary>
    public static IEnumerable<IRow> Between(Lived lived, CountedFrom counted, int after, int upTo)
    {
        var lasting = lived.Colonies(Ask.Everything, counted);
        return [.. lasting.Curve.Where(step => step.Days > after && step.Days <= upTo), .. lasting.Ends.Where(step => step.Days > after && step.Days <= upTo)];
    }

    private static IReadOnlyList<EntryId> Entries(Lasting lasting, double after, double upTo) =>
        [.. lasting.Ends.Where(step => (double)step.Days > after && (double)step.Days <= upTo).SelectMany(step => step.Entries).Distinct()];
}
