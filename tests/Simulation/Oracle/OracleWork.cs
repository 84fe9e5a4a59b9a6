using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>Something left open at a colony, as the oracle has it.</summary>
public sealed record OracleWorkRow(ColonyId Colony, string Work, Guid OpenedBy, DateOnly From, DateOnly? By, DateOnly? Until, int Visits, DateOnly? PutOffUntil, bool Closed);

/// <summary>
/// Owed work, by asking of each entry whether it opened something that no later entry closed: the table of the question, read line by line.
/// </summary>
public sealed partial class OracleBooks
{
    public List<OracleWorkRow> Work()
    {
        var rows = new List<OracleWorkRow>();
        foreach (var id in AllColonies())
        {
            var colony = Colony(id);
            if (colony.End is not null || colony.Counted.Count == 0) continue;
            foreach (var (work, by, from, dueBy, until) in Left(id, colony.Counted))
                if (Said(colony.Counted, work, by) is not { Closed: true })
                    rows.Add(new OracleWorkRow(id, work, by.Id.Value, from, dueBy, until, Visits(colony.Counted, by).Count, Said(colony.Counted, work, by)?.PutOff, false));
            foreach (var (work, opened) in SaidOfYards(colony.Counted))
            {
                var last = colony.Counted.OfType<OwedEntry>().Last(word => word.Work == work && word.Opened == opened);
                var said = Said(colony.Counted, work, opened)!.Value;
                rows.Add(new OracleWorkRow(id, work, opened.Value, last.On.Day, null, null, Visits(colony.Counted, last).Count, said.PutOff, said.Closed));
            }
        }

        return rows;
    }

    private List<(string Work, Entry By, DateOnly From, DateOnly? DueBy, DateOnly? Until)> Left(ColonyId id, List<Entry> entries)
    {
        var left = new List<(string, Entry, DateOnly, DateOnly?, DateOnly?)>();

        void Last(string work, Predicate<Entry> opens, Predicate<Entry> closes, int from, int? by)
        {
            Entry? open = null;
            foreach (var entry in entries)
                if (opens(entry)) open = entry;
                else if (closes(entry)) open = null;
            if (open is not null) left.Add((work, open, open.On.Day.AddDays(from), by is { } days ? open.On.Day.AddDays(days) : null, null));
        }

        bool Queened(Entry entry) => entry is Requeened or QueenIntroduced;
        bool Refused(Entry entry) => entry is QueenAccepted { Accepted: false } or FoundQueenless or QueenKilled;
        bool Came(Entry entry) => entry is QueenAccepted { Accepted: true } or SupersedureSeen;
        Last("transfer", entry => entry is ColonyEstablished { Housing: Housing.NucBox } begun && begun.Colony == id || entry is BoxesChanged { Housing: Housing.NucBox }, entry => entry is NucTransferred or BoxesChanged, 1, null);
        Last("laying", Queened, entry => Came(entry) || Refused(entry) || Lays(entry), 7, 21);
        Last("cell", entry => entry is QueenCellGiven, entry => Came(entry) || Refused(entry) || Queened(entry) || Lays(entry) || entry is Inspected { Queen: QueenFinding.VirginSeen }, 12, 28);
        Last("queenless", Refused, entry => Came(entry) || Queened(entry) || Lays(entry) || entry is QueenCellGiven || (entry is Combined { QueenKept: not null } kept && kept.Into == id), 0, 14);
        Last("combined", entry => entry is Combined combined && combined.Into == id, entry => entry is Inspected or NucTransferred or BoxesChanged, 7, 21);
        Entry? feeder = null;
        foreach (var entry in entries)
            if (entry is FeederTakenOff) feeder = null;
            else if (entry is FeederPutOn) feeder ??= entry;
        if (feeder is not null) left.Add(("feeder-off", feeder, feeder.On.Day.AddDays(7), feeder.On.Day.AddDays(28), null));
        if (Again(entries) is { } again) left.Add(again);
        if (Old(id, entries) is { } old) left.Add(old);
        SupplementGiven? supplement = null;
        foreach (var entry in entries)
            if (entry is SupplementGiven given) supplement = given;
        if (supplement is not null && Visits(entries, supplement) is { Count: > 0 } passed) left.Add(("supplement", supplement, passed[0].AddDays(1), null, supplement.On.Day.AddDays(60)));
        return left;
    }

