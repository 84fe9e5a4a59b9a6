namespace ColonyLineage.Entries;

/// <summary>Something about a yard is said anew. What is left out stays as it was.</summary>
[Kind("yard-described", 1)]
public sealed record YardDescribed : Entry
{
    /// <summary>The yard.</summary>
    public required YardId Yard { get; init; }

    /// <summary>Another name, at most 100 characters.</summary>
    public string? Name { get; init; }

    /// <summary>Whose land it is, at most 200 characters.</summary>
    public string? Landowner { get; init; }

    /// <summary>How to get in, at most 1,000 characters.</summary>
    public string? Access { get; init; }

    /// <summary>How it is run, at most 100 characters.</summary>
    public string? RunAs { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Yard;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        if (Name is null && Landowner is null && Access is null && RunAs is null && Note is null)
            faults.Add(Refusals.SaysNothing, "", "Say what is to be described.");
        faults.Needs(Yard);
        if (Name is not null) faults.Needs(Name, 100);
        faults.Fits(Landowner, 200);
        faults.Fits(Access, 1000);
        faults.Fits(RunAs, 100);
    }
}
