using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Lineage;

/// <summary>What kind of link it is.</summary>
public enum LinkKind
{
    /// <summary>From mother to daughter.</summary>
    Mother,

    /// <summary>From a drone-producing queen to the queen that mated with her drones.</summary>
    Drones,

    /// <summary>From a maker to the colony made of it.</summary>
    Split,

    /// <summary>From a colony that ended into the one that went on.</summary>
    Combined,

    /// <summary>From a colony to the one that got frames of its brood.</summary>
    Brood,

    /// <summary>From a colony to the one that got its bees.</summary>
    Bees,
}

/// <summary>One link between two queens or two colonies.</summary>
public sealed record LinkRow : IRow
{
    public required LinkKind Link { get; init; }

    public required Guid FromId { get; init; }

    public required string From { get; init; }

    public required Guid ToId { get; init; }

    public required string To { get; init; }

    /// <summary>When: her birth for a mother (null where unknown), the day of the act otherwise; the first day possible.</summary>
    public DateOnly? OnFrom { get; init; }

    /// <summary>When: the last day possible.</summary>
    public DateOnly? OnTo { get; init; }

    /// <summary>For a mother: known or supposed.</summary>
    public Certainty? Sure { get; init; }

    /// <summary>The effective number of drones of the mating, where somebody has an opinion: for drones the queen's that met them, for a mother hers.</summary>
    public decimal? EffectiveDrones { get; init; }

    /// <summary>Frames that went, where somebody counted.</summary>
    public decimal? Frames { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
