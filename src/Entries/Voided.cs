namespace ColonyLineage.Entries;

/// <summary>
/// Says that an entry was wrong. The entry stays in the history, struck through; no answer counts it any more.
/// The right one is recorded beside it. A void is final: naming a void in a void has no effect and is refused.
/// </summary>
[Kind("voided", 1)]
public sealed record Voided : Entry
{
    /// <summary>The entry that was wrong.</summary>
    public required EntryId Entry { get; init; }

    /// <summary>Why, 1 to 1,000 characters.</summary>
    public required string Why { get; init; }

    /// <summary>The stream of the entry that was wrong, so that the void stands beside it.</summary>
    public required Subject Of { get; init; }

    /// <summary>The other subjects that the wrong entry concerned.</summary>
    public IReadOnlyList<Subject> AlsoOf { get; init; } = [];

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Of;

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => AlsoOf;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Needs(Entry);
        faults.Needs(Why, 1000);
        faults.Differ(Id, Entry, "A void cannot name itself.");
    }
}
