using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.Losses;

/// <summary>The time of one queen in one colony.</summary>
public sealed record ReignRow : IRow
{
    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    /// <summary>Null for a queen that nobody has named.</summary>
    public QueenId? QueenId { get; init; }

    public string? Queen { get; init; }

    public string? Line { get; init; }

    /// <summary>First day on which she can have been born; null where nothing tells.</summary>
    public DateOnly? BornFrom { get; init; }

    /// <summary>Last day on which she can have been born.</summary>
    public DateOnly? BornTo { get; init; }

    /// <summary>The season of the first of these days, and of the last.</summary>
    public int? SeasonFrom { get; init; }

    public int? SeasonTo { get; init; }

    /// <summary>How she came to this colony.</summary>
    public required HowCame Came { get; init; }

    /// <summary>First day on which she can have come.</summary>
    public required DateOnly SinceFrom { get; init; }

    /// <summary>Last day on which she can have come.</summary>
    public required DateOnly SinceTo { get; init; }

    /// <summary>The day on which she was last seen here; null where nobody saw her.</summary>
    public DateOnly? LastSeen { get; init; }

    /// <summary>How her time here ended; null while it goes on.</summary>
    public HowWent? Went { get; init; }

    /// <summary>First day on which it can have ended.</summary>
    public DateOnly? GoneFrom { get; init; }

    /// <summary>Last day on which it can have ended.</summary>
    public DateOnly? GoneTo { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
