namespace ColonyLineage.Entries;

/// <summary>A feeder is taken off.</summary>
[Kind("feeder-taken-off", 1)]
public sealed record FeederTakenOff : ColonyEntry
{
    /// <summary>Which feeder, in the outfit's words, at most 100 characters.</summary>
    public string? Feeder { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Fits(Feeder, 100);
}
