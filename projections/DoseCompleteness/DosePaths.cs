using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.DoseCompleteness;

/// <summary>The doses of one course in one season along the paths by which bees came together.</summary>
/// <remarks>
/// A colony's bees at a place in the order of things depend on other colonies at earlier places only, so each colony's
/// timeline is walked once, as far as it was asked for, and never in a circle.
/// </remarks>
internal sealed class DosePaths(Books books, string course, int season)
{
    private readonly int _startMonth = books.Outfit.SeasonStartMonth;
    private readonly DateOnly _firstDay = Season.FirstDay(season, books.Outfit.SeasonStartMonth);
    private readonly Dictionary<ColonyId, Timeline> _timelines = [];

    /// <summary>The least treated path of a colony's bees at the end of the season, or at the colony's own end within it.</summary>
    public Path Of(ColonyId colony) => Before(colony, new Place(Season.FirstDay(season + 1, _startMonth), 0, default));

    /// <summary>The least treated path of a colony's bees just before a place in the order of things.</summary>
    public Path Before(ColonyId colony, Place at)
    {
        // Nothing before the season weighs anything.
        if (at.Day < _firstDay) return Path.Nothing(colony);
        if (!_timelines.TryGetValue(colony, out var timeline)) _timelines.Add(colony, timeline = new Timeline(books.Colony(colony), _firstDay));
        for (; timeline.Next < timeline.Entries.Count && Place.Of(timeline.Entries[timeline.Next]) < at; timeline.Next++)
            Step(timeline, timeline.Entries[timeline.Next]);
        return timeline.Before(at);
    }

    private void Step(Timeline timeline, Entry entry)
    {
        var colony = timeline.Colony;
        var at = Place.Of(entry);
        var path = timeline.Now;
        var next = entry switch
        {
            Treated treated => path is not null && Counts(treated) ? path.With(treated) : path,
            _ => Joining.From(entry, colony) is { } from ? Path.Less(path, Before(from, at).Then(colony, entry)) : path,
        };
        if (!ReferenceEquals(next, path)) timeline.Set(at, next!);
    }

    private bool Counts(Treated treated) => treated.Course == course && Season.Of(treated.On.Day, _startMonth) == season;

    /// <summary>How far a colony's entries were walked, and its least treated path after each of them that changed it.</summary>
    private sealed class Timeline
    {
        private readonly List<(Place At, Path Path)> _levels = [];

        public Timeline(ColonyCard colony, DateOnly firstDay)
        {
            Colony = colony.Colony;
            Entries = colony.Counted;
            // Nothing before the season weighs anything, so the walk begins with it.
            Next = InSeason.First(Entries, firstDay);
            // A colony that was made has no bees before its makers gave them.
            var made = colony.Joinings.Any(entry => entry is SplitFrom);
            Now = made && colony.Joinings[0].On.Day >= firstDay ? null : Path.Nothing(Colony);
            Start = Now;
        }

        public ColonyId Colony { get; }

        public IReadOnlyList<Entry> Entries { get; }

        public int Next { get; set; }

        public Path? Now { get; private set; }

        private Path? Start { get; }

        public void Set(Place at, Path path)
        {
            Now = path;
            _levels.Add((at, path));
        }

        public Path Before(Place at)
        {
            for (var i = _levels.Count - 1; i >= 0; i--)
                if (_levels[i].At < at)
                    return _levels[i].Path;
            return Start ?? Path.Nothing(Colony);
        }
    }
}
