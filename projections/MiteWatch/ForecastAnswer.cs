using ColonyLineage.Entries;

namespace ColonyLineage.Projections.MiteWatch;

/// <summary>When a yard's mites come to the outfit's threshold, if they grow as is assumed. It says when to wash again, and nothing of what to give.</summary>
public sealed record ForecastRow : IRow
{
    public required YardId YardId { get; init; }

    public required string Yard { get; init; }

    /// <summary>The last day of the round that it starts from.</summary>
    public required DateOnly From { get; init; }

    public required decimal Per100Bees { get; init; }

    public required decimal UpperPer100 { get; init; }

    /// <summary>Mites per 100 bees: the outfit's setting.</summary>
    public required decimal Threshold { get; init; }

    /// <summary>The growth assumed: a share a day.</summary>
    public required decimal GrowthADay { get; init; }

    /// <summary>Whole days until the mean that was washed would have grown to the threshold; 0 where it has, null where no mite was washed: nothing grows from nothing, and yet there are mites.</summary>
    public int? DaysByMean { get; init; }

    /// <summary>The day of it.</summary>
    public DateOnly? OnByMean { get; init; }

    /// <summary>The same from the upper limit: the soonest that has to be reckoned with, with an error of at most 5 %.</summary>
    public int? DaysByUpper { get; init; }

    /// <summary>The day of it.</summary>
    public DateOnly? OnByUpper { get; init; }

    /// <summary>What is assumed, in words.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
