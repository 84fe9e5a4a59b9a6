using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>A time on a spot.</summary>
public sealed class OracleStay
{
    public required Spot Spot { get; init; }
    public required bool Above { get; init; }
    public required Entry Came { get; init; }
    public Entry? Went { get; set; }
    public DateOnly? GoneFrom { get; set; }
    public DateOnly? GoneTo { get; set; }
}

/// <summary>A queen's time in a colony.</summary>
public sealed class OracleReign
{
    /// <summary>Null for a queen that nobody has named.</summary>
    public required QueenId? Queen { get; init; }
    public required string Came { get; init; }
    public required Entry By { get; init; }
    public required DateOnly From { get; init; }
    public required DateOnly To { get; init; }
    public Entry? Gone { get; set; }
}

/// <summary>One colony, told again from the first entry to the last.</summary>
public sealed class OracleColony
{
    private readonly ColonyId _id;
    private readonly List<QueenId> _cells = [];
    private OracleReign? _now;

    /// <summary>The last day on which a queen was seen here, came, or was known to be in the colony that began.</summary>
    private DateOnly? _sight;

    public OracleColony(ColonyId id, List<Entry> standing)
    {
        _id = id;
        var story = new List<Entry>();
        foreach (var entry in standing)
            foreach (var named in OracleBooks.ColoniesIn(entry))
                if (named == id && !story.Contains(entry))
                    story.Add(entry);
        foreach (var entry in story)
            if (Began is null && entry is ColonyEstablished established)
                Began = established;
        foreach (var entry in story)
        {
            if (End is not null) break;
            // What made it belongs to its beginning, though its order within the day may say 'before'.
            var madeIt = entry is SplitFrom split && split.Into == id && entry.On.Day == Began?.On.Day;
            if (Began is not null && OracleBooks.Before(entry, Began) && !madeIt) continue;
            Counted.Add(entry);
            if (Ends(entry)) End = entry;
        }

        Settle();
        Crown();
    }

    public ColonyEstablished? Began { get; }

    /// <summary>All that happened between its beginning and its end.</summary>
    public List<Entry> Counted { get; } = [];

    public Entry? End { get; }

    /// <summary>A dead-out died after it was last seen alive.</summary>
    public DateOnly EndFrom { get; private set; }

    public List<OracleStay> Stays { get; } = [];

    public List<OracleReign> Reigns { get; } = [];

    public OracleStay? Standing => End is null && Stays.Count > 0 ? Stays[Stays.Count - 1] : null;

    private bool Ends(Entry entry) => entry is FoundDead or Ended or Sold || (entry is Combined combined && combined.Colony == _id);

    private void Settle()
    {
        foreach (var entry in Counted)
        {
            if (entry is ColonyEstablished { At: { } at } established) Set(at, established.Above, entry);
            if (entry is Moved moved) Set(moved.To, moved.Above, entry);
        }

        if (End is null) return;
        EndFrom = End.On.Earliest;
        if (End is FoundDead && End.On.After is null && LastAlive() is { } alive && alive < End.On.Day) EndFrom = alive.AddDays(1);
        if (Stays.Count == 0) return;
        var last = Stays[Stays.Count - 1];
        (last.Went, last.GoneFrom, last.GoneTo) = (End, EndFrom, End.On.Day);
    }

    private void Set(Spot spot, bool above, Entry by)
    {
        if (Stays.Count > 0)
        {
            var before = Stays[Stays.Count - 1];
            (before.Went, before.GoneFrom, before.GoneTo) = (by, by.On.Earliest, by.On.Day);
        }

        Stays.Add(new OracleStay { Spot = spot, Above = above, Came = by });
    }

