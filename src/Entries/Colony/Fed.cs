namespace ColonyLineage.Entries;

/// <summary>A colony is fed.</summary>
[Kind("fed", 1)]
public sealed record Fed : ColonyEntry
{
    /// <summary>What it was given, in the outfit's words, 1 to 100 characters.</summary>
    public required string Feed { get; init; }

    /// <summary>How much.</summary>
    public Quantity? Amount { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Feed, 100);
        faults.Fits(Amount);
    }
}
