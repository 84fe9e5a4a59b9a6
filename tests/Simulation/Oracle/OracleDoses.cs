using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>One way by which bees came into a colony.</summary>
/// <param name="Colonies">The colonies along it, oldest first.</param>
/// <param name="Steps">The joinings and doses along it.</param>
public sealed record OraclePath(List<ColonyId> Colonies, List<Entry> Steps)
{
    public decimal Doses
    {
        get
        {
            var sum = 0m;
            foreach (var step in Steps)
                if (step is Treated dose)
                    sum += dose.Doses;
            return sum;
        }
    }
}

/// <summary>The doses of one colony, course and season, as the oracle has them.</summary>
public sealed class OracleDoseRow
{
    public required ColonyId Colony { get; init; }
    public required string Course { get; init; }
    public required int Season { get; init; }
    public Spot? At { get; init; }
    public DateOnly? Ended { get; init; }
    public CourseDefined? Defined { get; init; }
    public required decimal Had { get; init; }

    /// <summary>All paths with the fewest doses: any of them may be named.</summary>
    public required List<OraclePath> Least { get; init; }

    /// <summary>Doses along the least treated frames that were brought in; null where none came.</summary>
    public decimal? Frames { get; init; }

    /// <summary>The frames with that few.</summary>
    public required List<FramesMoved> LeastFrames { get; init; }
}

/// <summary>Dose completeness: every path is written out, its doses are added up, and the least of the sums counts.</summary>
public sealed partial class OracleBooks
{
    public List<OracleDoseRow> Doses()
    {
        var rows = new List<OracleDoseRow>();
        foreach (var colony in AllColonies())
            foreach (var (course, season) in Given(colony))
                rows.Add(DoseRow(colony, course, season));
        return rows;
    }

    private OracleDoseRow DoseRow(ColonyId id, string course, int season)
    {
        var colony = Colony(id);
        var first = new DateOnly(season, SeasonStart(), 1);
        var paths = Paths(id, course, first, entry => entry.On.Day < first.AddYears(1));
        var had = Least(paths);
        var framesHad = new List<(FramesMoved Frames, decimal Had)>();
        foreach (var entry in colony.Counted)
        {
            if (entry is not FramesMoved { Of: FramesOf.Brood or FramesOf.Bees } frames || frames.To != id || SeasonOf(frames.On.Day, SeasonStart()) != season) continue;
            var sum = Least(Paths(frames.Colony, course, first, other => Before(other, frames)));
            foreach (var dose in colony.Counted)
                if (dose is Treated treated && Of(treated, course, first) && Before(frames, treated))
                    sum += treated.Doses;
            framesHad.Add((frames, sum));
        }

        decimal? least = null;
        foreach (var (_, sum) in framesHad)
            if (least is null || sum < least)
                least = sum;
        CourseDefined? defined = null;
        foreach (var entry in _standing)
            if (entry is CourseDefined definition && definition.Course == course)
                defined = definition;
        return new OracleDoseRow
        {
            Colony = id, Course = course, Season = season, At = colony.Standing?.Spot, Ended = colony.End?.On.Day, Defined = defined, Had = had,
            Least = paths.FindAll(path => path.Doses == had),
            Frames = least, LeastFrames = [.. framesHad.Where(frames => frames.Had == least).Select(frames => frames.Frames)],
        };
    }

    private static decimal Least(List<OraclePath> paths)
    {
        var least = paths[0].Doses;
        foreach (var path in paths)
            if (path.Doses < least)
                least = path.Doses;
        return least;
    }

    private static bool Of(Treated dose, string course, DateOnly first) => dose.Course == course && dose.On.Day >= first && dose.On.Day < first.AddYears(1);

    /// <summary>All ways back from a colony, as it was after the entries that are early enough, to where its bees were at the first day.</summary>
    private List<OraclePath> Paths(ColonyId id, string course, DateOnly first, Predicate<Entry> early)
    {
        var paths = new List<OraclePath>();
        var made = false;
        var longAgo = false;
        foreach (var entry in Colony(id).Counted)
        {
            if (entry is SplitFrom split && split.Into == id) made = true;
            if (!early(entry) || CameFrom(entry, id) is not { } from) continue;
            if (entry.On.Day < first)
            {
                longAgo = true;
                continue;
            }

            foreach (var before in Paths(from, course, first, other => Before(other, entry)))
                paths.Add(new OraclePath([.. before.Colonies, id], [.. before.Steps, entry, .. Since(id, course, first, early, entry)]));
        }

        // Bees of its own: those of a colony that was not made of others, and those that were in it when the season began.
        if (!made || longAgo) paths.Add(new OraclePath([id], Since(id, course, first, early, null)));
        if (paths.Count == 0) paths.Add(new OraclePath([id], []));
        if (paths.Count > 100_000) throw new InvalidOperationException("More paths than anybody can write out.");
        return paths;
    }

    private List<Entry> Since(ColonyId id, string course, DateOnly first, Predicate<Entry> early, Entry? since)
    {
        var doses = new List<Entry>();
        foreach (var entry in Colony(id).Counted)
            if (entry is Treated dose && Of(dose, course, first) && early(entry) && (since is null || Before(since, entry)))
                doses.Add(entry);
        return doses;
    }

    private static ColonyId? CameFrom(Entry entry, ColonyId id)
    {
        if (entry is SplitFrom split && split.Into == id) return split.Colony;
        if (entry is Combined combined && combined.Into == id) return combined.Colony;
        return null;
    }

    /// <summary>The courses and seasons in which it, or bees that came into it in that season, had a dose.</summary>
    private List<(string Course, int Season)> Given(ColonyId id)
    {
        var given = new List<(string, int)>();
        foreach (var entry in Colony(id).Counted)
        {
            if (entry is Treated own && !given.Contains((own.Course, SeasonOf(own.On.Day, SeasonStart())))) given.Add((own.Course, SeasonOf(own.On.Day, SeasonStart())));
            if (CameFrom(entry, id) is not { } from) continue;
            var season = SeasonOf(entry.On.Day, SeasonStart());
            foreach (var course in Brought(from, entry, new DateOnly(season, SeasonStart(), 1)))
                if (!given.Contains((course, season)))
                    given.Add((course, season));
        }

        return given;
    }

    private List<string> Brought(ColonyId from, Entry by, DateOnly first)
    {
        var courses = new List<string>();
        foreach (var entry in Colony(from).Counted)
        {
            if (entry.On.Day < first || !Before(entry, by)) continue;
            if (entry is Treated dose) courses.Add(dose.Course);
            if (CameFrom(entry, from) is { } further) courses.AddRange(Brought(further, entry, first));
        }

        return courses;
    }
}
