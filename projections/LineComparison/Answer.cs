using ColonyLineage.Entries;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>A line by a trait, adjusted for where and when its colonies stood, and how sure that is.</summary>
public sealed record LineRow : IRow
{
    public required Trait Trait { get; init; }

    /// <summary>The line, or the mother or the maker where these are compared.</summary>
    public required string Line { get; init; }

    /// <summary>The queen, where queens are compared.</summary>
    public QueenId? QueenId { get; init; }

    /// <summary>Mothers of its colonies' queens: its replicates.</summary>
    public required int Mothers { get; init; }

    public required int Colonies { get; init; }

    /// <summary>Colonies in seasons.</summary>
    public required int Records { get; init; }

    public required int Yards { get; init; }

    /// <summary>Mean as recorded, nothing adjusted.</summary>
    public required decimal RawMean { get; init; }

    /// <summary>How far it lies from the mean of all lines that can be compared, adjusted for yard and season, the queen's age and (last washes) treatment; mites and shares in logarithms, of shares that of the odds; null where it cannot be told from those.</summary>
    public decimal? Difference { get; init; }

    /// <summary>Its standard error (Kenward and Roger) with degrees of freedom, and the 95 % interval.</summary>
    public decimal? StandardError { get; init; }

    public decimal? Freedom { get; init; }

    public decimal? Lower { get; init; }

    public decimal? Upper { get; init; }

    /// <summary>The prediction (BLUP), drawn towards the mean by as much as little is known, its standard error √PEV, and its reliability.</summary>
    public decimal? Blup { get; init; }

    public decimal? BlupError { get; init; }

    public decimal? Reliability { get; init; }

    /// <summary>For shares: the line's share by the beta-binomial of all lines, with its 95 % interval.</summary>
    public decimal? Share { get; init; }

    public decimal? ShareLower { get; init; }

    public decimal? ShareUpper { get; init; }

    /// <summary>What stands in the way of taking it at its word.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>Two lines by a trait: whether the one can be said to have more of it.</summary>
public sealed record LinePairRow : IRow
{
    public required Trait Trait { get; init; }

    public required string Line { get; init; }

    public required string Other { get; init; }

    /// <summary>Adjusted difference, the line's less the other's; null where they cannot be compared at all.</summary>
    public decimal? Difference { get; init; }

    public decimal? StandardError { get; init; }

    public decimal? Freedom { get; init; }

    /// <summary>How often chance alone makes the widest of as many lines differ so much (Tukey's range).</summary>
    public decimal? P { get; init; }

    /// <summary><c>differ</c>, or <c>cannotSay</c>.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Why nothing can be said, in words; null where they differ.</summary>
    public string? Why { get; init; }

    /// <summary>Mothers in each line that it would take to see this difference in four of five cases; null where 500 would not do.</summary>
    public int? MothersNeeded { get; init; }

    /// <summary>Colonies in each line, with as many to a mother as now.</summary>
    public int? ColoniesNeeded { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>What can be claimed.</summary>
public enum Verdict
{
    /// <summary>Not enough to say.</summary>
    CannotSay,

    /// <summary>They differ by more than chance makes the widest of as many lines differ.</summary>
    Differ,
}

/// <summary>A component of the variance of a trait.</summary>
public sealed record Part(string Name, double Variance, double? StandardError);

/// <summary>Lines compared by a trait.</summary>
/// <param name="Lines">With the wanted end first.</param>
/// <param name="Pairs">All pairs, those that differ first.</param>
/// <param name="Parts">Variances between lines, mothers within lines and colonies (the error); none where nothing could be fitted.</param>
/// <param name="First">What has to be said before any figure: what is confounded, what was left out.</param>
public sealed record Comparison(Trait Trait, ComparedBy By, IReadOnlyList<LineRow> Lines, IReadOnlyList<LinePairRow> Pairs, IReadOnlyList<Part> Parts, IReadOnlyList<string> First)
{
    /// <summary>Tukey's yardstick in standard errors of a difference, where degrees of freedom are those of the mothers; null where nothing can be claimed.</summary>
    public double? Yardstick { get; init; }
}
