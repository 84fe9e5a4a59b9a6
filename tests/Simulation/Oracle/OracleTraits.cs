using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>What was seen and measured of a queen's colony in one season, as the oracle has it.</summary>
public sealed class OracleTraitRow
{
    public required ColonyId Colony { get; init; }
    public required int Season { get; init; }
    public required QueenId? Queen { get; init; }

    /// <summary>The reign by which two queens that nobody named are told apart.</summary>
    public required OracleReign Reign { get; init; }

    /// <summary>What was seen, measured and dosed while she was there, in the order of things.</summary>
    public List<Entry> Seen { get; } = [];

    public Spot? At { get; set; }
    public (QueenId Mother, Certainty Sure)? Mother { get; set; }
    public string? Line { get; set; }
    public int? QueenAge { get; set; }
    public string? Maker { get; set; }
    public bool New { get; set; }
    public bool TakenOut { get; set; }
    public string? Treatments { get; set; }
    public decimal? FramesOfBees { get; set; }
    public decimal? Temper { get; set; }
    public decimal? BroodPattern { get; set; }
    public int PatternsTooSoon { get; set; }
    public decimal? HoneyKg { get; set; }
    public Washed? FirstWash { get; set; }
    public Washed? LastWash { get; set; }
    public bool DosedBetween { get; set; }

    /// <summary>Entries that the row cannot do without.</summary>
    public HashSet<EntryId> Rests { get; } = [];
}

/// <summary>Traits.</summary>
public sealed partial class OracleBooks
{
    public List<OracleTraitRow> Traits()
    {
        var rows = new List<OracleTraitRow>();
        foreach (var id in AllColonies())
        {
            var own = new List<OracleTraitRow>();
            foreach (var entry in Colony(id).Counted)
                if (Tells(entry) && ReignAt(id, entry) is { } reign)
                {
                    var season = SeasonOf(entry.On.Day, SeasonStart());
                    var row = own.Find(other => other.Season == season && (reign.Queen is null ? other.Reign == reign : other.Queen == reign.Queen));
                    if (row is null) own.Add(row = new OracleTraitRow { Colony = id, Season = season, Queen = reign.Queen, Reign = reign });
                    row.Seen.Add(entry);
                }

            // Where nothing but doses is known of a queen's season nothing was measured.
            own.RemoveAll(row => row.Seen.TrueForAll(entry => entry is Treated));
            foreach (var row in own) Measure(row);
            rows.AddRange(own);
        }

        return rows;
    }

    private static bool Tells(Entry entry)
    {
        if (entry is Inspected look) return look.FramesOfBees is not null || look.Temper is not null || look.BroodPattern is not null;
        return entry is Harvested or Washed or Treated;
    }

    /// <summary>The reign that an entry falls into: from her coming to her going, and not after she was set elsewhere.</summary>
    private OracleReign? ReignAt(ColonyId id, Entry entry)
    {
        foreach (var reign in Colony(id).Reigns)
            if (!Before(entry, reign.By) && (reign.Gone is null || Before(entry, reign.Gone)) && (reign.Queen is not { } queen || WhereAt(queen, entry).Colony == id))
                return reign;
        return null;
    }

    /// <summary>The colony that a queen was in when an entry had happened, and what set her there.</summary>
    private (ColonyId? Colony, Entry? By) WhereAt(QueenId queen, Entry at)
    {
        (ColonyId? Colony, Entry? By) where = default;
        foreach (var entry in _standing)
            if (!Before(at, entry) && WhereAfter(entry, queen, where.Colony) is var now && now != where.Colony)
                where = (now, entry);
        return where;
    }

