using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.DoseCompleteness;

/// <summary>Which courses were given, in which seasons, to any of the bees that a colony is made of.</summary>
internal static class CoursesGiven
{
    public static IEnumerable<(string Course, int Season)> To(Books books, ColonyCard colony)
    {
        var start = books.Outfit.SeasonStartMonth;
        var given = new SortedSet<(int Season, string Course)>(Comparer<(int Season, string Course)>.Create((left, right) =>
            left.Season != right.Season ? left.Season.CompareTo(right.Season) : string.CompareOrdinal(left.Course, right.Course)));
        foreach (var dose in colony.Counted.OfType<Treated>()) given.Add((Season.Of(dose.On.Day, start), dose.Course));
        foreach (var joining in colony.Joinings)
            if (Joining.From(joining, colony.Colony) is { } from)
                Gather(books, from, Place.Of(joining), Season.Of(joining.On.Day, start), given, []);
        return given.Select(pair => (pair.Course, pair.Season));
    }

    private static void Gather(Books books, ColonyId colony, Place before, int season, ISet<(int, string)> given, Dictionary<ColonyId, Place> walked)
    {
        if (walked.TryGetValue(colony, out var done) && before <= done) return;
        walked[colony] = before;
        var entries = books.Colony(colony).Counted;
        for (var i = InSeason.First(entries, Season.FirstDay(season, books.Outfit.SeasonStartMonth)); i < entries.Count; i++)
        {
            var entry = entries[i];
            if (Place.Of(entry) >= before) break;
            if (entry is Treated dose) given.Add((season, dose.Course));
            else if (Joining.From(entry, colony) is { } from) Gather(books, from, Place.Of(entry), season, given, walked);
        }
    }
}
