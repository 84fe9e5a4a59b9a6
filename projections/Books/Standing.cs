using ColonyLineage.Entries;

namespace ColonyLineage.Projections;

/// <summary>
/// The law of order: what stands, in the order of things, whatever the order of arrival. An entry stands unless a void
/// names it; a void is final, whenever it came and whatever day it bears.
/// </summary>
public static class Standing
{
    /// <summary>The entries that stand, in order.</summary>
    /// <param name="recorded">All that was ever recorded, in any order, any of it any number of times.</param>
    /// <param name="asOf">Only what had occurred by the end of this day, by what is known; null for all.</param>
    /// <param name="knownAt">Only what the books held at this instant; null for all.</param>
    public static IReadOnlyList<Entry> Of(IEnumerable<Recorded> recorded, DateOnly? asOf = null, DateTimeOffset? knownAt = null)
    {
        var known = new Dictionary<EntryId, Entry>();
        foreach (var (entry, at) in recorded)
            if (knownAt is null || at <= knownAt)
                known.TryAdd(entry.Id, entry);
        return InOrder(known.Values, asOf);
    }

    /// <summary>The same, of entries that are distinct already and all known.</summary>
    public static IReadOnlyList<Entry> InOrder(IReadOnlyCollection<Entry> distinct, DateOnly? asOf = null)
    {
        var voided = distinct.OfType<Voided>().Select(entry => entry.Entry).ToHashSet();
        var standing = new List<Entry>(distinct.Count);
        foreach (var entry in distinct)
            if (entry is not Voided && !voided.Contains(entry.Id) && (asOf is null || entry.On.Day <= asOf))
                standing.Add(entry);
        standing.Sort((left, right) => Place.Of(left).CompareTo(Place.Of(right)));
        return standing;
    }
}
