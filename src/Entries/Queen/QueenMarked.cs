namespace ColonyLineage.Entries;

/// <summary>A queen is given a mark.</summary>
[Kind("queen-marked", 1)]
public sealed record QueenMarked : QueenEntry
{
    /// <summary>The mark she was given.</summary>
    public required QueenMark Mark { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        if (Mark is null) faults.Add(Refusals.Missing, nameof(Mark), "Say which mark.");
        faults.Fits(Mark);
    }
}
