using ColonyLineage.Projections.LineComparison;

namespace ColonyLineage.Desk.Drawing;

/// <summary>A line in its place.</summary>
/// <param name="Name">The lines of its name, each by its baseline.</param>
/// <param name="Counts">Its mothers and colonies.</param>
/// <param name="Number">Its figure and interval.</param>
/// <param name="Y">The height of the point and its interval.</param>
public sealed record PlacedLine(LineFigure Figure, IReadOnlyList<PlacedLabel> Name, PlacedLabel Counts, PlacedLabel Number, double Y);

/// <summary>Lines one below the other, each a point with its interval, on a scale with the mean of those compared in the middle.</summary>
public sealed class LineBars
{
    /// <summary>The width that fits a phone.</summary>
    public const double Narrow = 340;

    public const double Broad = 860;

    public const double Left = 10;

    private const double Row = 15;
    private static readonly double[] Steps = [.001, .002, .005, .01, .02, .05, .1, .2, .5, 1, 2, 5, 10, 20, 50, 100, 200, 500];

    /// <summary>What a factor's scale may be marked with, from close to the mean to far from it.</summary>
    private static readonly double[][] Factors = [[.9, 1.1], [.8, 1.25], [.7, 1.4], [.5, 2], [.25, .5, 2, 4], [.1, .3, 3, 10], [.01, .1, 10, 100], [.001, .03, 30, 1000]];

    public LineBars(Trait trait, ComparedBy by, IReadOnlyList<LineFigure> figures, double width)
    {
        Width = width;
        Trait = trait;
        Most = MostOf(figures);
        Wanted = trait == Trait.Strength ? "more bees →" : Traits.MoreIsBetter(trait) ? $"wanted: {TraitWords.Wanted(trait)} →" : $"← wanted: {TraitWords.Wanted(trait)}";
        WantedAt = Traits.MoreIsBetter(trait) ? new PlacedLabel(Right, Row, Wanted, "end") : new PlacedLabel(Left, Row, Wanted, "start");
        Top = Row + 8;
        var y = Top;
        var rows = new List<PlacedLine>();
        foreach (var figure in figures)
        {
            var number = $"{TraitWords.Signed(trait, figure.Value)} ({TraitWords.Interval(trait, figure.Lower, figure.Upper)})";
            var counts = LineWords.Counts(figure.Row, by);
            var name = Lettering.Lines(figure.Row.Line, Right - Left, PlacedLabel.Size, bold: true).Select((line, i) => new PlacedLabel(Left, y + (Row * (i + 1)), line, "start")).ToList();
            y += Row * name.Count;
            // Counts and figure side by side where they fit, else the figure below.
            var countsAt = new PlacedLabel(Left, y + Row, counts, "start");
            if (Lettering.Width(counts, PlacedLabel.Size) + Lettering.Width(number, PlacedLabel.Size) + 10 > Right - Left) y += Row;
            var numberAt = new PlacedLabel(Right, y + Row, number, "end");
            y += Row + 12;
            rows.Add(new PlacedLine(figure, name, countsAt, numberAt, y));
            y += 14;
        }

        Rows = rows;
        Bottom = y;
        Ticks = [.. Marks(trait, Most).Select(mark => Tick(trait, mark))];
        Height = Bottom + 20;
    }

    public double Width { get; }

    public Trait Trait { get; }

    public double Right => Width - 10;

    /// <summary>The difference at the right edge; at the left it is the same below the mean.</summary>
    public double Most { get; }

    public string Wanted { get; }

    /// <summary>Which way is wanted, in words and with an arrow.</summary>
    public PlacedLabel WantedAt { get; }

    /// <summary>The upper edge of the plot.</summary>
    public double Top { get; }

    public IReadOnlyList<PlacedLine> Rows { get; }

    /// <summary>The lower edge, below which the numbers of the scale stand.</summary>
    public double Bottom { get; }

    public double Height { get; }

    public IReadOnlyList<PlacedLabel> Ticks { get; }

    /// <summary>Where a difference stands. What lies beyond the scale stands at its edge.</summary>
    public double X(decimal difference) => X((double)difference);

    /// <summary>Whether a difference lies beyond the scale.</summary>
    public bool IsBeyond(decimal difference) => Math.Abs((double)difference) > Most;

    private double X(double difference) => Left + ((Right - Left) * ((Math.Clamp(difference / Most, -1, 1) + 1) / 2));

    private PlacedLabel Tick(Trait trait, double mark)
    {
        var said = mark == 0 ? "mean" : TraitWords.IsFactor(trait) ? TraitWords.Signed(trait, (decimal)mark) : $"{(mark > 0 ? "+" : "−")}{Text.Number((decimal)Math.Abs(Math.Round(mark, 6)))}";
        return new PlacedLabel(X(mark), Bottom + 15, said, "middle");
    }

    /// <summary>All points, and all intervals but those so wide that the others would shrink to nothing beside them.</summary>
    private static double MostOf(IReadOnlyList<LineFigure> figures)
    {
        if (figures.Count == 0) return 1;
        var ends = figures.Select(figure => (double)Math.Max(Math.Abs(figure.Lower), Math.Abs(figure.Upper))).Order().ToList();
        var points = figures.Max(figure => (double)Math.Abs(figure.Value));
        var most = Math.Min(ends[^1], Math.Max(1.2 * points, 3 * ends[ends.Count / 2]));
        return most > 0 ? 1.05 * most : 1;
    }

    /// <summary>The mean and two or four marks beside it.</summary>
    private static IEnumerable<double> Marks(Trait trait, double most)
    {
        if (TraitWords.IsFactor(trait))
        {
            var set = Factors.LastOrDefault(set => Math.Log(set[^1]) <= most) ?? [];
            return [.. set.Select(factor => Math.Log(factor)).Append(0)];
        }

        var step = Steps.LastOrDefault(step => 2 * step <= .95 * most);
        return step == 0 ? [0] : [-2 * step, -step, 0, step, 2 * step];
    }
}
