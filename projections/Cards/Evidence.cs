using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>The law of evidence: the ids of the entries that an answer rests on.</summary>
public static class Evidence
{
    /// <summary>The ids, each once, in the order of things.</summary>
    public static IReadOnlyList<EntryId> Of(IEnumerable<Entry?> entries)
    {
        // Every row of every question comes by here, so it makes no more than it must.
        var places = new List<Place>();
        var inOrder = true;
        foreach (var entry in entries)
        {
            if (entry is null) continue;
            var place = Place.Of(entry);
            inOrder &= places.Count == 0 || places[^1].CompareTo(place) < 0;
            places.Add(place);
        }

        if (!inOrder) places.Sort();
        var ids = new List<EntryId>(places.Count);
        foreach (var place in places)
            if (ids.Count == 0 || ids[^1] != place.Id)
                ids.Add(place.Id);
        return ids.ToArray();
    }
}