    /// <summary>Somebody saw live bees: looked in, washed, took or gave frames, handled a queen, set them into another box. A dose or feed from above tells nothing.</summary>
    private DateOnly? LastAlive()
    {
        DateOnly? day = null;
        foreach (var entry in Counted)
            if (entry is ColonyEstablished or Inspected or Washed or SplitFrom or FramesMoved or Combined or NucTransferred or TakenOut
                or Requeened or QueenIntroduced or QueenAccepted or QueenCellGiven or SupersedureSeen or QueenKilled or FoundQueenless or QueenCaged or QueenReleased)
                day = entry.On.Day;
        return day;
    }

    private void Crown()
    {
        foreach (var entry in Counted) Crown(entry);
        if (End is not null && _now is not null) _now.Gone = End;
    }

    private void Crown(Entry entry)
    {
        var day = entry.On.Day;
        switch (entry)
        {
            case ColonyEstablished established:
                _sight = day;
                if (established.Queen is { } with) Give(with, "WithColony", entry);
                else if (_now is null && established.How is not (HowEstablished.Split or HowEstablished.Nuc)) Start(null, "WithColony", entry, entry.On.Earliest, day);
                break;
            case Inspected look:
                var laying = look.Queen is QueenFinding.Seen or QueenFinding.Queenright || (look.Queen is null && look.EggsSeen is true);
                if (laying && _now is null)
                {
                    var since = Reigns.Count > 0 ? Reigns[Reigns.Count - 1].Gone!.On.Day : Began?.On.Day;
                    Start(null, "Found", entry, After(since, entry), day);
                }

                if (look.Queen == QueenFinding.Seen || look.MarkSeen is not null) _sight = day;
                break;
            case QueenCaged or QueenReleased:
                _sight = day;
                break;
            case Requeened requeened:
                Give(requeened.Queen, "Given", entry);
                break;
            case QueenIntroduced introduced:
                Give(introduced.Queen, "Given", entry);
                break;
            case QueenCellGiven cell:
                if (_now is null) Start(cell.Queen, "Cell", entry, entry.On.Earliest, day);
                else
                {
                    _cells.Clear();
                    _cells.Add(cell.Queen);
                }

                break;
            case QueenAccepted accepted when accepted.Accepted:
                Give(accepted.Queen, _cells.Contains(accepted.Queen) ? "Cell" : "Given", entry);
                _sight = day;
                break;
            case QueenAccepted refused:
                if (_now?.Queen == refused.Queen && _now is not null) Stop(entry);
                break;
            case SupersedureSeen seen:
                if (_now is not null && _now.Queen == seen.Queen) break;
                var from = seen.OldStillThere ? entry.On.Earliest : After(_sight, entry);
                Stop(entry);
                Start(seen.Queen, "Supersedure", entry, from, day);
                break;
            case QueenKilled or FoundQueenless:
                Stop(entry);
                break;
            case QueenEnded ended when _now is not null && _now.Queen == ended.Queen:
                Stop(entry);
                break;
            case QueenBanked banked when _now is not null && _now.Queen == banked.Queen:
                Stop(entry);
                break;
            case Combined { QueenKept: { } kept } combined when combined.Into == _id:
                Give(kept, "Combined", entry);
                break;
        }
    }

    /// <summary>A day becomes an interval that opens after something was last seen; an interval that a person gave stays.</summary>
    private static DateOnly After(DateOnly? seen, Entry entry) =>
        entry.On.After is null && seen is { } last && last < entry.On.Day ? last.AddDays(1) : entry.On.Earliest;

    private void Give(QueenId queen, string came, Entry by)
    {
        if (_now is not null && _now.Queen == queen) return;
        Stop(by);
        Start(queen, came, by, by.On.Earliest, by.On.Day);
    }

    private void Start(QueenId? queen, string came, Entry by, DateOnly from, DateOnly to)
    {
        _sight = to;
        _now = new OracleReign { Queen = queen, Came = came, By = by, From = from, To = to };
        _cells.Clear();
        Reigns.Add(_now);
    }

    private void Stop(Entry by)
    {
        if (_now is not null) _now.Gone = by;
        _now = null;
    }
}
