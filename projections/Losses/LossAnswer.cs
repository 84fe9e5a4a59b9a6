using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Losses;

/// <summary>Which part of the year a rate is of. The three are counted each on its own: neither the sum nor the compound of winter and summer is the year's.</summary>
public enum LossPeriod
{
    /// <summary>Of the colonies that went into the winter.</summary>
    Winter,

    /// <summary>Of the colonies that came out of it, and those that began before the next.</summary>
    Summer,

    /// <summary>From one winter's start to the next: of those at its start, and those that began in it.</summary>
    Year,
}

/// <summary>What the colonies of a row have in common.</summary>
public enum LossBy
{
    /// <summary>Nothing: the whole outfit.</summary>
    All,

    /// <summary>The yard in which they stood when the period began.</summary>
    Yard,

    /// <summary>The line of the queen they then had.</summary>
    Line,

    /// <summary>Her age then, in seasons.</summary>
    QueenAge,

    /// <summary>Whether they had their full courses in the season in which the winter began.</summary>
    Treatment,
}

/// <summary>
/// Losses of a period. There are two rates. Every interval here belongs to the overall rate; none belongs to the average of the yards, which is another question:
/// what becomes of a yard, not of a colony (COLOSS BEEBOOK vol. II, van der Zee et al. 2013, 10.3.2).
/// </summary>
public sealed record LossRow : IRow
{
    public required LossPeriod Period { get; init; }

    /// <summary>The calendar year in which its winter starts; a summer is named by the winter before it.</summary>
    public required int Winter { get; init; }

    public required DateOnly From { get; init; }

    public required DateOnly To { get; init; }

    /// <summary>The period was over on the day asked for; else more may be lost yet.</summary>
    public required bool Over { get; init; }

    public required LossBy By { get; init; }

    public required string Group { get; init; }

    /// <summary>Colonies that could be lost. Those sold in the period are left out.</summary>
    public required int AtRisk { get; init; }

    public required int Lost { get; init; }

    /// <summary>Combined away in the period: at risk, and not lost.</summary>
    public required int Combined { get; init; }

    /// <summary>Sold in the period, and left out.</summary>
    public required int Sold { get; init; }

    /// <summary>Of the lost, those that may have been lost before the period or after it: they are counted by the middle of the days possible.</summary>
    public required int LostUnsure { get; init; }

    /// <summary>Yards with colonies at risk.</summary>
    public required int Yards { get; init; }

    /// <summary>Lost of all at risk, 0 to 1, rounded to four decimals, as are all that follow.</summary>
    public required decimal OverallRate { get; init; }

    /// <summary>Interval of the overall rate as if each colony fared on its own (Wilson): with one owner and several yards it is too narrow.</summary>
    public required decimal OverallWilsonLower { get; init; }

    public required decimal OverallWilsonUpper { get; init; }

    /// <summary>Interval of the overall rate widened by the spread between the yards (quasi-binomial, z); null with one yard, or where none or all were lost.</summary>
    public decimal? OverallQuasiLower { get; init; }

    public decimal? OverallQuasiUpper { get; init; }

    /// <summary>The spread between the yards; 1 where it is that of chance.</summary>
    public decimal? Dispersion { get; init; }

    /// <summary>Interval of the overall rate with the yards as what was drawn (clustered, t); null with one yard, or where none or all were lost.</summary>
    public decimal? OverallClusteredLower { get; init; }

    public decimal? OverallClusteredUpper { get; init; }

    /// <summary>The mean of the yards' rates. No interval here belongs to it.</summary>
    public required decimal AverageRate { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
