using ColonyLineage.Entries;

namespace ColonyLineage.Projections.MiteWatch;

/// <summary>What the washes of one round say of a yard: the trade's rule of thumb beside the statistics.</summary>
public sealed record RoundRow : IRow
{
    public required YardId YardId { get; init; }

    public required string Yard { get; init; }

    /// <summary>The first and the last day of the round.</summary>
    public required DateOnly From { get; init; }

    public required DateOnly To { get; init; }

    public required int Washes { get; init; }

    public required int Mites { get; init; }

    public required int Bees { get; init; }

    /// <summary>The sum of mites per 100 of the sum of bees.</summary>
    public required decimal Per100Bees { get; init; }

    /// <summary>The yard's mean is above this with an error of at most 5 % only, per 100 bees: one-sided, by the spread assumed.</summary>
    public required decimal UpperPer100 { get; init; }

    /// <summary>The most mites in one wash, and whose.</summary>
    public required int MostMites { get; init; }

    public required string MostIn { get; init; }

    /// <summary>The entry of that wash, its day, and how many bees were in it.</summary>
    public required Guid MostId { get; init; }

    public required DateOnly MostOn { get; init; }

    public required int MostOf { get; init; }

    /// <summary>By the rule of thumb, in mites of one wash.</summary>
    public required Thumb RuleOfThumb { get; init; }

    /// <summary>Mites per 100 bees that the statistics ask about: the outfit's setting.</summary>
    public required decimal Threshold { get; init; }

    /// <summary>k of the negative binomial: the outfit's setting.</summary>
    public required decimal Spread { get; init; }

    /// <summary>Whether the yard's mean is below the threshold.</summary>
    public required Claim IsBelow { get; init; }

    /// <summary>The chance of so few mites, or fewer, if the yard's mean were at the threshold: the error of saying 'below'.</summary>
    public required decimal ErrorOfBelow { get; init; }

    /// <summary>The most mites that so many washes may hold for 'below' to be said; null where no number of mites is few enough.</summary>
    public int? MostAllowed { get; init; }

    /// <summary>
    /// Where it cannot be said: how many more colonies to wash, if they are like those that were. Null where no number up to 100 would do.
    /// </summary>
    public int? MoreWashes { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>The rule of thumb after a treatment (common practice, no source): a wash of 1 mite or less is wanted, 2 to 3 is the limit, and one colony over it means the whole yard is due.</summary>
public enum Thumb
{
    /// <summary>No wash had more than 1 mite.</summary>
    Wanted,

    /// <summary>The most was 2 or 3.</summary>
    AtLimit,

    /// <summary>One colony was over the limit: the whole yard is due.</summary>
    YardDue,
}

/// <summary>What the statistics allow to be said.</summary>
public enum Claim
{
    /// <summary>Below the threshold, with an error of at most 5 %. Never 'free of mites'.</summary>
    Below,

    /// <summary>Neither can be said.</summary>
    CannotSay,

    /// <summary>Above the threshold, with an error of at most 5 %.</summary>
    Above,
}
