using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>
/// Entries as a device sends them, in any order and any number of times. What contradicts the books is taken in and shows up
/// as a conflict; only nonsense is refused, and then nothing of the act is recorded.
/// </summary>
public static class RecordEntries
{
    /// <summary>The most entries that fit one act.</summary>
    public const int Most = 20_000;

    /// <summary>Decides over the entries of one act. Refusals name fields as <c>entries[3].mites</c>.</summary>
    public static Outcome Decide(IReadOnlyList<Entry> entries, Now now)
    {
        if (entries.Count is 0 or > Most) return Outcome.Refused([WrongCount(entries.Count)]);
        var refusals = new List<Refusal>();
        var kept = new List<Entry>(entries.Count);
        var byId = new Dictionary<EntryId, Entry>(entries.Count);
        var voids = entries.OfType<Voided>().Select(entry => entry.Id).ToHashSet();
        for (var i = 0; i < entries.Count; i++)
        {
            var entry = entries[i];
            foreach (var fault in EntryCheck.Of(entry, now).Concat(OfVoid(entry, voids)).Concat(OfAct(entry, entries[0])))
                refusals.Add(fault with { Field = $"entries[{i}].{fault.Field}".TrimEnd('.') });
            if (byId.TryAdd(entry.Id, entry)) kept.Add(entry);
            else if (!SameContent(byId[entry.Id], entry))
                refusals.Add(new Refusal(Refusals.SameIdOtherContent, $"entries[{i}].id", "Two different entries carry this id: give one of them an id of its own."));
        }

        return refusals.Count > 0 ? Outcome.Refused(refusals) : Outcome.Of(kept);
    }

    internal static Refusal WrongCount(int count) => new(Refusals.EmptyAct, "", count == 0
        ? "There is nothing to record: name at least one thing that was done."
        : $"One act holds at most {Most:N0} entries; this has {count:N0}. Send it in parts.");

    private static IEnumerable<Refusal> OfVoid(Entry entry, HashSet<EntryId> voids)
    {
        if (entry is not Voided voided) yield break;
        if (voided.Of.Id == Guid.Empty) yield return new Refusal(Refusals.NoId, "of", "Say in whose history the wrong entry stands.");
        // A void that names itself has its own refusal.
        if (voided.Entry != voided.Id && voids.Contains(voided.Entry)) yield return VoidEntries.OfVoid("entry");
    }

    private static IEnumerable<Refusal> OfAct(Entry entry, Entry first)
    {
        if (entry.Act != first.Act)
            yield return new Refusal(Refusals.SeveralActs, "act", "The entries of one request belong to one act: send each act by itself.");
    }

    // By the stored form: lists in records are equal only where they are the same list.
    private static bool SameContent(Entry one, Entry other) =>
        one.GetType() == other.GetType() && EntryJson.Write(one) == EntryJson.Write(other);
}
