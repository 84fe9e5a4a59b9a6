using ColonyLineage.Projections.Losses;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Desk.Drawing;

/// <summary>Ages from left to right, shares upwards: the frame of the curves of how long colonies and queens last.</summary>
public sealed class LastingPlot
{
    public const double Width = 340;
    public const double Left = 52;
    public const double Right = Width - 28;
    public const double Top = 14;
    public const double Bottom = 170;
    public const double Height = Bottom + 50;
    private const int MostTicks = 5;
    private static readonly double[] Steps = [30, 60, 90, 180, 365, 730, 1825];
    private static readonly double[] Tops = [0.1, 0.2, 0.5, 1];

    /// <param name="days">The last age drawn, in days.</param>
    /// <param name="top">The highest share drawn; it is rounded upwards.</param>
    public LastingPlot(double days, double top = 1)
    {
        // Ages of several years are written in years.
        var step = Steps.First(step => (days / step <= MostTicks && (step >= 365 || days <= 730)) || step == Steps[^1]);
        Days = step * Math.Max(1, Math.Ceiling(days / step));
        Highest = Tops.First(one => one >= top || one == 1);
        Ages = [.. Enumerable.Range(0, (int)Math.Round(Days / step) + 1).Select(i => i * step)];
        Shares = [.. Enumerable.Range(0, 5).Select(i => Highest * i / 4)];
    }

    /// <summary>The age at the right edge.</summary>
    public double Days { get; }

    /// <summary>The share at the upper edge.</summary>
    public double Highest { get; }

    /// <summary>The ages that are written, in days.</summary>
    public IReadOnlyList<double> Ages { get; }

    /// <summary>The shares that are written.</summary>
    public IReadOnlyList<double> Shares { get; }

    public double X(double days) => Left + ((Right - Left) * Math.Clamp(days / Days, 0, 1));

    public double Y(double share) => Bottom - ((Bottom - Top) * Math.Clamp(share / Highest, 0, 1));

    /// <summary>An age as it is written below the picture: '180', '2 years'.</summary>
    public string Age(double days) => Ages[1] % 365 != 0 ? $"{days:0}" : days == 0 ? "0" : LossWords.Age(days);

    /// <summary>How many lives were watched at an age; at its beginning those that were watched from there.</summary>
    public static int WatchedAt(IReadOnlyList<Life> lives, double age) => lives.Count(life => (life.Entry < age || (age == 0 && life.Entry == 0)) && age <= life.Exit);

    /// <summary>A line that falls or rises in steps; it begins at an age of 0.</summary>
    /// <param name="steps">Each age with the share from there on.</param>
    /// <param name="to">The age at which it ends.</param>
    public string Stairs(double first, IEnumerable<(double Days, double Share)> steps, double to)
    {
        var path = new System.Text.StringBuilder($"M{Svg.N(X(0))} {Svg.N(Y(first))}");
        foreach (var (days, share) in steps) path.Append($"H{Svg.N(X(days))}V{Svg.N(Y(share))}");
        return path.Append($"H{Svg.N(X(to))}").ToString();
    }

    /// <summary>The field between two lines of steps at the same ages.</summary>
    public string Field(IReadOnlyList<(double Days, double Lower, double Upper)> steps, double lower, double upper, double to)
    {
        var path = new System.Text.StringBuilder(Stairs(upper, steps.Select(step => (step.Days, step.Upper)), to));
        var last = steps.Count > 0 ? steps[^1].Lower : lower;
        path.Append($"V{Svg.N(Y(last))}");
        for (var i = steps.Count - 1; i >= 0; i--) path.Append($"H{Svg.N(X(steps[i].Days))}V{Svg.N(Y(i > 0 ? steps[i - 1].Lower : lower))}");
        return path.Append($"H{Svg.N(X(0))}Z").ToString();
    }

    /// <summary>The ends that exclude each other, one upon the other: of each way, at each age, from where to where it reaches.</summary>
    public static IReadOnlyList<(string How, IReadOnlyList<(double Days, double Lower, double Upper)> Steps)> Stacked(IReadOnlyList<EndedRow> ends)
    {
        var ways = new[] { "dead", "givenUp", "combined" }.Where(how => ends.Any(end => end.How == how)).ToList();
        var ages = ends.Select(end => (double)end.Days).Distinct().Order().ToList();
        var below = ages.Select(_ => 0.0).ToList();
        var stacked = new List<(string, IReadOnlyList<(double, double, double)>)>();
        foreach (var how in ways)
        {
            var steps = new List<(double, double, double)>();
            var (of, at, share) = (ends.Where(end => end.How == how).OrderBy(end => end.Days).ToList(), 0, 0.0);
            for (var i = 0; i < ages.Count; i++)
            {
                while (at < of.Count && (double)of[at].Days <= ages[i]) share = (double)of[at++].Share;
                steps.Add((ages[i], below[i], below[i] + share));
                below[i] += share;
            }

            stacked.Add((how, steps));
        }

        return stacked;
    }
}
