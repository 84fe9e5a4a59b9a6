namespace ColonyLineage.Entries;

/// <summary>A supplement is given: pollen substitute, patty, vitamins.</summary>
[Kind("supplement-given", 1)]
public sealed record SupplementGiven : ColonyEntry
{
    /// <summary>Which, in the outfit's words, 1 to 100 characters.</summary>
    public required string Supplement { get; init; }

    /// <summary>How much.</summary>
    public Quantity? Amount { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Supplement, 100);
        faults.Fits(Amount);
    }
}
