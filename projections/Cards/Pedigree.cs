using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>When a queen was born, who her mother was and which line she is of, where her colonies have to tell it.</summary>
public static class Pedigree
{
    /// <summary>When she emerged and the entries that say so; null where nothing tells.</summary>
    public static (Occurred When, IReadOnlyList<Entry> By)? BirthOf(Books books, QueenId queen)
    {
        var card = books.Queen(queen);
        if (card is { Born: { } born, BornBy: { } by } && by is QueenRaised or QueenBought) return (born, [by]);
        // A queen that the bees raised was born between the last sight of the old queen and the first of her.
        if (card.CameBySupersedure is { } seen
            && books.Colony(seen.Colony).Reigns.FirstOrDefault(reign => reign.Queen == queen && reign.Came == HowCame.Supersedure) is { } reign)
            return (reign.From, [reign.CameBy]);
        if (card is { Born: { } hatched, BornBy: { } cell }) return (hatched, [cell]);
        return null;
    }

    /// <summary>Her mother, how surely, and the entries that say so; null where nothing tells.</summary>
    public static (QueenId Mother, Certainty Sure, IReadOnlyList<Entry> By)? MotherOf(Books books, QueenId queen)
    {
        var card = books.Queen(queen);
        if (card is { Mother: { } mother, MotherBy: { } by }) return (mother, card.MotherIs, [by]);
        if (card.CameBySupersedure is not { } seen) return null;
        var reigns = books.Colony(seen.Colony).Reigns;
        for (var i = 1; i < reigns.Count; i++)
            if (reigns[i].Queen == queen && reigns[i].Came == HowCame.Supersedure && reigns[i - 1].Queen is { } before && before != queen)
                return (before, Certainty.Supposed, [seen]);
        return null;
    }

    /// <summary>The nearest line up her mothers, herself included; null where there is none. A ring of mothers, wrongly entered, ends the walk.</summary>
    public static (string Line, IReadOnlyList<Entry> By)? LineOf(Books books, QueenId queen)
    {
        var lines = books.Outfit.Lines;
        if (lines.Count == 0) return null;
        var seen = new HashSet<QueenId>();
        var by = new List<Entry>();
        for (QueenId? at = queen; at is { } here && seen.Add(here);)
        {
            if (lines.TryGetValue(here, out var line)) return (line.Line, [.. by, line]);
            if (MotherOf(books, here) is not { } up) return null;
            by.AddRange(up.By);
            at = up.Mother;
        }

        return null;
    }
}
