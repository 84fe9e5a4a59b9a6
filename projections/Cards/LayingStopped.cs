using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>Whether a look at brood came too soon after a course that stops the queen's laying.</summary>
internal static class LayingStopped
{
    /// <summary>The doses of a colony that stop laying, for several looks to be held against.</summary>
    public static IReadOnlyList<(Treated Dose, DateOnly Until)> Doses(OutfitCard outfit, ColonyCard colony) =>
        [.. colony.Counted.OfType<Treated>().Select(dose => (dose, Until: Until(outfit, dose))).Where(one => one.Until is not null).Select(one => (one.dose, one.Until!.Value))];

    /// <summary>The dose before the look for whose sake brood cannot be judged for longest; null where the look came soon enough after none.</summary>
    public static Treated? By(IReadOnlyList<(Treated Dose, DateOnly Until)> doses, Inspected look) => doses.Count == 0 ? null
        : doses.Where(one => one.Until >= look.On.Day && Place.Of(one.Dose) < Place.Of(look)).OrderBy(one => one.Until).LastOrDefault().Dose;

    /// <summary>The same of one look.</summary>
    public static Treated? By(OutfitCard outfit, ColonyCard colony, Inspected look) => By(Doses(outfit, colony), look);

    /// <summary>The last day on which a look at brood is too soon after a dose; null where its course stops no laying.</summary>
    public static DateOnly? Until(OutfitCard outfit, Treated dose) => outfit.Courses.GetValueOrDefault(dose.Course)?.BroodTooSoonDays is { } days ? dose.On.Day.AddDays(days) : null;
}
