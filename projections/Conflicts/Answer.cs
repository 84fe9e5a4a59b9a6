using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Conflicts;

/// <summary>A contradiction between entries, on one of the colonies that it concerns.</summary>
public sealed record ConflictRow : IRow
{
    /// <summary>The fixed name: see question.md.</summary>
    public required string Conflict { get; init; }

    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    /// <summary>The day of the entry that contradicts.</summary>
    public required DateOnly On { get; init; }

    /// <summary>What contradicts what, in words.</summary>
    public required string What { get; init; }

    /// <summary>The acts that would settle it.</summary>
    public required IReadOnlyList<string> SettledBy { get; init; }

    /// <summary>Somebody lets it stand.</summary>
    public required bool Settled { get; init; }

    /// <summary>Why it may stand.</summary>
    public string? SettledWhy { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
