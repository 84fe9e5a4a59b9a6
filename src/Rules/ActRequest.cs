using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>
/// One act of the crew, entered once. It becomes one entry for each thing that was done, all of them or none. The ids of its
/// entries, and of colonies and queens that it brings without an id of their own, are derived from the act's id: the
/// same request sent twice gives the same entries.
/// </summary>
public abstract record ActRequest
{
    /// <summary>The act's id, made on the device.</summary>
    public required ActId Act { get; init; }

    /// <summary>When it was done.</summary>
    public required Occurred On { get; init; }

    /// <summary>Who reports it, at most 100 characters.</summary>
    public string? By { get; init; }

    /// <summary>The visit, where there was one.</summary>
    public VisitId? Visit { get; init; }

    /// <summary>The place of its first entry among those of the day, 0 to 1,000,000; the others count up from it as things were done.</summary>
    public int FirstOrder { get; init; }

    /// <summary>Anything else worth keeping, at most 4,000 characters. The first entry of each colony, queen or yard carries it.</summary>
    public string? Note { get; init; }

    /// <summary>The id of an entry of this act: what it is in the act, and of whom.</summary>
    internal EntryId IdOf(string role, Subject subject) => new(Derived($"{role} {subject.Kind} {subject.Id}"));

    /// <summary>An id for something that the act brings into the books.</summary>
    internal Guid Derived(string name) => NamedId.Of(Act.Value, name);
}
