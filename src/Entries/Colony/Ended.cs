namespace ColonyLineage.Entries;

/// <summary>
/// A colony is given up while bees are still in it: its queen is killed and its frames are shared out, or the bees are
/// shaken out. It ends here.
/// </summary>
[Kind("ended", 1)]
public sealed record Ended : ColonyEntry
{
    /// <summary>Why, 1 to 200 characters, in the outfit's words.</summary>
    public required string Why { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Needs(Why, 200);
}
