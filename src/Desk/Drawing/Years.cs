using ColonyLineage.Projections;
namespace ColonyLineage.Desk.Drawing;

/// <summary>A time from one day to another, to be drawn as a band.</summary>
/// <param name="Key">Its short key, as in the table beneath.</param>
/// <param name="GoneFrom">The first day on which it can have ended; null while it lasts.</param>
/// <param name="GoneTo">The last day on which it can have ended; null while it lasts.</param>
public sealed record Band(string Key, string Label, string Path, DateOnly From, DateOnly? GoneFrom, DateOnly? GoneTo);

/// <summary>Something that was done or seen on a day.</summary>
public sealed record Sign(DateOnly Day, string Said, Entries.EntryId Entry);

/// <summary>A band in its place. <paramref name="SureWidth"/> is the part in which it certainly lasted.</summary>
/// <param name="Caption">What is written in it; null where nothing fits.</param>
/// <param name="KeyAbove">Where the key stands when the band is too narrow for it; null where it stands inside.</param>
public sealed record PlacedBand(Band Band, double X, double SureWidth, double Width, int Lane, string? Caption, double? KeyAbove);

/// <summary>Signs that lie so near to each other that they share one mark.</summary>
public sealed record PlacedSign(double X, IReadOnlyList<Sign> Signs);

/// <summary>Time from left to right, and what lies along it.</summary>
public sealed class Years
{
    private const double LeastYear = 150;
    private const double Together = 15;

    public Years(DateOnly from, DateOnly to, double width)
    {
        From = new DateOnly(from.Year, 1, 1);
        To = to > from ? to : from;
        var years = Math.Max(1, (To.DayNumber - From.DayNumber + 1) / 365.25);
        Width = Math.Max(width, years * LeastYear);
    }

    /// <summary>The first day drawn: a first of January.</summary>
    public DateOnly From { get; }

    /// <summary>The last day drawn.</summary>
    public DateOnly To { get; }

    /// <summary>The width of all of it.</summary>
    public double Width { get; }

    /// <summary>Where a day begins.</summary>
    public double X(DateOnly day) => Width * (Math.Clamp(day.DayNumber, From.DayNumber, To.DayNumber + 1) - From.DayNumber) / (To.DayNumber + 1 - From.DayNumber);

    /// <summary>The firsts of January, with the year.</summary>
    public IEnumerable<(int Year, double X)> Lines() => Enumerable.Range(From.Year, To.Year - From.Year + 1).Select(year => (year, X(new DateOnly(year, 1, 1))));

    /// <summary>Bands in lanes: no two of a lane overlap; the captions fit, and keys that do not fit inside stand above, side by side.</summary>
    public IReadOnlyList<PlacedBand> Place(IEnumerable<Band> bands, double size)
    {
        var ends = new List<double>();
        var keys = new List<double>();
        var placed = new List<PlacedBand>();
        foreach (var band in bands.OrderBy(band => band.From).ThenBy(band => band.Key, ByNumber.Order))
        {
            var x = X(band.From);
            // A band of a day or two is still to be seen.
            var width = Math.Max(3, (band.GoneTo is { } to ? X(to) : Width) - x);
            var sure = Math.Clamp((band.GoneFrom is { } sureTo ? X(sureTo) : Width) - x, 0, width);
            var lane = ends.FindIndex(end => end <= x + 0.5);
            if (lane < 0)
            {
                lane = ends.Count;
                ends.Add(0);
                keys.Add(double.MinValue);
            }

            ends[lane] = x + width;
            var full = $"{band.Key} · {band.Label}";
            var caption = Lettering.Width(full, size) + 10 <= width ? full : Lettering.Width(band.Key, size) + 8 <= width ? band.Key : null;
            double? above = null;
            if (caption is null)
            {
                var keyWidth = Lettering.Width(band.Key, size) + 6;
                above = Math.Min(Math.Max(x + (width / 2), keys[lane] + keyWidth), Width - (keyWidth / 2));
                keys[lane] = above.Value;
            }

            placed.Add(new PlacedBand(band, x, sure, width, lane, caption, above));
        }

        return placed;
    }

    /// <summary>Signs, the near ones together.</summary>
    public IReadOnlyList<PlacedSign> Place(IEnumerable<Sign> signs)
    {
        var placed = new List<PlacedSign>();
        var near = new List<Sign>();
        foreach (var sign in signs.OrderBy(sign => sign.Day))
        {
            if (near.Count > 0 && X(sign.Day) - X(near[0].Day) > Together) Close();
            near.Add(sign);
        }

        if (near.Count > 0) Close();
        return placed;

        void Close()
        {
            placed.Add(new PlacedSign((X(near[0].Day) + X(near[^1].Day)) / 2, [.. near]));
            near.Clear();
        }
    }
}
