using ColonyLineage.Entries;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>What was seen and measured of one queen's colony in one season: what lines are compared by.</summary>
public sealed record TraitRow : IRow
{
    /// <summary>Where the colony stood when it was last looked at in that season.</summary>
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    /// <summary>Named by the calendar year in which it starts.</summary>
    public required int Season { get; init; }

    /// <summary>The first and the last day of the season on which something of it was recorded under this queen.</summary>
    public required DateOnly SeenFrom { get; init; }

    public required DateOnly SeenTo { get; init; }

    /// <summary>Null for a queen that nobody has named.</summary>
    public QueenId? QueenId { get; init; }

    public string? Queen { get; init; }

    public QueenId? MotherId { get; init; }

    public string? Mother { get; init; }

    /// <summary>Known, or supposed: a supersedure.</summary>
    public Certainty? MotherIs { get; init; }

    public string? Line { get; init; }

    /// <summary>Seasons since her birth; null where it is not known to the season.</summary>
    public int? QueenAge { get; init; }

    /// <summary>The colony that it was made of, where it was one alone.</summary>
    public string? Maker { get; init; }

    /// <summary>The colony began in this season.</summary>
    public required bool New { get; init; }

    /// <summary>It was taken out of comparisons, or judged a dud.</summary>
    public required bool TakenOut { get; init; }

    /// <summary>The treatment group it was noted in, or the courses it was given in the season; null where neither is recorded.</summary>
    public string? Treatments { get; init; }

    /// <summary>Mean frames of bees over the looks.</summary>
    public decimal? FramesOfBees { get; init; }

    /// <summary>Mean temper, 1 (hot) to 5 (gentle).</summary>
    public decimal? Temper { get; init; }

    /// <summary>Mean brood pattern, 1 (spotty) to 5 (solid), of looks that were not too soon after a course that stops the queen's laying.</summary>
    public decimal? BroodPattern { get; init; }

    /// <summary>Looks at the pattern that were too soon to judge it by, and are left out.</summary>
    public int PatternsTooSoon { get; init; }

    /// <summary>Honey taken off, in kilograms, where it was weighed.</summary>
    public decimal? HoneyKg { get; init; }

    /// <summary>The first wash of the season.</summary>
    public DateOnly? FirstWash { get; init; }

    public decimal? FirstPer100Bees { get; init; }

    /// <summary>The last wash of the season, where there was another before it.</summary>
    public DateOnly? LastWash { get; init; }

    public decimal? LastPer100Bees { get; init; }

    /// <summary>A treatment was given between these two.</summary>
    public bool DosedBetween { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
