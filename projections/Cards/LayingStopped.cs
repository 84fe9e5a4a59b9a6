using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>Whether a look at brood came too soon after a course that stops the queen's laying.</summary>
internal static class LayingStopped
{
    /// <summary>The last dose that makes it too soon; null where none does.</summary>
    public static Treated? By(OutfitCard outfit, ColonyCard colony, Inspected look) => colony.Counted.OfType<Treated>().LastOrDefault(dose =>
        outfit.Courses.GetValueOrDefault(dose.Course)?.BroodTooSoonDays is { } days && look.On.Day.DayNumber - dose.On.Day.DayNumber is var since && since >= 0 && since <= days);
}
