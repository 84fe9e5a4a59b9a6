using ColonyLineage.Entries;

namespace ColonyLineage.Projections.WinterReadiness;

/// <summary>One of the owner's criteria at one living colony.</summary>
public sealed record ReadinessRow : IRow
{
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    /// <summary>The criterion, by its fixed name: queen, brood, bees, stores, mites, course, owed.</summary>
    public required string Criterion { get; init; }

    /// <summary>The course, of the criterion <c>course</c>.</summary>
    public string? Of { get; init; }

    /// <summary>Met, not met, or not known: nobody has looked, or it was too soon to judge.</summary>
    public required Met Met { get; init; }

    /// <summary>What was found, in words.</summary>
    public required string Found { get; init; }

    /// <summary>What would remedy it, in words; null where it is met. Never a dose and never a diagnosis.</summary>
    public string? Remedy { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>How a criterion stands.</summary>
public enum Met
{
    /// <summary>It is met.</summary>
    Met,

    /// <summary>It is not met.</summary>
    NotMet,

    /// <summary>Nobody has looked, or it was too soon to judge.</summary>
    NotKnown,
}

/// <summary>What the remedies of the whole outfit take, beside what is at hand by its own counts.</summary>
public sealed record RemedyRow : IRow
{
    /// <summary>Queens, nucs, sugar.</summary>
    public required StockOf Thing { get; init; }

    /// <summary>How much all remedies take: pieces, kilograms of sugar.</summary>
    public required decimal Wanted { get; init; }

    public required string Unit { get; init; }

    /// <summary>At how many colonies.</summary>
    public required int Colonies { get; init; }

    /// <summary>Null where nobody counted.</summary>
    public decimal? AtHand { get; init; }

    public decimal? Short { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>Which criteria of an autumn told the truth: how many of those that met it came through the winter, and of those that did not.</summary>
public sealed record TruthRow : IRow
{
    public required string Criterion { get; init; }

    public string? Of { get; init; }

    public required Met Met { get; init; }

    /// <summary>Colonies that were judged so and were at risk: those sold or combined away in the winter are left out.</summary>
    public required int Colonies { get; init; }

    /// <summary>Of those, lost over the winter.</summary>
    public required int Lost { get; init; }

    /// <summary>The share lost with its interval (Wilson, 95 %), 0 to 1; it takes colonies for independent, which those of one yard are not.</summary>
    public required decimal Rate { get; init; }

    public required decimal Lower { get; init; }

    public required decimal Upper { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
