namespace ColonyLineage.Entries;

/// <summary>A yard is given up.</summary>
[Kind("yard-closed", 1)]
public sealed record YardClosed : Entry
{
    /// <summary>The yard.</summary>
    public required YardId Yard { get; init; }

    /// <summary>Why, at most 500 characters.</summary>
    public string? Why { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Yard;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Needs(Yard);
        faults.Fits(Why, 500);
    }
}
