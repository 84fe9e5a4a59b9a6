using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.QueensByAge;

/// <summary>The queen of one living colony.</summary>
public sealed record QueenRow : IRow
{
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    /// <summary>Null where there is no queen, or nobody has named her.</summary>
    public QueenId? QueenId { get; init; }

    public string? Queen { get; init; }

    /// <summary>Whether a queen is known to be there: <c>queen</c>, <c>unnamed queen</c> or <c>none known</c>.</summary>
    public required string Presence { get; init; }

    /// <summary>First day on which she can have emerged.</summary>
    public DateOnly? BornFrom { get; init; }

    /// <summary>Last day on which she can have emerged.</summary>
    public DateOnly? BornTo { get; init; }

    public int? SeasonFrom { get; init; }

    public int? SeasonTo { get; init; }

    /// <summary><c>certain</c> where one season is possible, <c>possible</c> where two or more are, <c>unknown</c> where nothing tells.</summary>
    public required string Sure { get; init; }

    /// <summary>The colour due, or two with 'or' between them.</summary>
    public string? MarkDue { get; init; }

    /// <summary>The colour last seen on her or put on her; 'unmarked' where she was seen without.</summary>
    public string? MarkSeen { get; init; }

    public QueenId? MotherId { get; init; }

    public string? Mother { get; init; }

    /// <summary><c>known</c> or <c>supposed</c>; null where the mother is unknown.</summary>
    public Certainty? MotherIs { get; init; }

    public string? Line { get; init; }

    /// <summary>How she came to this colony.</summary>
    public HowCame? Came { get; init; }

    /// <summary>Since when she reigns here: the first day possible.</summary>
    public DateOnly? SinceFrom { get; init; }

    /// <summary>Since when she reigns here: the last day possible.</summary>
    public DateOnly? SinceTo { get; init; }

    /// <summary>The day the queen herself was last seen.</summary>
    public DateOnly? LastSeen { get; init; }

    /// <summary>What the last look found of the queen.</summary>
    public QueenFinding? Finding { get; init; }

    /// <summary>The day of the last look into the colony.</summary>
    public DateOnly? LastLook { get; init; }

    /// <summary>The last day on which brood, eggs or a laying queen was seen.</summary>
    public DateOnly? BroodSeen { get; init; }

    public decimal? FramesOfBees { get; init; }

    public decimal? FramesOfBrood { get; init; }

    /// <summary>Frames of bees at the last count are at or below the outfit's mark for 'few'; null where nobody counted.</summary>
    public bool? BeesFew { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>How much of a yard was requeened in a season.</summary>
/// <param name="Certain">Colonies whose queen is certainly of the season.</param>
/// <param name="Possible">Further colonies whose queen may be of it.</param>
/// <param name="Colonies">All living colonies of the yard, queenless ones included.</param>
public sealed record YardShare(YardId? YardId, string? Yard, int Certain, int Possible, int Colonies)
{
    /// <summary>The lower bound of the share, 0 to 1.</summary>
    public decimal From => Colonies == 0 ? 0 : (decimal)Certain / Colonies;

    /// <summary>The upper bound of the share, 0 to 1.</summary>
    public decimal To => Colonies == 0 ? 0 : (decimal)(Certain + Possible) / Colonies;
}
