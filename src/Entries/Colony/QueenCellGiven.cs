namespace ColonyLineage.Entries;

/// <summary>A colony is given a queen cell. The virgin in it gets her id now; whether she hatched is to be seen.</summary>
[Kind("queen-cell-given", 1)]
public sealed record QueenCellGiven : ColonyEntry
{
    /// <summary>The queen in the cell.</summary>
    public required QueenId Queen { get; init; }

    /// <summary>Batch of cells, in the outfit's words, at most 60 characters.</summary>
    public string? Batch { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, Queen);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Queen);
        faults.Fits(Batch, 60);
    }
}
