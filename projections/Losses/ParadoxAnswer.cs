using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Losses;

/// <summary>One group of colonies against the others in a winter: all yards thrown together, and yard by yard.</summary>
public sealed record ParadoxRow : IRow
{
    /// <summary>The calendar year in which the winter starts.</summary>
    public required int Winter { get; init; }

    public required LossBy By { get; init; }

    public required string Group { get; init; }

    public required int Lost { get; init; }

    public required int AtRisk { get; init; }

    /// <summary>All others of which the same is known.</summary>
    public required int OthersLost { get; init; }

    public required int OthersAtRisk { get; init; }

    /// <summary>Above 1 where the group lost more, all yards thrown together; rounded to four decimals, as are all that follow.</summary>
    public required decimal PooledOddsRatio { get; init; }

    /// <summary>Above 1 where the group lost more than the others in the same yard (Mantel and Haenszel).</summary>
    public required decimal WithinYardsOddsRatio { get; init; }

    /// <summary>The 95 % interval of the ratio within yards.</summary>
    public required decimal WithinYardsLower { get; init; }

    public required decimal WithinYardsUpper { get; init; }

    /// <summary>The two point in opposite directions (Simpson's paradox): the yards differ, and the groups are not spread evenly over them. The ratio within yards is the fairer.</summary>
    public required bool Disagree { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
