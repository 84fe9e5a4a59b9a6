namespace ColonyLineage.Entries;

/// <summary>A numbered place is no longer used. Its story stays.</summary>
[Kind("spot-retired", 1)]
public sealed record SpotRetired : Entry
{
    /// <summary>The spot.</summary>
    public required Spot Spot { get; init; }

    /// <summary>Why, at most 500 characters.</summary>
    public string? Why { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Spot.Yard;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Needs(Spot);
        faults.Fits(Why, 500);
    }
}
