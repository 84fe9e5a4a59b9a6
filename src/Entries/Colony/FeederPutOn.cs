namespace ColonyLineage.Entries;

/// <summary>A feeder is put on.</summary>
[Kind("feeder-put-on", 1)]
public sealed record FeederPutOn : ColonyEntry
{
    /// <summary>Which feeder, in the outfit's words, at most 100 characters.</summary>
    public string? Feeder { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Fits(Feeder, 100);
}
