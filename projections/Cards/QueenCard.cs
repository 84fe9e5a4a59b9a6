using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>One queen: her birth, mother, mating and marks, and her path through colonies.</summary>
public sealed record QueenCard
{
    public required QueenId Queen { get; init; }

    public string? Name { get; init; }

    /// <summary>When she emerged by what was recorded of her own; null where only her colonies can tell.</summary>
    public Occurred? Born { get; init; }

    /// <summary>The entry that says when she emerged.</summary>
    public Entry? BornBy { get; init; }

    public QueenId? Mother { get; init; }

    public Certainty MotherIs { get; init; } = Certainty.Unknown;

    /// <summary>The entry that names the mother.</summary>
    public Entry? MotherBy { get; init; }

    public RaisedFrom From { get; init; } = RaisedFrom.Unknown;

    public bool Bought { get; init; }

    public string? Batch { get; init; }

    public QueenMated? Mated { get; init; }

    /// <summary>The mark she was last given.</summary>
    public QueenMarked? Marked { get; init; }

    /// <summary>The supersedure by which she came, where she came by one.</summary>
    public SupersedureSeen? CameBySupersedure { get; init; }

    /// <summary>Each time in a colony that she was set into, in order.</summary>
    public IReadOnlyList<Placing> Placings { get; init; } = [];

    /// <summary>Her end outside of a colony's own story.</summary>
    public Entry? EndedBy { get; init; }

    /// <summary>Queens that were raised from her, in order.</summary>
    public IReadOnlyList<QueenId> Daughters { get; init; } = [];

    /// <summary>Everything that stands about her.</summary>
    public IReadOnlyList<Entry> Entries { get; init; } = [];

    /// <summary>The colony she was last set into, unless she was taken out since to be banked, sold or lost.</summary>
    public ColonyId? LastColony { get; init; }

    public static QueenCard Fold(QueenId queen, IReadOnlyList<Entry> entries) => new QueenFold(queen).Fold(entries);
}

/// <summary>A queen was set into a colony.</summary>
/// <param name="Until">What took her out of it again, or says that she is gone; null while nothing does.</param>
public sealed record Placing(ColonyId Colony, Entry By, Entry? Until);
