using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>The outfit as it is in truth, the calendar of what is to come, and the pen that writes down what the crew reports.</summary>
internal sealed class World
{
    private readonly PriorityQueue<Action, (DateOnly Day, int Entered)> _calendar = new();
    private int _entered;
    private int _colonies;
    private int _nucs;

    public World(DemoOptions options, Chance chance, Pen pen)
    {
        (Options, Chance, Pen) = (options, chance, pen);
        Crew = [.. chance.FirstNames.Take(Math.Clamp(options.Colonies / 120, 3, 12))];
        Running = SeasonOf(options.Today);
        FirstSeason = Running - options.Seasons + 1;
        Season = FirstSeason;
    }

    public DemoOptions Options { get; }

    public Chance Chance { get; }

    public Pen Pen { get; }

    public IReadOnlyList<string> Crew { get; }

    /// <summary>The season that goes on today; the last one of the demo.</summary>
    public int Running { get; }

    public int FirstSeason { get; }

    /// <summary>The season that goes on in the story.</summary>
    public int Season { get; set; }

    /// <summary>Open yards.</summary>
    public List<DemoYard> Yards { get; } = [];

    /// <summary>The queens that lines are bred on from, by line; the first is where the line started.</summary>
    public List<DemoQueen>[] Breeders { get; } = [.. Places.Lines.Select(_ => new List<DemoQueen>())];

    public IEnumerable<DemoColony> Colonies => Yards.SelectMany(yard => yard.Colonies);

    public static int SeasonOf(DateOnly day) => day.Month >= 3 ? day.Year : day.Year - 1;

    /// <summary>A day of the season that goes on; January and February are its last months.</summary>
    public DateOnly Day(int month, int day) => new(month >= 3 ? Season : Season + 1, month, day);

    /// <summary>Something is to happen on a day. What would happen after the last day does not.</summary>
    public void On(DateOnly day, Action what)
    {
        if (day <= Pen.LastDay) _calendar.Enqueue(what, (day, _entered++));
    }

    /// <summary>Lets everything happen, day by day.</summary>
    public void Run()
    {
        while (_calendar.TryDequeue(out var what, out var when))
        {
            if (when.Day != Pen.Day) Pen.Turn(when.Day);
            what();
        }
    }

    /// <summary>A round: every yard once, a few on each day, another yard first each season. The yards that are open on the day count.</summary>
    public void Round(DateOnly from, int days, Action<DemoYard> visit)
    {
        for (var i = 0; i < days; i++)
        {
            var part = (i + (3 * Season)) % days;
            On(from.AddDays(i), () =>
            {
                foreach (var yard in Yards.Where(yard => yard.Index % days == part).ToList()) visit(yard);
            });
        }
    }

    /// <summary>Whose turn it is in a yard.</summary>
    public string CrewAt(DemoYard yard) => Crew[(yard.Index + (Pen.Day.DayNumber / 7)) % Crew.Count];

    public string NextColonyNumber() => $"{++_colonies}";

    public string NextNucNumber() => $"N{Season % 100:00}-{++_nucs:000}";

    public DemoQueen NewQueen(string? name, DateOnly born, DemoQueen? mother, int line = -1) =>
        new() { Id = new QueenId(Pen.NewId("queen")), Name = name, Born = born, Mother = mother, Line = line >= 0 ? line : mother?.Line ?? -1, LastSeen = born };

    /// <summary>Spots with nothing on them, in the order in which they stand.</summary>
    public static IEnumerable<string> Empty(DemoYard yard) => yard.Spots.Where(spot => !yard.On.ContainsKey(spot));
}
