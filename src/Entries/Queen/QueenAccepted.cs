namespace ColonyLineage.Entries;

/// <summary>A queen that was given to a colony is found accepted and laying, or not accepted.</summary>
[Kind("queen-accepted", 1)]
public sealed record QueenAccepted : QueenEntry
{
    /// <summary>The colony.</summary>
    public required ColonyId Colony { get; init; }

    /// <summary>She was accepted; false where she is gone or was not.</summary>
    public required bool Accepted { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => [Colony];

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Needs(Colony);
}
