using ColonyLineage.Entries;

namespace ColonyLineage.Simulation;

/// <summary>A failure told to a person, with its history made small.</summary>
public static class Report
{
    /// <summary>The law that is broken, what was found and the entries that are left, one a line; and these as JSON.</summary>
    public static string Of(Folds folds, IReadOnlyList<Recorded> history, ulong seed, Failure failure, out string json)
    {
        var checks = new Checks(folds, seed);
        var small = checks.Shrink(history, failure);
        var last = checks.Find(small) ?? failure;
        json = HistoryText.Json(small);
        return $"\nseed {seed}: {last.Law} does not hold\n{HistoryText.Shorten(last.What, small)}\n\n{small.Count} entries left of {history.Count}:\n{HistoryText.Lines(small)}";
    }
}
