namespace ColonyLineage.Entries;

/// <summary>A line is given a name: all queens that descend from its breeder through their mothers.</summary>
[Kind("line-started", 1)]
public sealed record LineStarted : Entry
{
    /// <summary>The line's name, 1 to 60 characters.</summary>
    public required string Line { get; init; }

    /// <summary>The queen that it starts at.</summary>
    public required QueenId Breeder { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Subject.Outfit;

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => [Breeder];

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Needs(Line, 60);
        faults.Needs(Breeder);
    }
}
