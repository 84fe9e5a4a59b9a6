namespace ColonyLineage.Entries;

/// <summary>
/// Somebody has looked at a contradiction between entries and lets them stand as they are. It changes no answer; the
/// conflict is shown as settled, with the reason.
/// </summary>
[Kind("conflict-settled", 1)]
public sealed record ConflictSettled : ColonyEntry
{
    /// <summary>The conflict's name, for instance <c>treated-after-end</c>, 1 to 60 characters.</summary>
    public required string Conflict { get; init; }

    /// <summary>The entries that contradict each other, 1 to 50.</summary>
    public required IReadOnlyList<EntryId> Between { get; init; }

    /// <summary>Why they may stand, 1 to 1,000 characters.</summary>
    public required string Why { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Conflict, 60);
        faults.Within(Between?.Count, 1, 50, nameof(Between));
        foreach (var entry in Between ?? []) faults.Needs(entry, nameof(Between));
        faults.Needs(Why, 1000);
    }
}