    private void Measure(OracleTraitRow row)
    {
        var colony = Colony(row.Colony);
        var last = row.Seen[^1];
        foreach (var stay in colony.Stays)
            if (!Before(last, stay.Came))
                row.At = stay.Spot;
        // An opening count found it: nobody knows when it began.
        row.New = colony.Began is { } began && began.How != HowEstablished.OpeningCount && SeasonOf(began.On.Day, SeasonStart()) == row.Season;
        if (row.New) row.Rests.Add(colony.Began!.Id);
        row.Maker = MakerOf(row.Colony);
        EntryId? taken = null;
        foreach (var entry in colony.Counted)
            if (entry is TakenOut)
            {
                // A colony taken out is in no comparison, whatever the season.
                row.TakenOut = true;
                taken = entry.Id;
            }

        if (taken is { } why) row.Rests.Add(why);
        foreach (var entry in row.Seen)
        {
            row.Rests.Add(ReignAt(row.Colony, entry)!.By.Id);
            if (row.Queen is { } there) row.Rests.Add(WhereAt(there, entry).By!.Id);
        }

        row.Treatments = TreatmentsOf(colony, row);
        if (row.Queen is { } queen)
        {
            row.Mother = MotherOf(queen);
            row.Line = LineOf(queen);
            if (BirthOf(queen) is { } born && SeasonOf(born.From, SeasonStart()) == SeasonOf(born.To, SeasonStart())) row.QueenAge = row.Season - SeasonOf(born.To, SeasonStart());
        }

        Look(row, colony);
        Wash(row, colony);
        foreach (var entry in row.Seen)
            if (entry is Harvested { Honey: { } honey })
            {
                row.HoneyKg = (row.HoneyKg ?? 0) + (honey.Amount * honey.Unit switch { "kg" => 1m, "g" => 0.001m, "lb" => 0.45359237m, _ => 0.45359237m / 16 });
                row.Rests.Add(entry.Id);
            }

        if (row.HoneyKg is { } weighed) row.HoneyKg = Math.Round(weighed, 4);
    }

    private void Look(OracleTraitRow row, OracleColony colony)
    {
        var (bees, temper, pattern) = (new List<decimal>(), new List<decimal>(), new List<decimal>());
        foreach (var entry in row.Seen)
        {
            if (entry is not Inspected look) continue;
            if (look.FramesOfBees is { } frames) bees.Add(frames);
            if (look.Temper is { } mood) temper.Add(mood);
            if (look.BroodPattern is { } brood && !TooSoon(colony.Counted, look)) pattern.Add(brood);
            else if (look.BroodPattern is not null) row.PatternsTooSoon++;
            row.Rests.Add(look.Id);
        }

        (row.FramesOfBees, row.Temper, row.BroodPattern) = (Mean(bees), Mean(temper), Mean(pattern));
    }

    private static decimal? Mean(List<decimal> values)
    {
        if (values.Count == 0) return null;
        var sum = 0m;
        foreach (var value in values) sum += value;
        return Math.Round(sum / values.Count, 4);
    }

    private bool TooSoon(List<Entry> entries, Inspected look)
    {
        foreach (var entry in entries)
            if (entry is Treated dose && Before(dose, look) && Stops(dose.Course) is { } days && look.On.Day <= dose.On.Day.AddDays(days))
                return true;
        return false;
    }

    private static void Wash(OracleTraitRow row, OracleColony colony)
    {
        foreach (var entry in row.Seen)
            if (entry is Washed wash)
                if (row.FirstWash is null) row.FirstWash = wash;
                else row.LastWash = wash;
        if (row.FirstWash is { } first) row.Rests.Add(first.Id);
        if (row.LastWash is not { } last) return;
        row.Rests.Add(last.Id);
        foreach (var entry in colony.Counted)
            if (entry is Treated && Before(row.FirstWash!, entry) && Before(entry, last))
                row.DosedBetween = true;
    }

    /// <summary>The one colony that it was made of.</summary>
    private string? MakerOf(ColonyId id)
    {
        var makers = new List<ColonyId>();
        foreach (var entry in Colony(id).Counted)
            if (entry is SplitFrom split && split.Into == id && !makers.Contains(split.Colony))
                makers.Add(split.Colony);
        return makers.Count == 1 ? NameOf(makers[0]) : null;
    }

    /// <summary>The group of a trial goes before what it was given, under whichever queen of the season.</summary>
    private string? TreatmentsOf(OracleColony colony, OracleTraitRow row)
    {
        Noted? group = null;
        var courses = new List<string>();
        foreach (var entry in colony.Counted)
        {
            if (entry is Noted { About: "treatment group" } note) group = note;
            if (entry is not Treated dose || SeasonOf(dose.On.Day, SeasonStart()) != row.Season) continue;
            row.Rests.Add(dose.Id);
            if (!courses.Contains(dose.Course)) courses.Add(dose.Course);
        }

        if (group is not null) row.Rests.Add(group.Id);
        courses.Sort(StringComparer.Ordinal);
        return group?.Text ?? (courses.Count > 0 ? string.Join(" + ", courses) : null);
    }
}
