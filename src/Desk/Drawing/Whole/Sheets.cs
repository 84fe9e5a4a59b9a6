namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>A piece of a drawing that goes on a sheet of paper.</summary>
/// <param name="FirstColumn">Its first column, from 0.</param>
/// <param name="LastColumn">Its last.</param>
public sealed record KinSheet(int FirstColumn, int LastColumn, double X, double Y, double Width, double Height);

/// <summary>
/// Cuts a drawing into sheets of paper laid crosswise, so that its letters stay legible. A sheet ends where no box is cut, where there is such a place; else the next
/// one begins with the boxes that were cut, so that each is whole on one of them.
/// </summary>
public static class Sheets
{
    /// <summary>Units that fit across a sheet: letters of 12 units are then 7.5 points high on A4, 7 on letter paper.</summary>
    public const double Widest = 1240;

    /// <summary>The height of a sheet for each unit of its width: of A4 and letter paper crosswise, less the margins, a line that says which sheet it is, and the columns' names.</summary>
    private const double HighPerWide = 0.66;

    /// <summary>The same for the first sheet, which stands below the title and what the marks mean.</summary>
    private const double FirstHighPerWide = 0.48;

    /// <summary>A drawing is not blown up: a sheet of fewer units than this across is as high as one of these.</summary>
    private const double Narrowest = 960;

    /// <summary>What is repeated on the next sheet, about: a box that was cut.</summary>
    private const double Spare = 60;

    /// <summary>The sheets of a drawing, downwards first.</summary>
    public static IReadOnlyList<KinSheet> Of(WholeDrawing drawing)
    {
        var sheets = new List<KinSheet>();
        var across = Math.Max(1, (int)((Widest - (2 * WholeDrawing.Pad)) / drawing.ColumnWidth));
        for (var first = 0; first < drawing.Columns.Count;)
        {
            var last = Math.Min(first + across, drawing.Columns.Count) - 1;
            var from = first == 0 ? 0 : drawing.Columns[first].X - WholeDrawing.Pad;
            var to = last == drawing.Columns.Count - 1 ? drawing.Width : drawing.Columns[last].X + drawing.ColumnWidth - WholeDrawing.Pad;
            var boxes = drawing.Boxes.Where(box => box.Group.Column >= first && box.Group.Column <= last).ToList();
            var bottom = boxes.Max(box => box.Y + box.Height + WholeDrawing.Pile) + 4;
            var top = boxes.Min(box => box.Y) - 6;
            while (top < bottom)
            {
                var high = (Math.Max(to - from, Narrowest) * (sheets.Count == 0 ? FirstHighPerWide : HighPerWide)) - WholeDrawing.Head;
                // What is left is shared out over the sheets that it takes: one with a single box on it is wasted.
                if (sheets.Count > 0 && bottom - top > high) high = Math.Min(high, ((bottom - top) / Math.Ceiling((bottom - top) / (high - Spare))) + Spare);
                var end = Math.Min(top + high, bottom);
                var next = end;
                if (end < bottom) (end, next) = Cut(boxes, top, end);
                sheets.Add(new KinSheet(first, last, from, top, to - from, end - top));
                top = next;
            }

            if (last == drawing.Columns.Count - 1) break;
            // The last column comes again as the first of the next sheet, so that its lines can be followed.
            first = Math.Max(last, first + 1);
        }

        return sheets;
    }

    /// <summary>Where a sheet ends and where the next begins.</summary>
    private static (double End, double Next) Cut(List<KinBoxPlaced> boxes, double top, double latest)
    {
        var (best, fewest) = (latest, int.MaxValue);
        for (var at = latest; at > latest - ((latest - top) / 5); at -= 3)
        {
            var cut = boxes.Count(box => box.Y < at && at < box.Y + box.Height + WholeDrawing.Pile);
            if (cut >= fewest) continue;
            (best, fewest) = (at, cut);
        }

        var first = boxes.Where(box => box.Y < best && best < box.Y + box.Height + WholeDrawing.Pile).Select(box => box.Y - 4).DefaultIfEmpty(best).Min();
        return (best, Math.Max(first, top + 1));
    }
}
