using ColonyLineage.Entries;

namespace ColonyLineage.Projections.SpotStory;

/// <summary>One time of a colony on a spot.</summary>
public sealed record BandRow : IRow
{
    public required YardId YardId { get; init; }

    public required string Yard { get; init; }

    public required string Spot { get; init; }

    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    /// <summary>Over another colony, on a screen board.</summary>
    public required bool Above { get; init; }

    /// <summary>First day on which it can have come.</summary>
    public required DateOnly From { get; init; }

    /// <summary>First day on which it can have gone; null while it stands there.</summary>
    public DateOnly? GoneFrom { get; init; }

    /// <summary>Last day on which it can have gone; null while it stands there.</summary>
    public DateOnly? GoneTo { get; init; }

    /// <summary>How it came, in words: 'made from 40', 'moved from Kiln 3', 'bought'.</summary>
    public required string Came { get; init; }

    /// <summary>Where the bees came from: makers, or the spot before, in order.</summary>
    public required IReadOnlyList<string> Up { get; init; }

    /// <summary>How it went, in words; null while it stands there.</summary>
    public string? Went { get; init; }

    /// <summary>Where the bees went: the next spot, the colony it was combined into, colonies made from it while here.</summary>
    public required IReadOnlyList<string> Down { get; init; }

    /// <summary>Its queens while it stood here, in order.</summary>
    public required IReadOnlyList<string> Queens { get; init; }

    /// <summary>How many entries tell what was done and seen here.</summary>
    public required int Done { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
