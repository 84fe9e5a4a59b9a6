using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.Losses;

/// <summary>The life of one colony, living or ended.</summary>
public sealed record LifeRow : IRow
{
    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    /// <summary>Where it stood last, also after its end.</summary>
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    /// <summary>The first day on which it can have begun; null where nobody knows its age: it was there when the books were opened.</summary>
    public DateOnly? Began { get; init; }

    /// <summary>How it came to be in the outfit; null where nobody recorded that.</summary>
    public HowEstablished? Came { get; init; }

    /// <summary>It was last housed as a mating nuc: it exists to get a queen mated, and is in no rate of losses and no curve.</summary>
    public bool MatingNuc { get; init; }

    /// <summary>From this day on its end would have been recorded. Others like it that ended before are in no books.</summary>
    public required DateOnly KnownFrom { get; init; }

    /// <summary>First day on which it can have ended; null while it lives.</summary>
    public DateOnly? EndedFrom { get; init; }

    /// <summary>Last day on which it can have ended; null while it lives.</summary>
    public DateOnly? Ended { get; init; }

    /// <summary>How it ended; null while it lives.</summary>
    public EndKind? End { get; init; }

    /// <summary>Found dead or given up. Combined away is no loss but another end; what was sold is gone without being lost.</summary>
    public required bool Lost { get; init; }

    /// <summary>Of a lost colony, in words: what was recorded, a supposition and no diagnosis.</summary>
    public string? Why { get; init; }

    /// <summary>Its present queen, or its last; null where there was none or nobody has named her.</summary>
    public QueenId? QueenId { get; init; }

    public string? Queen { get; init; }

    /// <summary>The seasons in which she can have been born; null where nothing tells.</summary>
    public int? QueenSeasonFrom { get; init; }

    public int? QueenSeasonTo { get; init; }

    /// <summary>The line she is of.</summary>
    public string? Line { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }

    /// <summary>The day that is taken for its end: the middle of the days possible; null while it lives.</summary>
    public DateOnly? EndTaken() => Ended is { } to && EndedFrom is { } from ? from.AddDays((to.DayNumber - from.DayNumber) / 2) : null;
}
