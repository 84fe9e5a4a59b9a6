using ColonyLineage.Entries;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>One colony in one season, measured.</summary>
/// <param name="Line">What is compared.</param>
/// <param name="Mother">What its colonies are daughters of: the replicate. Null where unknown.</param>
/// <param name="YardSeason">The yard and the season, which fare alike.</param>
/// <param name="Age">The queen's age in seasons, as a class.</param>
/// <param name="Supposed">The mother is supposed: a supersedure.</param>
/// <param name="Made">The colony was made in this season.</param>
public sealed record LineRecord(ColonyId ColonyId, string Line, string? Mother, string Yard, string YardSeason, string Age, string Treatments, double Value, bool Supposed, bool Made, IReadOnlyList<EntryId> Entries)
{
    /// <summary>The mother herself; null where unknown.</summary>
    public QueenId? MotherId { get; init; }

    /// <summary>The queen herself; null where nobody has named her.</summary>
    public QueenId? QueenId { get; init; }
}

/// <summary>What the records are lined up by.</summary>
public enum ComparedBy
{
    /// <summary>By line; a line's mothers are its replicates.</summary>
    Line,

    /// <summary>By the queen's mother. Her daughters are colonies, not replicates of a mother: nothing is claimed.</summary>
    Mother,

    /// <summary>By the queen herself: what she hands down, as far as it can be told from her record and those of all her kin (BLUP with A). A queen is one: nothing is claimed.</summary>
    Queen,

    /// <summary>By the colony that it was made of. A maker is one colony: nothing is claimed.</summary>
    Maker,
}
