namespace ColonyLineage.Entries;

/// <summary>A colony is given another housing: a second brood box, or one taken off.</summary>
[Kind("boxes-changed", 1)]
public sealed record BoxesChanged : ColonyEntry
{
    /// <summary>What it is housed in now.</summary>
    public required Housing Housing { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Known<Housing>(Housing);
}
