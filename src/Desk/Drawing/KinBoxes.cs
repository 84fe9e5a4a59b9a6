using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk.Drawing;

/// <summary>What is written in the boxes of a drawing of kinship.</summary>
public sealed class KinBoxes(Books books, IReadOnlyDictionary<Guid, RegisterRow> register)
{
    private readonly Dictionary<Guid, KinBox> _boxes = [];

    /// <summary>A queen: her name, when she was born with the mark due, where she is or what became of her.</summary>
    public KinBox Queen(Guid id)
    {
        if (_boxes.TryGetValue(id, out var box)) return box;
        var birth = Pedigree.BirthOf(books, new QueenId(id));
        var start = books.Outfit.SeasonStartMonth;
        var row = register.GetValueOrDefault(id);
        var name = Names.Of(books.Queen(new QueenId(id)));
        var born = birth is { } b ? $"born {Text.Season(Season.Of(b.When.Earliest, start), Season.Of(b.When.Day, start))}" : "birth not known";
        return _boxes[id] = new KinBox(name, birth is { } known ? Season.Of(known.When.Earliest, start) : null, birth is { } due ? QueenWords.MarkDue(due.When) : null, [born, Where(row, QueenWords.IsAlive(row))], $"/queens/{id}", QueenWords.IsAlive(row));
    }

    /// <summary>A colony: its number, when it began, where it stands or how it ended.</summary>
    public KinBox Colony(Guid id)
    {
        if (_boxes.TryGetValue(id, out var box)) return box;
        var row = register.GetValueOrDefault(id);
        var start = books.Outfit.SeasonStartMonth;
        var began = row?.Began is { } day ? $"began {Text.Day(day)}" : "beginning not known";
        return _boxes[id] = new KinBox(Names.Of(books.Colony(new ColonyId(id))), row?.Began is { } from ? Season.Of(from, start) : null, null, [began, Where(row, row is { Ended: null })], $"/colonies/{id}", row is { Ended: null });
    }

    private static string Where(RegisterRow? row, bool alive)
    {
        if (row is null) return "not recorded of itself";
        if (!alive && row.Fate is null && row.Ended is null) return "fate not known";
        if (!alive) return row.Ended is { } ended ? $"{FateWords.Of(row.Fate)} {Text.Day(ended)}" : FateWords.Of(row.Fate);
        return row.Yard is null ? row.Colony is null ? "place not known" : $"in {row.Colony}" : $"{row.Yard} {row.Spot}";
    }
}
