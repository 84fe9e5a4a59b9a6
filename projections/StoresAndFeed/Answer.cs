using ColonyLineage.Entries;

namespace ColonyLineage.Projections.StoresAndFeed;

/// <summary>What one living colony has on, by what was last weighed, lifted and fed. Weights in kilograms, volumes in litres, two decimals.</summary>
public sealed record StoresRow : IRow
{
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    public Housing? Housing { get; init; }

    /// <summary>At the last count of bees they were few, or it stands in a nuc box: it is not given a large feeder.</summary>
    public required bool Small { get; init; }

    /// <summary>Stores as they were last lifted, and when.</summary>
    public Heft? Heft { get; init; }

    public DateOnly? HeftOn { get; init; }

    /// <summary>When it was last weighed; null where it never was.</summary>
    public DateOnly? WeighedOn { get; init; }

    public decimal? GrossKg { get; init; }

    /// <summary>Weight without stores: as it was given with the weighing, else the outfit's figure for the housing.</summary>
    public decimal? TareKg { get; init; }

    /// <summary>Gross less tare on that day.</summary>
    public decimal? WeighedStoresKg { get; init; }

    /// <summary>Gross less the gross of the weighing before, and since when: what was gained or used.</summary>
    public decimal? GainedKg { get; init; }

    public DateOnly? GainedSince { get; init; }

    /// <summary>Sugar fed since it was weighed; where it never was, since the season of the last feed began.</summary>
    public required decimal FedSugarKg { get; init; }

    /// <summary>Feeds since then whose sugar cannot be reckoned: no amount, or no parts.</summary>
    public required int FedUnknown { get; init; }

    public DateOnly? LastFed { get; init; }

    /// <summary>What is on by weight and feed; null where it was never weighed.</summary>
    public decimal? StoresKg { get; init; }

    /// <summary>What the outfit wants on for the winter in this housing; null where no target is set.</summary>
    public decimal? TargetKg { get; init; }

    /// <summary>The target's region and source.</summary>
    public string? TargetBy { get; init; }

    /// <summary>What is missing to the target; null where that is not known.</summary>
    public decimal? LackingKg { get; init; }

    /// <summary>Since when a feeder is on; null while none is.</summary>
    public DateOnly? FeederOn { get; init; }

    public string? Feeder { get; init; }

    public decimal? FeederHoldsL { get; init; }

    public FeederPlace? FeederPlace { get; init; }

    /// <summary>What should not be so, in words: a large feeder on a small colony, a syrup that does not stay dissolved.</summary>
    public required IReadOnlyList<string> Remarks { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>What the next round of feeding takes, for one yard; without a yard for all of them.</summary>
public sealed record RoundFeedRow : IRow
{
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public required int Colonies { get; init; }

    /// <summary>Colonies that lack something to their target, by weight and feed.</summary>
    public required int Lacking { get; init; }

    public required decimal LackingKg { get; init; }

    /// <summary>Colonies of which nobody can say it: not weighed, or no target.</summary>
    public required int NotKnown { get; init; }

    /// <summary>Of those, light when they were last lifted.</summary>
    public required int Light { get; init; }

    /// <summary>Sugar that would make up for what is lacking.</summary>
    public required decimal SugarKg { get; init; }

    /// <summary>Water for it, and the syrup that comes of it: two parts of sugar to one of water by weight, at 20 °C.</summary>
    public required decimal WaterL { get; init; }

    public required decimal SyrupL { get; init; }

    /// <summary>Feeders to put on: lacking or light, and none on. Small ones for small colonies.</summary>
    public required int LargeFeeders { get; init; }

    public required int SmallFeeders { get; init; }

    /// <summary>Feeders that are on.</summary>
    public required int FeedersOn { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
