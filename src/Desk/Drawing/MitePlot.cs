using ColonyLineage.Projections;
using ColonyLineage.Projections.MiteWatch;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Desk.Drawing;

/// <summary>A wash in its place. <paramref name="High"/> and <paramref name="Low"/> are the ends of its own interval; null where it had more mites than bees.</summary>
public sealed record PlacedWash(double X, double Y, double? High, double? Low, WashRow Wash);

/// <summary>A round in its place: a bar from its mean up to its upper limit, as wide as its washes.</summary>
/// <param name="GoesOn">The upper limit lies above the picture.</param>
public sealed record PlacedRound(double X, double Width, double Mean, double Upper, bool GoesOn, RoundRow Round);

/// <summary>The doses of days that lie so near to each other that they share one mark. Without a label where there is no room for it.</summary>
public sealed record PlacedDose(double X, IReadOnlyList<DateOnly> Days, PlacedLabel? Label);

/// <summary>A text in its place, by its baseline.</summary>
/// <param name="Anchor"><c>start</c>, <c>middle</c> or <c>end</c>.</param>
public sealed record PlacedLabel(double X, double Y, string Said, string Anchor)
{
    /// <summary>The size of all letters of the picture.</summary>
    public const double Size = 12;

    public double Left => Anchor switch { "end" => X - Width, "middle" => X - (Width / 2), _ => X };

    public double Right => Left + Width;

    private double Width => Lettering.Width(Said, Size);

    /// <summary>Whether two labels would touch.</summary>
    public bool Touches(PlacedLabel other) => Covers(other.Left, other.Right, other.Y - Size, other.Y);

    /// <summary>Whether it stands over some part of a field.</summary>
    public bool Covers(double left, double right, double top, double bottom) => Left < right && left < Right && Y - Size < bottom && top < Y;
}

/// <summary>What several plots have in common, so that they can be compared: the days from left to right, the mites per 100 bees upwards.</summary>
/// <param name="From">The first day drawn: the first of a month.</param>
/// <param name="To">The last day drawn: the last of a month.</param>
/// <param name="Top">Mites per 100 bees at the upper edge.</param>
/// <param name="Threshold">The outfit's threshold, mites per 100 bees.</param>
public sealed record MiteFrame(DateOnly From, DateOnly To, double Top, double Threshold)
{
    private const int LeastMonths = 3;
    private const int DoseBefore = 90;

    /// <summary>The scale upwards is of square roots: a few high washes would press all others down to nothing.</summary>
    public bool Roots => Top > 2.5 * Threshold;

    /// <summary>A frame that holds all washes. There is one at least.</summary>
    public static MiteFrame Around(IReadOnlyList<WashRow> washes, IReadOnlyList<RoundRow> rounds, decimal threshold)
    {
        // A dose a good while before the first wash is drawn as well: it is what that wash tells of.
        var first = washes.Min(wash => wash.DaysSinceDose is >= 0 and <= DoseBefore and var days ? wash.On.AddDays(-days) : wash.On);
        var last = washes.Max(wash => wash.On);
        var from = new DateOnly(first.Year, first.Month, 1);
        var end = new DateOnly(last.Year, last.Month, 1).AddMonths(1);
        if (end < from.AddMonths(LeastMonths)) end = from.AddMonths(LeastMonths);
        var most = (double)Math.Max(washes.Max(wash => wash.Per100Bees), threshold);
        var limits = rounds.Select(round => (double)round.UpperPer100).Concat(washes.Select(wash => 100 * MitePlot.Interval(wash)?.Upper ?? 0));
        // The limit of a single small wash may lie anywhere above: it must not press the washes themselves down.
        var top = Math.Max(1.1 * most, Math.Max(1.6 * (double)threshold, Math.Min(1.05 * limits.Max(), 2 * most)));
        return new MiteFrame(from, end.AddDays(-1), top, (double)threshold);
    }
}

/// <summary>The washes of one yard in a season: where everything stands in a picture of a given width.</summary>
public sealed class MitePlot
{
    /// <summary>The width that fits a phone.</summary>
    public const double Narrow = 340;

    /// <summary>The width of a plot that has a desk's screen for itself.</summary>
    public const double Broad = 860;

    public const double Height = 250;

    /// <summary>Half of what a wash is wide.</summary>
    public const double Dot = 3.5;

    /// <summary>Where the numbers upwards end and the plot begins.</summary>
    public const double Left = 30;

    /// <summary>The upper edge of the plot.</summary>
    public const double Top = 24;

    /// <summary>The lower edge of the plot, at no mites.</summary>
    public const double Bottom = Height - 44;

