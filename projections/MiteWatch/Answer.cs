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

    /// <summary>
    /// The colony's treatment group: what a note about 'treatment group' says, else the courses that it was ever given, before or after, with ' + ' between them; null
    /// where it was given none.
    /// </summary>
    public string? Treatments { get; init; }

    /// <summary>The colony was taken out of comparisons.</summary>
    public bool TakenOut { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>The washes of colonies that were treated alike, in one round of the whole outfit.</summary>
/// <param name="Treatments">What they were given; null for none, 'all' for all colonies.</param>
/// <param name="Round">Rounds of the outfit are counted from 1: one ends where ten days pass without a wash anywhere.</param>
/// <param name="From">The first day of the round.</param>
/// <param name="To">The last day of the round.</param>
/// <param name="Washes">How many washes, of as many colonies.</param>
/// <param name="MeanPer100Bees">The mean over the washes of mites per 100 bees, six decimals.</param>
/// <param name="PooledPer100Bees">The sum of mites per 100 of the sum of bees, six decimals.</param>
/// <param name="TakenOut">Washes of colonies that were taken out of comparisons; they are in no other figure.</param>
public sealed record GroupRow(string? Treatments, int Round, DateOnly From, DateOnly To, int Washes, int Mites, int Bees, decimal? MeanPer100Bees, decimal? PooledPer100Bees, int TakenOut);

/// <summary>Several washes pooled.</summary>
/// <param name="Per100Bees">Sum of mites per 100 of the sum of bees, rounded to four decimals; null without bees.</param>
public sealed record Pool(string? Yard, int Nth, int Washes, int Mites, int Bees, decimal? Per100Bees);
