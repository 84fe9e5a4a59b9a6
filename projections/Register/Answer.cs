using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Register;

/// <summary>One yard, colony or queen by its name.</summary>
public sealed record RegisterRow : IRow
{
    public required SubjectKind Kind { get; init; }

    public required Guid Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Where it stands now: a colony, or the colony that a queen is in.</summary>
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    /// <summary>Opened, begun or born: the first day possible.</summary>
    public DateOnly? Began { get; init; }

    /// <summary>Closed or ended: the last day possible; null while it goes on.</summary>
    public DateOnly? Ended { get; init; }

    /// <summary>How it ended, in a word: dead, combined, givenUp, sold; killed, superseded, lost …</summary>
    public string? Fate { get; init; }

    /// <summary>The colony a queen is in.</summary>
    public ColonyId? ColonyId { get; init; }

    /// <summary>The name of that colony.</summary>
    public string? Colony { get; init; }

    /// <summary>What a colony is housed in.</summary>
    public Housing? Housing { get; init; }

    /// <summary>Why a colony was taken out of comparisons.</summary>
    public string? TakenOut { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
