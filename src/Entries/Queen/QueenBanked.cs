namespace ColonyLineage.Entries;

/// <summary>A queen is banked: kept caged among others until she is wanted.</summary>
[Kind("queen-banked", 1)]
public sealed record QueenBanked : QueenEntry
{
    /// <summary>The colony that keeps her, where it is in the books. She is not that colony's queen.</summary>
    public ColonyId? Colony { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, colony: Colony);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Fits(Colony);
}
