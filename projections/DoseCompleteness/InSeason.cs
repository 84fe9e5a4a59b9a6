using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.DoseCompleteness;

/// <summary>What of a colony's entries bears on the doses of a season.</summary>
internal static class InSeason
{
    /// <summary>The place in a colony's entries, which are in the order of things, of the first that is not before a day.</summary>
    public static int First(IReadOnlyList<Entry> entries, DateOnly day)
    {
        var (from, to) = (0, entries.Count);
        while (from < to)
        {
            var middle = (from + to) / 2;
            if (entries[middle].On.Day < day) from = middle + 1;
            else to = middle;
        }

        return from;
    }

    /// <summary>A colony's entries of one season.</summary>
    public static IReadOnlyList<Entry> Of(ColonyCard colony, int season, int startMonth)
    {
        var from = First(colony.Counted, Season.FirstDay(season, startMonth));
        var to = First(colony.Counted, Season.FirstDay(season + 1, startMonth));
        var entries = new Entry[to - from];
        for (var i = from; i < to; i++) entries[i - from] = colony.Counted[i];
        return entries;
    }
}
