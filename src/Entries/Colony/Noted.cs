namespace ColonyLineage.Entries;

/// <summary>Something worth keeping that has no kind of its own.</summary>
[Kind("noted", 1)]
public sealed record Noted : ColonyEntry
{
    /// <summary>What, 1 to 4,000 characters.</summary>
    public required string Text { get; init; }

    /// <summary>What it is about, in the outfit's words, at most 60 characters.</summary>
    public string? About { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Text, 4000);
        faults.Fits(About, 60);
    }
}
