using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>Bees of one colony that came into another.</summary>
internal static class Joining
{
    /// <summary>The colony whose bees an entry brought into another.</summary>
    public static ColonyId? From(Entry entry, ColonyId into) => entry switch
    {
        SplitFrom split when split.Into == into => split.Colony,
        Combined combined when combined.Into == into => combined.Colony,
        _ => null,
    };
}
