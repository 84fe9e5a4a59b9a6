namespace ColonyLineage.Entries;

/// <summary>A counted sample of bees was washed for mites. Both counts are kept. No mites in a wash is not 'free of mites'.</summary>
[Kind("washed", 1)]
public sealed record Washed : ColonyEntry
{
    /// <summary>Mites counted, 0 to 10,000.</summary>
    public required int Mites { get; init; }

    /// <summary>Bees in the sample, 1 to 5,000.</summary>
    public required int Bees { get; init; }

    /// <summary>The bees were measured by volume, not counted.</summary>
    public bool BeesEstimated { get; init; }

    /// <summary>How it was done.</summary>
    public WashMethod? Method { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Within(Mites, 0, 10_000);
        faults.Within(Bees, 1, 5_000);
        faults.Known(Method);
    }
}
