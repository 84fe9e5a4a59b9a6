using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.DoseCompleteness;

/// <summary>A path in words: how the bees came together, and what they had by then.</summary>
internal static class PathStory
{
    /// <summary>Null where the path is the colony's own alone.</summary>
    public static string? Of(Books books, Path path)
    {
        if (path.Colonies.Count < 2) return null;
        var parts = new List<string>();
        var had = 0m;
        foreach (var entry in path.Entries)
            switch (entry)
            {
                case Treated dose:
                    had += dose.Doses;
                    break;
                case SplitFrom split:
                    parts.Add($"{Name(split.Into)} was made on {Day(split)} from {Name(split.Colony)}, whose bees had {Doses(had)} by then");
                    break;
                case Combined combined:
                    parts.Add($"{Name(combined.Colony)} was combined into {Name(combined.Into)} on {Day(combined)}, and its bees had {Doses(had)} by then");
                    break;
            }

        var since = path.Entries.Reverse().TakeWhile(entry => entry is Treated).OfType<Treated>().Sum(dose => dose.Doses);
        return $"{string.Join("; ", parts)}; {(since > 0 ? $"{Doses(since)} since" : "none since")}";

        string Name(ColonyId id) => Names.Of(books.Colony(id));
    }

    private static string Day(Entry entry) => entry.On.Day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private static string Doses(decimal doses) => doses == 0 ? "no dose" : FormattableString.Invariant($"{doses:0.##} full {(doses == 1 ? "dose" : "doses")}");
}
