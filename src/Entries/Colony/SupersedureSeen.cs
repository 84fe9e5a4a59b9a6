namespace ColonyLineage.Entries;

/// <summary>
/// The bees have replaced their queen themselves, seen only afterwards. <see cref="Entry.On"/> is the day it was seen, with
/// 'after' the day the old queen was last seen, where it is known; else the colony's own history tells.
/// The new queen is supposed to be the old one's daughter.
/// </summary>
[Kind("supersedure-seen", 1)]
public sealed record SupersedureSeen : ColonyEntry
{
    /// <summary>The new queen.</summary>
    public required QueenId Queen { get; init; }

    /// <summary>The queen that was replaced, where she is known as an individual.</summary>
    public QueenId? Old { get; init; }

    /// <summary>Mother and daughter are both still there.</summary>
    public bool OldStillThere { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, Queen, Old);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Queen);
        faults.Fits(Old);
        faults.Differ(Queen, Old, "A queen cannot replace herself.");
    }
}
