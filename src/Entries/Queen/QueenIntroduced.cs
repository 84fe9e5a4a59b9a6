namespace ColonyLineage.Entries;

/// <summary>A queen is set into a colony that has none. (Where one is replaced: <see cref="Requeened"/>.)</summary>
[Kind("queen-introduced", 1)]
public sealed record QueenIntroduced : QueenEntry
{
    /// <summary>The colony that gets her.</summary>
    public required ColonyId Colony { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => [Colony];

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Needs(Colony);
}