    private const double RightMargin = 8;
    private const double Inset = Dot + 1;
    private const double MostAround = 6;
    private const double Apart = (2 * Dot) + 1;
    private const double MostAside = 18;
    private const double Together = 15;
    private const double LeastBetween = 20;
    private static readonly double[] Steps = [0.5, 1, 2, 5, 10, 20, 50, 100];

    // Where roots leave no room for all, the rounder numbers come first.
    private static readonly double[] RootNumbers = [0, 10, 1, 100, 5, 2, 20, 50, 0.5, 3, 30, 7, 15, 70, 200, 500];

    public MitePlot(MiteFrame frame, IReadOnlyList<WashRow> washes, IReadOnlyList<RoundRow> rounds, double width)
    {
        Frame = frame;
        Width = width;
        // Neighbouring rounds stay apart: first their bars become narrow, then their washes stay on their day.
        var room = rounds.Zip(rounds.Skip(1), (before, after) => (X(after.From) - X(before.To)) / 2).Append(double.PositiveInfinity).Min() - Dot - 0.5;
        var around = Math.Clamp(room, 0.5, MostAround);
        Washes = Place(washes, Math.Clamp(room - around, 0, MostAside));
        Rounds = [.. rounds.Select(round => Place(round, around))];
        Doses = Place([.. washes.Where(wash => wash.DaysSinceDose is not null).Select(wash => wash.On.AddDays(-wash.DaysSinceDose!.Value)).Where(day => day >= frame.From && day <= frame.To).Distinct().Order()]);
        Numbers = [.. NumbersUpwards().Select(number => new PlacedLabel(Left - 5, Y(number) + 4, Text.Number((decimal)number), "end"))];
        Threshold = PlaceThreshold();
        (Months, MonthLines) = PlaceMonths();
    }

    public MiteFrame Frame { get; }

    public double Width { get; }

    /// <summary>The right edge of the plot.</summary>
    public double Right => Width - RightMargin;

    public IReadOnlyList<PlacedWash> Washes { get; }

    public IReadOnlyList<PlacedRound> Rounds { get; }

    /// <summary>The last days, before a wash, on which a washed colony had a dose.</summary>
    public IReadOnlyList<PlacedDose> Doses { get; }

    /// <summary>The numbers upwards, each at its height.</summary>
    public IReadOnlyList<PlacedLabel> Numbers { get; }

    /// <summary>What is written at the line of the threshold, where it covers least.</summary>
    public PlacedLabel Threshold { get; }

    /// <summary>The names of the months, as many as there is room for.</summary>
    public IReadOnlyList<PlacedLabel> Months { get; }

    /// <summary>Where a month begins.</summary>
    public IReadOnlyList<double> MonthLines { get; }

    /// <summary>What is written above the numbers.</summary>
    public PlacedLabel Unit { get; } = new(4, 12, "mites per 100 bees", "start");

    /// <summary>All that is written.</summary>
    public IEnumerable<PlacedLabel> Labels => [Unit, Threshold, .. Numbers, .. Months, .. Doses.Select(dose => dose.Label).OfType<PlacedLabel>()];

    /// <summary>Where the middle of a day stands.</summary>
    public double X(DateOnly day)
    {
        var days = Frame.To.DayNumber - Frame.From.DayNumber + 1;
        return Left + Inset + ((Right - Left - (2 * Inset)) * (Math.Clamp(day.DayNumber - Frame.From.DayNumber, 0, days - 1) + 0.5) / days);
    }

    /// <summary>The height of a number of mites per 100 bees. What is higher than the picture stands at its edge.</summary>
    public double Y(double per100)
    {
        var share = Math.Clamp(per100 / Frame.Top, 0, 1);
        return Bottom - ((Bottom - Top) * (Frame.Roots ? Math.Sqrt(share) : share));
    }

    /// <summary>The interval of one wash, of 95 %, as a share: what chance in the cup alone does. Null where it had more mites than bees.</summary>
    public static (double Lower, double Upper)? Interval(WashRow wash) => wash.Mites > wash.Bees ? null : Proportion.Wilson(wash.Mites, wash.Bees);

    private static bool IsOf(WashRow wash, RoundRow round) => wash.On >= round.From && wash.On <= round.To;

