using ColonyLineage.Projections.Losses;

namespace ColonyLineage.Desk.Drawing;

/// <summary>A rate in its place. Heights are of the upper edge of what is drawn.</summary>
/// <param name="Name">The lines of its name, each by its baseline.</param>
/// <param name="Number">The rate and the count.</param>
/// <param name="Bar">The upper edge of its bar.</param>
public sealed record PlacedLoss(IReadOnlyList<PlacedLabel> Name, PlacedLabel Number, double Bar, LossRow Row);

/// <summary>Rates of loss one below the other, each with its whiskers, on a scale that several pictures have in common.</summary>
public sealed class LossBars
{
    /// <summary>The width that fits a phone.</summary>
    public const double Width = 340;

    public const double Left = 8;

    public const double Right = Width - 12;

    /// <summary>How high a bar is.</summary>
    public const double Thick = 10;

    /// <summary>How far above the bar the mark of the yards' average stands, and below it the whisker of the clustered interval.</summary>
    public const double Beside = 9;

    private const double Line = 15;
    private static readonly double[] Tops = [0.1, 0.2, 0.3, 0.5, 1];

    /// <param name="top">The share at the right edge.</param>
    /// <param name="named">What a row is called.</param>
    public LossBars(IReadOnlyList<LossRow> rows, double top, Func<LossRow, string> named)
    {
        Top = top;
        var y = 0.0;
        var placed = new List<PlacedLoss>();
        foreach (var row in rows)
        {
            y += 4;
            var number = $"{LossWords.Percent(row.OverallRate)}, {row.Lost} of {row.AtRisk}{(row.Over ? "" : " so far")}";
            var name = named(row);
            var fits = Lettering.Width(name, PlacedLabel.Size, bold: true) + Lettering.Width(number, PlacedLabel.Size) + 10 <= Right - Left;
            IReadOnlyList<PlacedLabel> lines = [.. Lettering.Lines(name, Right - Left, PlacedLabel.Size, bold: true).Select((line, i) => new PlacedLabel(Left, y + (Line * (i + 1)), line, "start"))];
            if (!fits) y += Line * lines.Count;
            placed.Add(new PlacedLoss(lines, fits ? new PlacedLabel(Right, y + Line, number, "end") : new PlacedLabel(Left, y + Line, number, "start"), y + Line + 4 + Beside, row));
            y += Line + 4 + Beside + Thick + Beside + 6;
        }

        Rows = placed;
        Bottom = y + 2;
        Height = Bottom + 20;
        var step = top <= 0.2 ? 0.05 : top <= 0.3 ? 0.1 : top <= 0.5 ? 0.1 : 0.25;
        Ticks = [.. Enumerable.Range(0, (int)Math.Round(top / step) + 1).Select(i => i * step)
            .Select(share => new PlacedLabel(X(share), Bottom + 15, LossWords.Percent((decimal)share), share == 0 ? "start" : share >= top - 1e-9 ? "end" : "middle"))];
    }

    /// <summary>The share at the right edge.</summary>
    public double Top { get; }

    public IReadOnlyList<PlacedLoss> Rows { get; }

    /// <summary>The lower edge of the plot, below which the numbers of the scale stand.</summary>
    public double Bottom { get; }

    public double Height { get; }

    public IReadOnlyList<PlacedLabel> Ticks { get; }

    /// <summary>A scale that holds all that is drawn of some rows.</summary>
    public static double TopOf(IEnumerable<LossRow> rows)
    {
        var most = rows.SelectMany(row => new[] { row.OverallWilsonUpper, row.OverallClusteredUpper ?? 0, row.AverageRate }).DefaultIfEmpty(0).Max();
        return Tops.First(top => top >= (double)most || top == 1);
    }

    /// <summary>Where a share stands.</summary>
    public double X(double share) => Left + ((Right - Left) * Math.Clamp(share / Top, 0, 1));

    /// <inheritdoc cref="X(double)"/>
    public double X(decimal share) => X((double)share);
}
