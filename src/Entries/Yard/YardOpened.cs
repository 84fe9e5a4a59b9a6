namespace ColonyLineage.Entries;

/// <summary>A place where colonies stand is taken into use.</summary>
[Kind("yard-opened", 1)]
public sealed record YardOpened : Entry
{
    /// <summary>The yard.</summary>
    public required YardId Yard { get; init; }

    /// <summary>The outfit's name for it, 1 to 100 characters.</summary>
    public required string Name { get; init; }

    /// <summary>Whose land it is, at most 200 characters.</summary>
    public string? Landowner { get; init; }

    /// <summary>Gates, keys, dogs, mud: how to get in, at most 1,000 characters.</summary>
    public string? Access { get; init; }

    /// <summary>How it is run, for instance singles or doubles, at most 100 characters.</summary>
    public string? RunAs { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Yard;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Needs(Yard);
        faults.Needs(Name, 100);
        faults.Fits(Landowner, 200);
        faults.Fits(Access, 1000);
        faults.Fits(RunAs, 100);
    }
}
