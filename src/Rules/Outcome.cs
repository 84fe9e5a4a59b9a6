using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>
/// What came of a request: the entries to be recorded, or the reasons why nothing is. An act is all or nothing, so never both
/// and never neither.
/// </summary>
public sealed class Outcome
{
    private Outcome(IReadOnlyList<Entry> entries, IReadOnlyList<Refusal> refusals) => (Entries, Refusals) = (entries, refusals);

    /// <summary>What is to be recorded, in the order in which it was done; empty where the request was refused.</summary>
    public IReadOnlyList<Entry> Entries { get; }

    /// <summary>Why nothing is recorded, at each field that is wrong; empty where the request stands.</summary>
    public IReadOnlyList<Refusal> Refusals { get; }

    /// <summary>Whether the request was refused.</summary>
    public bool IsRefused => Refusals.Count > 0;

    internal static Outcome Of(IReadOnlyList<Entry> entries) =>
        entries.Count > 0 ? new Outcome(entries, []) : throw new ArgumentException("An act has at least one entry.", nameof(entries));

    internal static Outcome Refused(IReadOnlyList<Refusal> refusals) =>
        refusals.Count > 0 ? new Outcome([], refusals) : throw new ArgumentException("A refusal gives a reason.", nameof(refusals));
}
