using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>What the boxes of a genealogy say of queens and colonies.</summary>
/// <param name="graph">All links.</param>
/// <param name="register">The register by id.</param>
/// <param name="outfit">The outfit: its lines, and when its season starts.</param>
/// <param name="books">The queens' cards, for what neither the links nor the register tell: the batch. Null where they are not wanted.</param>
public sealed class Relatives(Graph graph, IReadOnlyDictionary<Guid, RegisterRow> register, OutfitCard outfit, Books? books)
{
    private readonly Dictionary<Guid, string?> _lines = [];

    /// <summary>A queen.</summary>
    public Relative Queen(Guid id)
    {
        var row = register.GetValueOrDefault(id);
        var mother = MotherOf(id);
        var card = books?.Queen(new QueenId(id));
        var (from, to) = (mother?.OnFrom ?? row?.Began, mother?.OnTo ?? card?.Born?.Day ?? row?.Began);
        if (to < from) to = from;
        var alive = QueenWords.IsAlive(row);
        return new Relative(id, row?.Name ?? mother?.To ?? $"queen {Names.Short(id)}")
        {
            Season = SeasonOf(from),
            Born = Text.Season(SeasonOf(from), SeasonOf(to)),
            Alive = alive,
            Fate = Fate(row, alive, row?.Colony is { } colony ? $"in {colony}" : "place not known"),
            Yard = alive ? row?.Yard : null,
            Line = LineOf(id),
            Batch = card?.Batch,
            Parent = mother is null ? null : (mother.FromId, mother.From),
            Entries = row?.Entries ?? [],
        };
    }

    /// <summary>A colony.</summary>
    public Relative Colony(Guid id)
    {
        var row = register.GetValueOrDefault(id);
        var made = graph.To(id).Where(link => link.Link == LinkKind.Split).MinBy(link => link.OnFrom);
        var alive = row is { Ended: null };
        return new Relative(id, row?.Name ?? graph.To(id).Select(link => link.To).Concat(graph.From(id).Select(link => link.From)).FirstOrDefault() ?? $"colony {Names.Short(id)}")
        {
            Season = SeasonOf(row?.Began ?? made?.OnFrom),
            Born = Text.Season(SeasonOf(row?.Began ?? made?.OnFrom), SeasonOf(row?.Began ?? made?.OnFrom)),
            Alive = alive,
            Fate = Fate(row, alive, "place not known"),
            Yard = alive ? row?.Yard : null,
            Parent = made is null ? null : (made.FromId, made.From),
            Entries = row?.Entries ?? [],
        };
    }

    /// <summary>The line of the nearest mother that one starts at, herself included, as <see cref="Pedigree.LineOf"/> has it; a ring ends the walk.</summary>
    private string? LineOf(Guid id)
    {
        var walked = new List<Guid>();
        string? line = null;
        for (Guid? at = id; at is { } here && !walked.Contains(here);)
        {
            if (_lines.TryGetValue(here, out line)) break;
            walked.Add(here);
            if (outfit.Lines.TryGetValue(new QueenId(here), out var started))
            {
                line = started.Line;
                break;
            }

            at = MotherOf(here)?.FromId;
        }

        foreach (var here in walked) _lines[here] = line;
        return line;
    }

    private LinkRow? MotherOf(Guid id) => graph.To(id).FirstOrDefault(link => link.Link == LinkKind.Mother);

    private int? SeasonOf(DateOnly? day) => day is { } known ? Season.Of(known, outfit.SeasonStartMonth) : null;

    private static string Fate(RegisterRow? row, bool alive, string inNoYard)
    {
        if (row is null) return "not recorded of itself";
        if (alive) return $"lives, {(row.Yard is null ? inNoYard : $"{row.Yard} {row.Spot}")}";
        if (row.Fate is null && row.Ended is null) return "fate not known";
        return row.Ended is { } ended ? $"{FateWords.Of(row.Fate)} {Text.Day(ended)}" : FateWords.Of(row.Fate);
    }
}
