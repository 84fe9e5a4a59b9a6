using ColonyLineage.Entries;

namespace ColonyLineage.Projections.DoseCompleteness;

/// <summary>What the bees of one colony had of a course in a season.</summary>
public sealed record DoseRow : IRow
{
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    /// <summary>The colony's end, the last day possible; null while it lives.</summary>
    public DateOnly? Ended { get; init; }

    public required string Course { get; init; }

    public required int Season { get; init; }

    /// <summary>Full doses that make the course complete; null where the course is not defined.</summary>
    public decimal? FullDoses { get; init; }

    /// <summary>Full doses had, on the least treated path.</summary>
    public required decimal Had { get; init; }

    /// <summary>Full doses owed; null where the course is not defined.</summary>
    public decimal? Owed { get; init; }

    /// <summary>Full doses beyond the course; null where the course is not defined.</summary>
    public decimal? TooMany { get; init; }

    /// <summary>The least treated path, colony by colony, oldest first: for instance <c>118 → N7</c>.</summary>
    public required string Path { get; init; }

    /// <summary>The least treated frames that were brought in from elsewhere, in words; null where none were less treated.</summary>
    public string? FramesRemark { get; init; }

    /// <summary>Full doses along that path of frames.</summary>
    public decimal? FramesHad { get; init; }

    /// <summary>The day of the last dose that counts along the path.</summary>
    public DateOnly? LastDose { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
