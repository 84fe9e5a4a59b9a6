using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>The law of evidence: the ids of the entries that an answer rests on.</summary>
public static class Evidence
{
    /// <summary>The ids, each once, in the order of things.</summary>
    public static IReadOnlyList<EntryId> Of(IEnumerable<Entry?> entries) =>
        [.. entries.OfType<Entry>().DistinctBy(entry => entry.Id).OrderBy(Place.Of).Select(entry => entry.Id)];
}
