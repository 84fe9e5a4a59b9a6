using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>A box in its place, with what is written in it.</summary>
/// <param name="Group">What it stands for.</param>
/// <param name="X">Its left side.</param>
/// <param name="Y">Its upper side.</param>
/// <param name="Height">Its height, the edge of the pile behind a folded group left out.</param>
/// <param name="Lines">The first line is its name; what follows on the same line stands beside it.</param>
public sealed record KinBoxPlaced(FoldGroup Group, double X, double Y, double Height, IReadOnlyList<(string Name, string Said)> Lines);

/// <summary>A line between two boxes, for all links between those that they stand for.</summary>
public sealed record KinLinePlaced(FoldGroup From, FoldGroup To, KinLook Look, IReadOnlyList<LinkRow> Links, IReadOnlyList<(double X, double Y)> Points);

/// <summary>A genealogy in its columns, with its folded groups, as a drawing: every measure that the picture needs.</summary>
public sealed class WholeDrawing
{
    public const double Pad = 10;
    public const double Head = 30;
    public const double LineHeight = 17;

    /// <summary>The strip at the right of a box that leads to its entries: as wide as a finger needs.</summary>
    public const double Strip = 36;

    /// <summary>The room at the left of a box for the mark that says what it is.</summary>
    public const double MarkRoom = 24;

    /// <summary>How far the pile behind a folded group sticks out.</summary>
    public const double Pile = 5;

    private const double Across = 46;
    private const double LoneAt = 120;

    private WholeDrawing()
    {
    }

    public required IReadOnlyList<KinBoxPlaced> Boxes { get; init; }

    public required IReadOnlyList<KinLinePlaced> Lines { get; init; }

    /// <summary>The columns with the place of each.</summary>
    public required IReadOnlyList<(KinColumn Column, double X)> Columns { get; init; }

    public required double BoxWidth { get; init; }

    public required double Width { get; init; }

    public required double Height { get; init; }

    /// <summary>The room that a column takes, with half of what is between it and the next on either side.</summary>
    public double ColumnWidth => BoxWidth + Across;

    /// <summary>Draws it.</summary>
    public static WholeDrawing Of(Genealogy kin, Folding folding)
    {
        var boxes = folding.Boxes;
        var said = boxes.Select(box => Said(box, kin)).ToList();
        var widest = said.Max(one => Math.Max(NameWidth(one.Name) + Gap(one.Beside) + Lettering.Width(one.Beside, 12), Lettering.Width(one.Below, 12)));
        var boxWidth = Math.Clamp(widest + MarkRoom + Strip + 14, 170, 244);
        var room = boxWidth - MarkRoom - Strip - 10;
        var lines = said.Select(one => Broken(one, room)).ToList();
        var heights = lines.Select(one => 13 + (one.Count * LineHeight)).ToList();
        var boxOf = boxes.SelectMany((box, i) => box.Members.Select(one => (one.Id, i))).ToDictionary(pair => pair.Id, pair => pair.i);
        var links = kin.Links.GroupBy(link => (From: boxOf[link.FromId], To: boxOf[link.ToId])).ToList();
        var layout = LayeredLayout.Of(
            [.. boxes.Select((box, i) => new LayoutNode(Key(i), box.Column, heights[i] + (box.IsSingle ? 0 : Pile)))],
            [.. links.Select((group, i) => new LayoutEdge(Key(group.Key.From), Key(group.Key.To), i))],
            boxWidth, Across, 9);
        var byKey = layout.Nodes.ToDictionary(node => node.Key);
        // A box alone in its column stands where the page begins, not in the middle of what may be three screens of daughters.
        var up = boxes.Select((box, i) => boxes.Count(other => other.Column == box.Column) == 1 ? Math.Max(0, byKey[Key(i)].Y - LoneAt) : 0).ToList();
        return new WholeDrawing
        {
            Boxes = [.. boxes.Select((box, i) => new KinBoxPlaced(box, byKey[Key(i)].X + Pad, byKey[Key(i)].Y + Head - up[i], heights[i], lines[i]))],
            Lines =
            [
                .. layout.Edges.Select(edge => (edge, group: links[edge.Edge.Tag])).Select(pair => new KinLinePlaced(
                    boxes[pair.group.Key.From], boxes[pair.group.Key.To], Strongest(pair.group), [.. pair.group], [.. Points(pair.edge.Points, up[pair.group.Key.From], up[pair.group.Key.To])])),
            ],
            Columns = [.. layout.Seasons.Select(season => (kin.Columns[season.Season!.Value], season.X + Pad))],
            BoxWidth = boxWidth,
            Width = layout.Width + (2 * Pad),
            Height = layout.Height + Head + 10,
        };
    }

    private static IEnumerable<(double X, double Y)> Points(IReadOnlyList<(double X, double Y)> points, double upFrom, double upTo) =>
        points.Select((point, i) => (point.X + Pad, point.Y + Head - (i == 0 ? upFrom : i == points.Count - 1 ? upTo : 0)));

    /// <summary>The look of several links as one line: the surest of them.</summary>
    private static KinLook Strongest(IEnumerable<LinkRow> links) => KinLook.Of(links.MinBy(link => ((int)link.Link * 2) + (link.Sure == Entries.Certainty.Supposed ? 1 : 0))!);

    /// <summary>What a box says: its name, what stands beside it, what stands below.</summary>
    public static (string Name, string Beside, string Below) Said(FoldGroup box, Genealogy kin)
    {
        if (box.IsSingle)
        {
            var one = box.Members[0];
            var season = one.Season is null ? "season not known" : one.Born;
            return (one.Name, one.Line is { } line ? $"{season}, {line}" : season, one.Fate);
        }

        return (box.Label, "", Counted(box, kin));
    }

    /// <summary>'214 queens, 96 living'.</summary>
    public static string Counted(FoldGroup box, Genealogy kin) => $"{Text.Count(box.Members.Count, kin.Asked.OfQueens ? "queen" : "colony", kin.Asked.OfQueens ? "queens" : "colonies")}, {box.Living} living";

    private static List<(string Name, string Said)> Broken((string Name, string Beside, string Below) said, double room)
    {
        var lines = Lettering.Lines(said.Name, room, 13, bold: true).Select(line => (Name: line, Said: "")).ToList();
        if (said.Beside.Length > 0)
        {
            if (NameWidth(lines[^1].Name) + Gap(said.Beside) + Lettering.Width(said.Beside, 12) <= room) lines[^1] = (lines[^1].Name, said.Beside);
            else lines.AddRange(Lettering.Lines(said.Beside, room, 12).Select(line => ("", line)));
        }

        lines.AddRange(Lettering.Lines(said.Below, room, 12).Select(line => ("", line)));
        return lines;
    }

    private static double NameWidth(string name) => Lettering.Width(name, 13, bold: true);

    private static double Gap(string beside) => beside.Length > 0 ? 8 : 0;

    private static Guid Key(int number) => new(number, 0, 0, new byte[8]);
}