    private (string, Entry, DateOnly, DateOnly?, DateOnly?)? Again(List<Entry> entries)
    {
        Inspected? doubt = null;
        foreach (var entry in entries)
            if (entry is Inspected look && Doubtful(look)) doubt = look;
            else if (entry is Requeened or QueenIntroduced or QueenCellGiven or QueenAccepted or FoundQueenless or QueenKilled or SupersedureSeen || (entry is Inspected good && (Lays(good) || good.BroodPattern is not null))) doubt = null;
        if (doubt is null) return null;
        var day = doubt.On.Day;
        DateOnly? soon = null;
        foreach (var entry in entries)
            if (entry is Treated dose && Before(dose, doubt) && Stops(dose.Course) is { } days && dose.On.Day.AddDays(days) >= day && (soon is null || dose.On.Day.AddDays(days) > soon))
                soon = dose.On.Day.AddDays(days);
        if (soon is { } until && doubt.BroodPattern <= 2) return ("queen-again", doubt, until.AddDays(1), until.AddDays(29), null);
        return ("queen-again", doubt, day.AddDays(14), day.AddDays(28), null);
    }

    private int? Stops(string course)
    {
        int? days = null;
        foreach (var entry in _standing)
            if (entry is CourseDefined defined && defined.Course == course)
                days = defined.BroodTooSoonDays;
        return days;
    }

    private (string, Entry, DateOnly, DateOnly?, DateOnly?)? Old(ColonyId id, List<Entry> entries)
    {
        var row = QueenRow(id, Colony(id));
        if (row.Queen is not { } queen || row.BornTo is not { } born || BirthOf(queen)?.By is not { } by) return null;
        var (month, day, seasons) = (10, 1, 2);
        foreach (var entry in _standing)
            if (entry is OutfitDescribed described)
            {
                if (described.WinterFrom is { } winter) (month, day) = (winter.Month, winter.Day);
                seasons = described.OldQueenSeasons ?? seasons;
            }

        DateOnly Next(DateOnly from)
        {
            for (var year = from.Year; ; year++)
                if (new DateOnly(year, month, day) >= from) return new DateOnly(year, month, day);
        }

        var due = Next(new DateOnly(SeasonOf(born, SeasonStart()) + seasons, SeasonStart(), 1));
        DateOnly? seen = null;
        foreach (var entry in entries)
            if (entry is QueenAccepted { Accepted: true } or SupersedureSeen || (entry is Inspected look && !Doubtful(look) && (Lays(look) || look.BroodPattern is not null)))
                seen = entry.On.Day;
        if (seen >= due.AddDays(-30)) due = Next(seen.Value.AddDays(31));
        return ("old-queen", by, due.AddDays(-30), due.AddDays(30), null);
    }

    private static bool Lays(Entry entry) => entry is Inspected look && (look.EggsSeen is true || look.Queen is QueenFinding.Seen or QueenFinding.Queenright);

    private static bool Doubtful(Inspected look)
    {
        if (look.Queen is QueenFinding.DroneLayer or QueenFinding.LayingWorkers or QueenFinding.Queenless) return true;
        if (look.Queen is QueenFinding.NotSeen && look.EggsSeen is not true) return true;
        if (look.BroodPattern is 1 or 2) return true;
        return look.EggsSeen is false && look.Queen is null;
    }

    private static List<DateOnly> Visits(List<Entry> entries, Entry since)
    {
        var days = new List<DateOnly>();
        foreach (var entry in entries)
            if (entry is not OwedEntry && entry.On.Day > since.On.Day && !days.Contains(entry.On.Day))
                days.Add(entry.On.Day);
        return days;
    }

    private static (bool Closed, DateOnly? PutOff)? Said(List<Entry> entries, string work, Entry by) => Said(entries, work, by.Id);

    private static (bool Closed, DateOnly? PutOff)? Said(List<Entry> entries, string work, EntryId opened)
    {
        (bool Closed, DateOnly? PutOff)? said = null;
        foreach (var entry in entries)
        {
            if (entry is not OwedEntry word || word.Work != work || word.Opened != opened) continue;
            said = (said?.Closed == true || word is WorkDoneElsewhere, word is WorkPutOff put ? put.Until : said?.PutOff);
        }

        return said;
    }

    private static List<(string Work, EntryId Opened)> SaidOfYards(List<Entry> entries)
    {
        var said = new List<(string, EntryId)>();
        foreach (var entry in entries)
            if (entry is OwedEntry { Work: "course" or "strips-out" } word && !said.Contains((word.Work, word.Opened)))
                said.Add((word.Work, word.Opened));
        return said;
    }
}
