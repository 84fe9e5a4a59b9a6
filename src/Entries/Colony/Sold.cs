namespace ColonyLineage.Entries;

/// <summary>A colony is sold or given away.</summary>
[Kind("sold", 1)]
public sealed record Sold : ColonyEntry
{
    /// <summary>To whom, at most 200 characters.</summary>
    public string? To { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Fits(To, 200);
}
