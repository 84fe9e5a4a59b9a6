using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>Whether a look at brood came too soon after a course that stops the queen's laying.</summary>
internal static class LayingStopped
{
    /// <summary>The dose before the look for whose sake brood cannot be judged for longest; null where the look came soon enough after none.</summary>
    public static Treated? By(OutfitCard outfit, ColonyCard colony, Inspected look) => colony.Counted.OfType<Treated>()
        .Where(dose => Place.Of(dose) < Place.Of(look) && Until(outfit, dose) >= look.On.Day).OrderBy(dose => Until(outfit, dose)).LastOrDefault();

    /// <summary>The last day on which a look at brood is too soon after a dose; null where its course stops no laying.</summary>
    public static DateOnly? Until(OutfitCard outfit, Treated dose) => outfit.Courses.GetValueOrDefault(dose.Course)?.BroodTooSoonDays is { } days ? dose.On.Day.AddDays(days) : null;
}
