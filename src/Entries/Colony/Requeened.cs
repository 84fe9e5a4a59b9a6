namespace ColonyLineage.Entries;

/// <summary>A colony is given another queen, caged or loose. What became of the old one is part of the fact.</summary>
[Kind("requeened", 1)]
public sealed record Requeened : ColonyEntry
{
    /// <summary>The new queen.</summary>
    public required QueenId Queen { get; init; }

    /// <summary>What became of the queen before her.</summary>
    public required OldQueen OldQueen { get; init; }

    /// <summary>The queen before her, where she is known as an individual.</summary>
    public QueenId? Old { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, Queen, Old);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Queen);
        faults.Known<OldQueen>(OldQueen);
        faults.Fits(Old);
        faults.Differ(Queen, Old, "A queen cannot follow herself.");
    }
}
