using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>
/// The answers worked out a second time, slowly and plainly, from the words of the questions alone: loops over one list of entries.
/// Nothing here is shared with the folds that it is to judge.
/// </summary>
public sealed partial class OracleBooks
{
    private readonly List<Entry> _standing = [];
    private readonly Dictionary<ColonyId, OracleColony> _colonies = [];

    public OracleBooks(IEnumerable<Recorded> recorded, DateOnly? asOf, DateTimeOffset? knownAt)
    {
        var known = new List<Entry>();
        foreach (var (entry, at) in recorded)
            if ((knownAt is null || at <= knownAt) && !known.Exists(other => other.Id == entry.Id))
                known.Add(entry);
        foreach (var entry in known)
        {
            if (entry is Voided || (asOf is not null && entry.On.Day > asOf)) continue;
            if (known.Exists(other => other is Voided voided && voided.Entry == entry.Id)) continue;
            var place = _standing.FindIndex(other => Before(entry, other));
            _standing.Insert(place < 0 ? _standing.Count : place, entry);
        }
    }

    public IReadOnlyList<Entry> Standing => _standing;

    /// <summary>The law of order: by day, by the order within the day, by the text of the id.</summary>
    public static bool Before(Entry one, Entry other)
    {
        if (one.On.Day != other.On.Day) return one.On.Day < other.On.Day;
        if (one.Order != other.Order) return one.Order < other.Order;
        return string.CompareOrdinal(one.Id.ToString(), other.Id.ToString()) < 0;
    }

    /// <summary>All colonies that any standing entry names.</summary>
    public List<ColonyId> AllColonies()
    {
        var all = new List<ColonyId>();
        foreach (var entry in _standing)
            foreach (var colony in ColoniesIn(entry))
                if (!all.Contains(colony))
                    all.Add(colony);
        return all;
    }

    /// <summary>All queens that any standing entry names.</summary>
    public List<QueenId> AllQueens()
    {
        var all = new List<QueenId>();
        foreach (var entry in _standing)
            foreach (var queen in QueensIn(entry))
                if (!all.Contains(queen))
                    all.Add(queen);
        return all;
    }

    public OracleColony Colony(ColonyId id)
    {
        if (!_colonies.TryGetValue(id, out var colony)) _colonies.Add(id, colony = new OracleColony(id, _standing));
        return colony;
    }

    public int SeasonStart()
    {
        var month = 3;
        foreach (var entry in _standing)
            if (entry is OutfitDescribed { SeasonStartMonth: { } said })
                month = said;
        return month;
    }

    public static int SeasonOf(DateOnly day, int startMonth)
    {
        var season = day.Year;
        if (day < new DateOnly(season, startMonth, 1)) season--;
        return season;
    }

    public string NameOf(ColonyId colony) => Colony(colony).Began?.Number ?? "colony " + Tail(colony.Value);

    public string NameOf(YardId yard)
    {
        string? name = null;
        foreach (var entry in _standing)
            if (entry is YardOpened opened && opened.Yard == yard) name = opened.Name;
            else if (entry is YardDescribed { Name: { } said } described && described.Yard == yard) name = said;
        return name ?? "yard " + Tail(yard.Value);
    }

    public string NameOf(QueenId queen)
    {
        string? name = null;
        foreach (var entry in _standing)
            if (entry is QueenRaised { Name: { } raised } r && r.Queen == queen) name = raised;
            else if (entry is QueenBought { Name: { } bought } b && b.Queen == queen) name = bought;
        return name ?? "queen " + Tail(queen.Value);
    }

    public string NameOf(Spot spot) => NameOf(spot.Yard) + " " + spot.Number;

    private static string Tail(Guid id) => id.ToString().Substring(30);

    /// <summary>The colonies that an entry names, read off its fields.</summary>
    public static IEnumerable<ColonyId> ColoniesIn(Entry entry)
    {
        if (entry is ColonyEntry own) yield return own.Colony;
        if (entry is Combined combined) yield return combined.Into;
        if (entry is SplitFrom split) yield return split.Into;
        if (entry is FramesMoved frames) yield return frames.To;
        if (entry is QueenIntroduced introduced) yield return introduced.Colony;
        if (entry is QueenAccepted accepted) yield return accepted.Colony;
        if (entry is QueenBanked { Colony: { } keeper }) yield return keeper;
        if (entry is QueenEnded { Colony: { } last }) yield return last;
        if (entry is OwedEntry { Colony: { } owing }) yield return owing;
    }

    /// <summary>The queens that an entry names, read off its fields.</summary>
    public static IEnumerable<QueenId> QueensIn(Entry entry)
    {
        if (entry is QueenEntry own) yield return own.Queen;
        if (entry is ColonyEstablished { Queen: { } with }) yield return with;
        if (entry is Combined { QueenKept: { } kept }) yield return kept;
        if (entry is FoundQueenless { Queen: { } gone }) yield return gone;
        if (entry is QueenCaged { Queen: { } caged }) yield return caged;
        if (entry is QueenReleased { Queen: { } released }) yield return released;
        if (entry is QueenKilled { Queen: { } killed }) yield return killed;
        if (entry is QueenCellGiven cell) yield return cell.Queen;
        if (entry is Requeened requeened)
        {
            yield return requeened.Queen;
            if (requeened.Old is { } old) yield return old;
        }

        if (entry is SupersedureSeen seen)
        {
            yield return seen.Queen;
            if (seen.Old is { } old) yield return old;
        }

        if (entry is QueenRaised { Mother: { } mother }) yield return mother;
        if (entry is QueenBought { Mother: { } dam }) yield return dam;
        if (entry is QueenMated mated)
            foreach (var drone in mated.Drones)
                yield return drone;
        if (entry is LineStarted line) yield return line.Breeder;
    }
}
