using ColonyLineage.Entries;

namespace ColonyLineage.Projections.OwedWork;

/// <summary>A thing that has to be on a truck: for one yard; without a yard for all yards of the truck; without a truck either for all of the list.</summary>
public sealed record LoadRow : IRow
{
    public string? Truck { get; init; }

    /// <summary>The day that the yard is planned for.</summary>
    public DateOnly? On { get; init; }

    /// <summary>The yard's place in the round, from 1.</summary>
    public int? Stop { get; init; }

    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    /// <summary>Why this yard before the next, in the owner's words.</summary>
    public string? Why { get; init; }

    public required StockOf Thing { get; init; }

    /// <summary>Which of them: the course of doses, the size of feeders.</summary>
    public string? Which { get; init; }

    public required decimal Amount { get; init; }

    public required string Unit { get; init; }

    /// <summary>What it is for, in words.</summary>
    public required string For { get; init; }

    /// <summary>What the outfit has of it by its own counts, on rows for all of the list; null where nobody counted.</summary>
    public decimal? AtHand { get; init; }

    /// <summary>What is missing; null where that is not known.</summary>
    public decimal? Short { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
