using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>One colony: where it stood, its queens, where its bees came from and went, and how it ended.</summary>
public sealed record ColonyCard
{
    public required ColonyId Colony { get; init; }

    /// <summary>How it began; null where nobody recorded that.</summary>
    public ColonyEstablished? Began { get; init; }

    public string? Number => Began?.Number;

    /// <summary>Where it stood, in order.</summary>
    public IReadOnlyList<Stay> Stays { get; init; } = [];

    /// <summary>Its queens, in order.</summary>
    public IReadOnlyList<Reign> Reigns { get; init; } = [];

    /// <summary>Everything that stands about it and counts, in order: nothing after its end, nothing before it began.</summary>
    public IReadOnlyList<Entry> Counted { get; init; } = [];

    /// <summary>Of what counts, in order: what brought the bees of another colony into it.</summary>
    public IReadOnlyList<Entry> Joinings { get; init; } = [];

    /// <summary>What bears a place after its end, or before it began: kept, and a conflict.</summary>
    public IReadOnlyList<Entry> OutOfLife { get; init; } = [];

    /// <summary>Conflicts that somebody lets stand, also after its end.</summary>
    public IReadOnlyList<ConflictSettled> Settled { get; init; } = [];

    /// <summary>How it ended; null while it lives.</summary>
    public ColonyEnd? End { get; init; }

    /// <summary>What it is housed in.</summary>
    public Housing? Housing { get; init; }

    /// <summary>It was taken out of comparisons or judged a dud.</summary>
    public TakenOut? TakenOut { get; init; }

    /// <summary>Where it stands now; null where nobody knows, or where it has ended.</summary>
    public Stay? Standing => End is null && Stays.Count > 0 ? Stays[^1] : null;

    /// <summary>The reign that goes on; null where it has no queen that is known of, or has ended.</summary>
    public Reign? Reigning => End is null && Reigns.Count > 0 && Reigns[^1].To is null ? Reigns[^1] : null;

    public static ColonyCard Fold(ColonyId colony, IReadOnlyList<Entry> entries) => new ColonyFold(colony).Fold(entries);
}

/// <summary>A time on a spot.</summary>
/// <param name="Above">Over another colony, on a screen board.</param>
public sealed record Stay(Spot Spot, bool Above, Occurred From, Entry CameBy, Occurred? To, Entry? WentBy);

/// <summary>How a queen came to reign in a colony.</summary>
public enum HowCame
{
    /// <summary>She was there when the colony began.</summary>
    WithColony,

    /// <summary>She was given to it.</summary>
    Given,

    /// <summary>She came as a cell.</summary>
    Cell,

    /// <summary>The bees raised her in place of the old one.</summary>
    Supersedure,

    /// <summary>She came with a colony that was combined into this one.</summary>
    Combined,

    /// <summary>A laying queen was found that nobody had recorded.</summary>
    Found,
}

/// <summary>How a reign ended.</summary>
public enum HowWent
{
    /// <summary>Killed by a person.</summary>
    Killed,

    /// <summary>Taken out alive.</summary>
    TakenOut,

    /// <summary>Superseded by the bees.</summary>
    Superseded,

    /// <summary>Lost: found queenless, not accepted, or not found when another was given.</summary>
    Lost,

    /// <summary>Another was given without a word about her.</summary>
    Replaced,

    /// <summary>Not the one that was kept when two colonies were combined.</summary>
    NotKept,

    /// <summary>Her colony ended.</summary>
    ColonyEnded,
}

/// <summary>A queen's time in a colony. <paramref name="Queen"/> is null for a queen that nobody has named.</summary>
public sealed record Reign(QueenId? Queen, HowCame Came, Occurred From, Entry CameBy, HowWent? Went, Occurred? To, Entry? WentBy);

/// <summary>How a colony ended.</summary>
public enum EndKind
{
    /// <summary>Found dead.</summary>
    Dead,

    /// <summary>Combined into another.</summary>
    Combined,

    /// <summary>Given up: shared out or shaken out.</summary>
    GivenUp,

    /// <summary>Sold or given away.</summary>
    Sold,
}

/// <summary>The end of a colony.</summary>
/// <param name="On">When; an interval for a dead-out that was last seen alive earlier.</param>
public sealed record ColonyEnd(EndKind How, Occurred On, Entry By, ColonyId? Into, string? Why);
