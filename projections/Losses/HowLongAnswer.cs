using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Losses;

/// <summary>From when the days of a colony are counted.</summary>
public enum CountedFrom
{
    /// <summary>From its beginning. Colonies of unknown age are left out; those that came under observation later count from then on only.</summary>
    Beginning,

    /// <summary>From the day on which it came into the books: all colonies, young and old mixed. It says how long they last here, not how old they grow.</summary>
    Books,
}

/// <summary>What lives on from a day of their lives to the next step.</summary>
public sealed record CurveRow : IRow
{
    /// <summary>Days.</summary>
    public required decimal Days { get; init; }

    public required int AtRisk { get; init; }

    public required int Lost { get; init; }

    /// <summary>The share not lost, 0 to 1, rounded to four decimals, if nothing but loss ended colonies.</summary>
    public required decimal Share { get; init; }

    /// <summary>Its 95 % interval (Greenwood's variance, log-log); null once none is left.</summary>
    public decimal? Lower { get; init; }

    public decimal? Upper { get; init; }

    /// <summary>Of the colonies lost at this step.</summary>
    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>What had ended in one way by a day of their lives.</summary>
public sealed record EndedRow : IRow
{
    public required decimal Days { get; init; }

    /// <summary>dead, givenUp or combined.</summary>
    public required string How { get; init; }

    /// <summary>The share that has ended so, 0 to 1, rounded to four decimals.</summary>
    public required decimal Share { get; init; }

    /// <summary>Of the colonies that ended so at this step.</summary>
    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>A stretch of days of their reigns in which queens were superseded, nobody knows when within it.</summary>
public sealed record StretchRow : IRow
{
    public required int AfterDays { get; init; }

    /// <summary>Null where it has no end: queens that outlasted all that was seen.</summary>
    public int? UpToDays { get; init; }

    /// <summary>The share of queens superseded in it, 0 to 1, rounded to four decimals, if nothing but supersedure ended reigns.</summary>
    public required decimal Superseded { get; init; }

    /// <summary>The share not superseded after it; null where it has no end.</summary>
    public decimal? LivesOn { get; init; }

    /// <summary>Of the supersedures that may lie in it.</summary>
    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>How long colonies last.</summary>
/// <param name="Curve">Kaplan and Meier, of losses.</param>
/// <param name="MedianDays">The first day at which no more than half are left; null where more than half are.</param>
/// <param name="Ends">Aalen and Johansen, of the ends that exclude each other.</param>
/// <param name="Colonies">How many colonies it rests on.</param>
/// <param name="LeftOut">Colonies of unknown age.</param>
public sealed record Lasting(IReadOnlyList<CurveRow> Curve, decimal? MedianDays, IReadOnlyList<EndedRow> Ends, int Colonies, int LeftOut);

/// <summary>How long queens reign until they are superseded.</summary>
/// <param name="Stretches">Turnbull's estimate; empty where none was superseded.</param>
/// <param name="Reigns">How many reigns it rests on.</param>
/// <param name="Superseded">Of these, how many ended by supersedure.</param>
/// <param name="LeftOut">Reigns of queens that were not young when they came, or of whom that is not known, and of those never seen later than the day they came.</param>
public sealed record QueensLasting(IReadOnlyList<StretchRow> Stretches, int Reigns, int Superseded, int LeftOut);
