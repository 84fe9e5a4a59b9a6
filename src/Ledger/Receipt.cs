using ColonyLineage.Entries;

namespace ColonyLineage.Ledger;

/// <summary>What became of the entries that were sent.</summary>
/// <param name="New">Recorded now, in the order sent.</param>
/// <param name="Known">Recorded before with the same content: sending twice changes nothing.</param>
/// <param name="Refusals">Why nothing of the act was recorded; empty where it was.</param>
public sealed record Receipt(IReadOnlyList<EntryId> New, IReadOnlyList<EntryId> Known, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>All of it stands recorded.</summary>
    public bool Good => Refusals.Count == 0;
}

/// <summary>Something that was sent and not recorded, kept until a person has looked at it.</summary>
/// <param name="Entry">The id it was sent under; null where it could not be read.</param>
/// <param name="Received">When it came (UTC).</param>
/// <param name="Refusal">The refusal's name: see <see cref="Refusals"/>.</param>
/// <param name="Message">The refusal in words.</param>
/// <param name="Payload">What was sent: JSON as devices send it.</param>
public sealed record KeptAside(EntryId? Entry, DateTimeOffset Received, string Refusal, string Message, string Payload);
