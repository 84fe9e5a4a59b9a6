using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Recording;

/// <summary>Which subjects an entry is listed for beside its own stream.</summary>
internal static class Concerns
{
    /// <summary>Their ids, each once. A void is found by the entry that it names, wherever that lies and whichever came first, so it is listed for nobody.</summary>
    public static IEnumerable<Guid> BeyondStream(Entry entry) =>
        entry is Voided ? [] : entry.Concerns.Select(subject => subject.Id).Distinct().Where(id => id != entry.Stream.Id);
}
