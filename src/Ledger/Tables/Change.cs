using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Tables;

/// <summary>What changed between two states of the books: the entries that came to stand and those that no longer do.</summary>
internal sealed class Change
{
    /// <summary>Entries that came to stand.</summary>
    public Dictionary<EntryId, Entry> Came { get; } = [];

    /// <summary>Entries that a void struck.</summary>
    public Dictionary<EntryId, Entry> Gone { get; } = [];

    /// <summary>The subjects that it changes something for.</summary>
    public HashSet<Subject> Touched { get; } = [];

    public void Stand(Entry entry)
    {
        if (entry is Voided || !Came.TryAdd(entry.Id, entry)) return;
        Touched.UnionWith(entry.Concerns);
    }

    public void Strike(Entry entry)
    {
        // A void of a void changes nothing.
        if (entry is Voided || !Gone.TryAdd(entry.Id, entry)) return;
        Touched.UnionWith(entry.Concerns);
    }

    /// <summary>The entries of a subject before the change, by those after it.</summary>
    public IEnumerable<Entry> Before(Subject subject, IEnumerable<Entry> after) =>
        after.Where(entry => !Came.ContainsKey(entry.Id)).Concat(Gone.Values.Where(entry => entry.Concerns.Contains(subject)));
}
