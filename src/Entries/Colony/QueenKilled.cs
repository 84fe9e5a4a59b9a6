namespace ColonyLineage.Entries;

/// <summary>The colony's queen is killed.</summary>
[Kind("queen-killed", 1)]
public sealed record QueenKilled : ColonyEntry
{
    /// <summary>The queen, where she is known as an individual.</summary>
    public QueenId? Queen { get; init; }

    /// <summary>Why, at most 200 characters.</summary>
    public string? Why { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, Queen);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Fits(Queen);
        faults.Fits(Why, 200);
    }
}
