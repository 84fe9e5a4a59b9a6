namespace ColonyLineage.Entries;

/// <summary>The colony's queen is caged, so that she cannot lay.</summary>
[Kind("queen-caged", 1)]
public sealed record QueenCaged : ColonyEntry
{
    /// <summary>The queen, where she is known as an individual.</summary>
    public QueenId? Queen { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, Queen);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Fits(Queen);
}
