namespace ColonyLineage.Entries;

/// <summary>A dead-out: a colony is found dead. It died between the day it was last seen alive and the day it was found.</summary>
[Kind("found-dead", 1)]
public sealed record FoundDead : ColonyEntry
{
    /// <summary>The supposed cause in the person's words, at most 200 characters: a supposition, never a diagnosis.</summary>
    public string? Cause { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Fits(Cause, 200);
}
