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
        if (ReignBySupersedure(books, card) is var (reign, _)) return (reign.From, [reign.CameBy]);
        if (card is { Born: { } hatched, BornBy: { } cell }) return (hatched, [cell]);
        return null;
    }

    /// <summary>Her mother, how surely, and the entries that say so; null where nothing tells.</summary>
    public static (QueenId Mother, Certainty Sure, IReadOnlyList<Entry> By)? MotherOf(Books books, QueenId queen)
    {
        var card = books.Queen(queen);
        if (card is { Mother: { } mother, MotherBy: { } by }) return (mother, card.MotherIs, [by]);
        if (ReignBySupersedure(books, card) is not var (reign, replaced) || replaced?.Queen is not { } before || before == queen) return null;
        return (before, Certainty.Supposed, [reign.CameBy]);
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

    /// <summary>The reign that a queen whom the bees raised began in another's place, the first if several are recorded, and the reign before it.</summary>
    private static (Reign Reign, Reign? Replaced)? ReignBySupersedure(Books books, QueenCard card)
    {
        if (card.CameBySupersedure is not { } seen) return null;
        var reigns = books.Colony(seen.Colony).Reigns;
        for (var i = 0; i < reigns.Count; i++)
            if (reigns[i].Queen == card.Queen && reigns[i].Came == HowCame.Supersedure)
                return (reigns[i], i > 0 ? reigns[i - 1] : null);
        return null;
    }
}
