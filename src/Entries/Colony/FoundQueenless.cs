namespace ColonyLineage.Entries;

/// <summary>A colony is found without a queen.</summary>
[Kind("found-queenless", 1)]
public sealed record FoundQueenless : ColonyEntry
{
    /// <summary>The queen that is gone, where she is known as an individual.</summary>
    public QueenId? Queen { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, Queen);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Fits(Queen);
}
