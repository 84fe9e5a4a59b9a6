using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>A colony on a spot.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="Spot">Where it stands.</param>
/// <param name="Above">It stands above another colony over a screen board.</param>
public readonly record struct Tenant(ColonyId Colony, Spot Spot, bool Above = false);

/// <summary>
/// What the books say as of the day of the act, by everything else that stands. The act's own entries are left out, so that a
/// request sent again meets the same books and gives the same entries.
/// </summary>
public interface IStanding
{
    /// <summary>The colony that stands on the spot itself (not the one above it), or null where nobody does.</summary>
    ColonyId? ColonyOn(Spot spot);

    /// <summary>Every colony in the yard, those that stand above another included. In any order.</summary>
    IReadOnlyList<Tenant> ColoniesIn(YardId yard);

    /// <summary>Where the colony stands, or null where that is not known.</summary>
    Spot? SpotOf(ColonyId colony);

    /// <summary>The colony's queen, or null where there is none or she is not known as an individual.</summary>
    QueenId? QueenOf(ColonyId colony);

    /// <summary>Whether the books know it at all, on any day, ended or not.</summary>
    bool Knows(Subject subject);

    /// <summary>The entry of that id, on any day, voided or not; null where there is none.</summary>
    Entry? Find(EntryId id);
}
