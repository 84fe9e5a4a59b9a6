namespace ColonyLineage.Entries;

/// <summary>The colony's queen is let out of her cage.</summary>
[Kind("queen-released", 1)]
public sealed record QueenReleased : ColonyEntry
{
    /// <summary>The queen, where she is known as an individual.</summary>
    public QueenId? Queen { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, Queen);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Fits(Queen);
}
