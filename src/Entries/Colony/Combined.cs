namespace ColonyLineage.Entries;

/// <summary>Two colonies are made one. This one ends; the other goes on, and one queen with it.</summary>
[Kind("combined", 1)]
public sealed record Combined : ColonyEntry
{
    /// <summary>The colony that goes on.</summary>
    public required ColonyId Into { get; init; }

    /// <summary>The queen that goes on, where she is known as an individual; else the queen of the colony that goes on.</summary>
    public QueenId? QueenKept { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, QueenKept, colony: Into);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Into);
        faults.Differ(Colony, (ColonyId?)Into, "A colony cannot be combined with itself.", nameof(Into));
        faults.Fits(QueenKept);
    }
}
