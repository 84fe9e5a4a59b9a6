using ColonyLineage.Entries;

namespace ColonyLineage.Projections.MiteWatch;

/// <summary>One wash.</summary>
public sealed record WashRow : IRow
{
    /// <summary>The yard in which the colony stood that day.</summary>
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    public required DateOnly On { get; init; }

    /// <summary>The entry of the wash.</summary>
    public required Guid WashId { get; init; }

    /// <summary>The colony's first wash is 1, the next 2.</summary>
    public required int Nth { get; init; }

    public required int Mites { get; init; }

    public required int Bees { get; init; }

    /// <summary>The bees were measured by volume, not counted.</summary>
    public required bool BeesEstimated { get; init; }

    /// <summary>Mites per 100 bees, rounded to four decimals.</summary>
    public required decimal Per100Bees { get; init; }

    /// <summary>Days since the colony's last dose of any course before the wash; null where none is recorded.</summary>
    public int? DaysSinceDose { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>Several washes pooled.</summary>
/// <param name="Per100Bees">Sum of mites per 100 of the sum of bees, rounded to four decimals; null without bees.</param>
public sealed record Pool(string? Yard, int Nth, int Washes, int Mites, int Bees, decimal? Per100Bees);
