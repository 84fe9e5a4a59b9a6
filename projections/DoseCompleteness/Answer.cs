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

    /// <summary>The entry of that dose.</summary>
    public Guid? LastDoseId { get; init; }

    /// <summary>The entry of the last dose that was given to the colony itself, whatever its bees had before.</summary>
    public Guid? OwnDoseId { get; init; }

    /// <summary>A dose of the course was given to it in the yard where it stands, in that season.</summary>
    public bool GivenHere { get; init; }

    /// <summary>The path in words: how the bees came together, and what they had by then. Null where they were always together.</summary>
    public string? Story { get; init; }

    /// <summary>Doses along the path that came sooner after the one before than the course allows.</summary>
    public int TooSoon { get; init; }

    /// <summary>Doses along the path that came later after the one before than the course allows.</summary>
    public int TooLate { get; init; }

    /// <summary>Doses along the path with a daily maximum above the course's limit.</summary>
    public int TooHot { get; init; }

    /// <summary>Doses along the path with a daily maximum below the course's limit.</summary>
    public int TooCold { get; init; }

    /// <summary>Doses along the path of which a daily maximum that matters was not recorded.</summary>
    public int WarmthUnknown { get; init; }

    /// <summary>Doses along the path that were given with supers on, where they must be off.</summary>
    public int SupersOn { get; init; }

    /// <summary>The colony's last dose is to be taken out between these days; null where nothing is.</summary>
    public DateOnly? OutFrom { get; init; }

    public DateOnly? OutBy { get; init; }

    /// <summary>The day on which it was taken out; null while that is not recorded.</summary>
    public DateOnly? OutOn { get; init; }

    /// <summary>The next dose that is owed is due between these days, by the course.</summary>
    public DateOnly? NextFrom { get; init; }

    public DateOnly? NextBy { get; init; }

    /// <summary>No supers before this day, by the course; null where that is not known: what must be taken out is still in.</summary>
    public DateOnly? WithholdingUntil { get; init; }

    /// <summary>Brood seen up to this day is too soon to judge: the course stops the laying.</summary>
    public DateOnly? BroodTooSoonUntil { get; init; }

    /// <summary>What is not as the course wants it, in words.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
