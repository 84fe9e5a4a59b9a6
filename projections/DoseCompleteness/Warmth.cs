using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.DoseCompleteness;

/// <summary>The daily maxima after a dose, in the yard where the colony stood that day, against the limits of its course.</summary>
internal sealed record Warmth(bool Above, bool Under, bool Unknown, IReadOnlyList<Entry> By)
{
    private static readonly Warmth Unlimited = new(false, false, false, []);

    public static Warmth Of(Books books, CourseDefined course, Treated dose)
    {
        if (course.CoolestMaximum is null && course.WarmestMaximum is null) return Unlimited;
        var stay = books.Colony(dose.Colony).Stays.LastOrDefault(stay => Place.Of(stay.CameBy) <= Place.Of(dose));
        if (stay is null) return new Warmth(false, false, true, []);
        var maxima = books.Yard(stay.Spot.Yard).Maxima;
        var days = course.MaximumMattersDays ?? 1;
        var known = new List<DailyMaximum>(days);
        for (var i = 0; i < days; i++)
            if (maxima.TryGetValue(dose.On.Day.AddDays(i), out var maximum))
                known.Add(maximum);
        return new Warmth(
            known.Exists(day => day.Maximum.Celsius > course.WarmestMaximum),
            known.Exists(day => day.Maximum.Celsius < course.CoolestMaximum),
            known.Count < days,
            known);
    }
}