    /// <summary>Washes of the same day and count step aside for each other, as far as there is room.</summary>
    private List<PlacedWash> Place(IReadOnlyList<WashRow> washes, double aside)
    {
        var placed = new List<PlacedWash>();
        foreach (var wash in washes.OrderBy(wash => wash.On).ThenBy(wash => wash.Per100Bees).ThenBy(wash => wash.Colony, ByNumber.Order).ThenBy(wash => wash.ColonyId.Value))
        {
            var (middle, y) = (X(wash.On), Y((double)wash.Per100Bees));
            var x = middle;
            for (var step = 0; (step + 1) / 2 * Apart <= aside; step++)
            {
                // By turns to the right and to the left: 0, 1, -1, 2, -2 dots.
                var at = middle + ((step + 1) / 2 * (step % 2 == 1 ? Apart : -Apart));
                if (at < Left + Dot || at > Right - Dot || placed.Any(other => Math.Abs(other.X - at) < 2 * Dot && Math.Abs(other.Y - y) < 2 * Dot)) continue;
                x = at;
                break;
            }

            var interval = Interval(wash);
            placed.Add(new PlacedWash(x, y, interval is { } high ? Y(100 * high.Upper) : null, interval is { } low ? Y(100 * low.Lower) : null, wash));
        }

        return placed;
    }

    private PlacedRound Place(RoundRow round, double around)
    {
        var xs = Washes.Where(wash => IsOf(wash.Wash, round)).Select(wash => wash.X).DefaultIfEmpty(X(round.From)).ToList();
        var from = Math.Max(Left, xs.Min() - Dot - around);
        var to = Math.Min(Right, xs.Max() + Dot + around);
        return new PlacedRound(from, to - from, Y((double)round.Per100Bees), Y((double)round.UpperPer100), (double)round.UpperPer100 > Frame.Top, round);
    }

    private List<PlacedDose> Place(IReadOnlyList<DateOnly> days)
    {
        var placed = new List<PlacedDose>();
        var groups = new List<List<DateOnly>>();
        foreach (var day in days)
            if (groups.Count > 0 && X(day) - X(groups[^1][0]) <= Together) groups[^1].Add(day);
            else groups.Add([day]);
        var written = Left;
        foreach (var (group, i) in groups.Select((group, i) => (group, i)))
        {
            var x = (X(group[0]) + X(group[^1])) / 2;
            var next = i + 1 < groups.Count ? X(groups[i + 1][0]) - 7 : Right;
            var after = new PlacedLabel(x + 7, Bottom + 15, "dose", "start");
            var before = after with { X = x - 7, Anchor = "end" };
            var label = after.Right <= next ? after : before.Left >= written ? before : null;
            written = Math.Max(x + 7, label?.Right ?? 0);
            placed.Add(new PlacedDose(x, group, label));
        }

        return placed;
    }

    private IEnumerable<double> NumbersUpwards()
    {
        if (!Frame.Roots)
        {
            var step = Steps.First(step => Y(0) - Y(step) >= LeastBetween || step == Steps[^1]);
            for (var number = 0.0; number <= Frame.Top; number += step) yield return number;
            yield break;
        }

        var chosen = new List<double>();
        foreach (var number in RootNumbers)
            if (number <= Frame.Top && chosen.All(other => Math.Abs(Y(other) - Y(number)) >= LeastBetween)) chosen.Add(number);
        foreach (var number in chosen.Order()) yield return number;
    }

    private PlacedLabel PlaceThreshold()
    {
        var label = new PlacedLabel(Left + 4, Y(Frame.Threshold) - 4, $"threshold {Text.Number((decimal)Frame.Threshold)}", "start");
        var places = (int)((Right - label.Right) / 10);
        return Enumerable.Range(0, Math.Max(1, places)).Select(step => label with { X = label.X + (10 * step) }).MinBy(Covered)!;
    }

    /// <summary>How much a label would cover: a wash weighs more than its interval or a round.</summary>
    private int Covered(PlacedLabel label) => (3 * Washes.Count(wash => label.Covers(wash.X - Dot, wash.X + Dot, wash.Y - Dot, wash.Y + Dot)))
        + Washes.Count(wash => wash is { High: { } high, Low: { } low } && label.Covers(wash.X - 1, wash.X + 1, high, low))
        + Rounds.Count(round => label.Covers(round.X, round.X + round.Width, round.Upper, round.Mean));

    private (IReadOnlyList<PlacedLabel> Labels, IReadOnlyList<double> Lines) PlaceMonths()
    {
        var labels = new List<PlacedLabel>();
        var lines = new List<double>();
        var half = (Right - Left - (2 * Inset)) / (Frame.To.DayNumber - Frame.From.DayNumber + 1) / 2;
        for (var month = Frame.From; month <= Frame.To; month = month.AddMonths(1))
        {
            lines.Add(X(month) - half);
            var label = new PlacedLabel((X(month) + X(month.AddMonths(1).AddDays(-1))) / 2, Height - 8, month.ToString("MMM", System.Globalization.CultureInfo.InvariantCulture), "middle");
            if (labels.Count == 0 || labels[^1].Right + 4 <= label.Left) labels.Add(label);
        }

        return (labels, lines);
    }
}
