namespace ColonyLineage.Entries;

/// <summary>
/// A colony is taken out of a comparison or judged a dud: it no longer counts with the others, and what was recorded of it
/// before does not either. It is not the end of the colony.
/// </summary>
[Kind("taken-out", 1)]
public sealed record TakenOut : ColonyEntry
{
    /// <summary>Why, 1 to 200 characters, in the outfit's words.</summary>
    public required string Why { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Needs(Why, 200);
}
