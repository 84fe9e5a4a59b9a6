using ColonyLineage.Entries;

namespace ColonyLineage.Projections.OwedWork;

/// <summary>What an entry at a living colony left open, and nothing has closed; whatever today is.</summary>
public sealed record OpenWorkRow : IRow
{
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    /// <summary>What is owed, by its fixed name: see <see cref="Works"/>.</summary>
    public required string Work { get; init; }

    /// <summary>The same in words, with what opened it.</summary>
    public required string What { get; init; }

    /// <summary>The entry that left it open, and its day.</summary>
    public required Guid OpenedBy { get; init; }

    public required DateOnly Opened { get; init; }

    /// <summary>Due from this day on.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Late after this day; null where no day is set, and each visit that passes it by makes it later.</summary>
    public DateOnly? By { get; init; }

    /// <summary>After this day it is no longer owed; null where it does not end by itself.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>Days since on which something was recorded at the colony, and this was not done.</summary>
    public required int Visits { get; init; }

    /// <summary>Somebody put it off until this day.</summary>
    public DateOnly? PutOffUntil { get; init; }

    /// <summary>Somebody closed it without doing it here. Such a row stands for work that is reckoned over a yard (<c>course</c>, <c>strips-out</c>) only.</summary>
    public required bool Closed { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>Work that is owed on a day, at a colony or at a whole yard.</summary>
public sealed record OwedRow : IRow
{
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    /// <summary>The spot; null for work of the whole yard.</summary>
    public string? Spot { get; init; }

    /// <summary>The colony; null for work of the whole yard.</summary>
    public ColonyId? ColonyId { get; init; }

    public string? Colony { get; init; }

    public required string Work { get; init; }

    public required string What { get; init; }

    /// <summary>For how many colonies or spots it is owed.</summary>
    public required int Of { get; init; }

    public required Guid OpenedBy { get; init; }

    public required DateOnly Opened { get; init; }

    public required DateOnly From { get; init; }

    public DateOnly? By { get; init; }

    public required Due State { get; init; }

    public required int Visits { get; init; }

    public DateOnly? PutOffUntil { get; init; }

    /// <summary>What has to be on the truck for it; null where nothing has.</summary>
    public StockOf? Load { get; init; }

    /// <summary>Which of them: the course of the doses.</summary>
    public string? LoadWhich { get; init; }

    /// <summary>How many: pieces, full doses; kilograms of sugar.</summary>
    public decimal? LoadAmount { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>How owed work stands to a day.</summary>
public enum Due
{
    /// <summary>Its first day is still to come.</summary>
    Coming,

    /// <summary>It can be done.</summary>
    Now,

    /// <summary>Its last day has passed, or a visit passed it by.</summary>
    Late,

    /// <summary>Somebody put it off.</summary>
    PutOff,
}
