using System.Globalization;
using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>A column of a genealogy.</summary>
/// <param name="Key">What it is known by in an address; the same as long as the books tell the same.</param>
/// <param name="Title">What stands above it.</param>
/// <param name="Distance">How many columns from the one asked about; below 0 before it.</param>
/// <param name="Beyond">It stands for all columns that are further away, and is not opened.</param>
public sealed record KinColumn(string Key, string Title, int Distance, bool Beyond);

/// <summary>
/// All that came of one queen or colony, or that it came of, in columns: every link that is drawn leads from an earlier column to a later one, whatever
/// the books hold. What leads back (a ring that was wrongly entered; frames that went to and fro) is kept apart, to be said.
/// </summary>
public sealed class Genealogy
{
    /// <summary>As many columns as a person can follow; what is further away is counted in one box at the end.</summary>
    public const int MostColumns = 30;

    private Genealogy()
    {
    }

    /// <summary>What was asked.</summary>
    public required KinAsk Asked { get; init; }

    /// <summary>The one asked about.</summary>
    public required Relative Focal { get; init; }

    /// <summary>All that are drawn, the one asked about first, then the nearest.</summary>
    public required IReadOnlyList<Relative> All { get; init; }

    /// <summary>The columns from left to right.</summary>
    public required IReadOnlyList<KinColumn> Columns { get; init; }

    /// <summary>The column of each, from 0.</summary>
    public required IReadOnlyDictionary<Guid, int> ColumnOf { get; init; }

    /// <summary>Links from an earlier column to a later one.</summary>
    public required IReadOnlyList<LinkRow> Links { get; init; }

    /// <summary>Links that lead back, or stay in their column.</summary>
    public required IReadOnlyList<LinkRow> Back { get; init; }

    /// <summary>How many were found on the way asked for, living or not; the one asked about is not counted.</summary>
    public required int Found { get; init; }

    /// <summary>How many of those found live.</summary>
    public required int FoundLiving { get; init; }

    /// <summary>How many of those drawn no longer live and are drawn because they lead to one that does.</summary>
    public required int Between { get; init; }

    /// <summary>Works it out.</summary>
    /// <param name="graph">All links of the books.</param>
    /// <param name="focal">The one asked about.</param>
    /// <param name="ask">What is asked.</param>
    /// <param name="about">What is known of one.</param>
    public static Genealogy Of(Graph graph, Guid focal, KinAsk ask, Func<Guid, Relative> about)
    {
        var steps = Walk(graph, focal, ask, out var cameBy);
        var people = steps.Keys.ToDictionary(id => id, about);
        var kept = Kept(steps, people, cameBy, ask);
        var ids = kept.OrderBy(id => Math.Abs(steps[id])).ThenBy(id => people[id].Season).ThenBy(id => people[id].Name, Projections.ByNumber.Order).ThenBy(id => id).ToList();
        var among = ids.SelectMany(graph.From).Where(link => kept.Contains(link.ToId) && IsDrawn(link, steps, ask)).ToList();
        var births = among.Where(link => link.Link is LinkKind.Mother or LinkKind.Drones or LinkKind.Split).ToList();
        var keys = ask.Seasons ? BySeason(ids, births, people) : ByGeneration(ids, births, steps);
        var (columns, columnOf) = Columned(ids, keys, ask);
        bool Forward(LinkRow link) => columnOf[link.FromId] < columnOf[link.ToId];
        return new Genealogy
        {
            Asked = ask,
            Focal = people[focal],
            All = [.. ids.Select(id => people[id])],
            Columns = columns,
            ColumnOf = columnOf,
            Links = [.. among.Where(Forward)],
            Back = [.. among.Where(link => !Forward(link) && !(columnOf[link.FromId] == columnOf[link.ToId] && columns[columnOf[link.ToId]].Beyond))],
            Found = steps.Count - 1,
            FoundLiving = people.Values.Count(one => one.Alive && one.Id != focal),
            Between = ask.All ? 0 : ids.Count(id => steps[id] > 0 && !people[id].Alive),
        };
    }

    /// <summary>Steps from the one asked about, below 0 for what it came of; and the one by which each was come upon first.</summary>
    private static Dictionary<Guid, int> Walk(Graph graph, Guid focal, KinAsk ask, out Dictionary<Guid, Guid> cameBy)
    {
        var steps = new Dictionary<Guid, int> { [focal] = 0 };
        cameBy = [];
        var ways = new List<int>();
        if (ask.Way != KinWay.Up) ways.Add(1);
        if (ask.Way != KinWay.Down) ways.Add(-1);
        foreach (var way in ways)
        {
            var queue = new Queue<Guid>([focal]);
            while (queue.TryDequeue(out var here))
                foreach (var link in way > 0 ? graph.From(here) : graph.To(here))
                {
                    var there = way > 0 ? link.ToId : link.FromId;
                    if (!Follows(link.Link, way, ask) || !steps.TryAdd(there, steps[here] + way)) continue;
                    cameBy[there] = here;
                    queue.Enqueue(there);
                }
        }

        return steps;
    }

    // Downwards a queen's descendants are those through daughters, as on the page of the lineage; upwards her drones' mothers count as well.
    private static bool Follows(LinkKind kind, int way, KinAsk ask) => kind switch
    {
        LinkKind.Mother => ask.OfQueens,
        LinkKind.Drones => ask.OfQueens && way < 0,
        LinkKind.Split or LinkKind.Combined => !ask.OfQueens,
        _ => !ask.OfQueens && ask.Also,
    };

    private static bool IsDrawn(LinkRow link, Dictionary<Guid, int> steps, KinAsk ask) =>
        Follows(link.Link, 1, ask) || (link.Link == LinkKind.Drones && ask.OfQueens && (ask.Also || (steps[link.FromId] <= 0 && steps[link.ToId] <= 0)));

    /// <summary>Those that are drawn: all that it came of; of what came of it the living, and those through which the living came.</summary>
    private static HashSet<Guid> Kept(Dictionary<Guid, int> steps, Dictionary<Guid, Relative> people, Dictionary<Guid, Guid> cameBy, KinAsk ask)
    {
        var kept = new HashSet<Guid>(steps.Where(pair => ask.All || pair.Value <= 0).Select(pair => pair.Key));
        if (ask.All) return kept;
        foreach (var (id, step) in steps)
            if (step > 0 && people[id].Alive)
                for (var at = id; kept.Add(at) && cameBy.TryGetValue(at, out var before); at = before)
                {
                }

        return kept;
    }

    /// <summary>Generations from the one asked about: the longest way through births, so that a mother always stands before her daughter.</summary>
    private static Dictionary<Guid, (int, int)> ByGeneration(List<Guid> ids, List<LinkRow> births, Dictionary<Guid, int> steps)
    {
        var keys = new Dictionary<Guid, (int, int)>();
        foreach (var way in new[] { 1, -1 })
        {
            var here = ids.Where(id => steps[id] * way >= 0).ToList();
            var at = here.Select((id, i) => (id, i)).ToDictionary(pair => pair.id, pair => pair.i);
            int From(LinkRow link) => at[way > 0 ? link.FromId : link.ToId];
            int To(LinkRow link) => at[way > 0 ? link.ToId : link.FromId];
            // What leads to the one asked about leads back: a colony that was made from another and combined into it again stays where it is.
            var links = births.Where(link => at.ContainsKey(link.FromId) && at.ContainsKey(link.ToId) && To(link) != 0).ToList();
            var (order, cut) = Rings.Cut(here.Count, links, From, To);
            var left = cut.ToHashSet(ReferenceEqualityComparer.Instance);
            var next = links.Where(link => !left.Contains(link)).ToLookup(From, To);
            var rank = here.Select(id => Math.Abs(steps[id])).ToArray();
            foreach (var i in order)
                foreach (var j in next[i]) rank[j] = Math.Max(rank[j], rank[i] + 1);
            foreach (var id in here) keys[id] = (rank[at[id]] * way, 0);
        }

        return keys;
    }

    /// <summary>Seasons, and within a season a column for every birth after another; a season that contradicts the mother's is moved behind hers.</summary>
    private static Dictionary<Guid, (int, int)> BySeason(List<Guid> ids, List<LinkRow> births, Dictionary<Guid, Relative> people)
    {
        var at = ids.Select((id, i) => (id, i)).ToDictionary(pair => pair.id, pair => pair.i);
        var (order, cut) = Rings.Cut(ids.Count, births, link => at[link.FromId], link => at[link.ToId]);
        var left = cut.ToHashSet(ReferenceEqualityComparer.Instance);
        var kept = births.Where(link => !left.Contains(link)).ToList();
        var (into, from) = (kept.ToLookup(link => at[link.ToId], link => at[link.FromId]), kept.ToLookup(link => at[link.FromId], link => at[link.ToId]));
        var least = ids.Min(id => people[id].Season) ?? 0;
        var guess = new int[ids.Count];
        // What has no season of its own stands with its earliest child, or else at the beginning.
        foreach (var i in order.Reverse()) guess[i] = people[ids[i]].Season ?? (from[i].Any() ? from[i].Min(child => guess[child]) : least);
        var place = new (int Season, int Level)[ids.Count];
        foreach (var i in order)
        {
            var season = people[ids[i]].Season ?? (into[i].Any() ? into[i].Max(parent => place[parent].Season) : guess[i]);
            foreach (var parent in into[i]) season = Math.Max(season, place[parent].Season);
            place[i] = (season, into[i].Where(parent => place[parent].Season == season).Select(parent => place[parent].Level + 1).DefaultIfEmpty(0).Max());
        }

        return ids.ToDictionary(id => id, id => place[at[id]]);
    }

    /// <summary>The columns of all keys in order; those that are too far away are put together at either end.</summary>
    private static (List<KinColumn>, Dictionary<Guid, int>) Columned(List<Guid> ids, Dictionary<Guid, (int, int)> keys, KinAsk ask)
    {
        var inOrder = keys.Values.Distinct().Order().ToList();
        var focal = inOrder.IndexOf(keys[ids[0]]);
        var shown = Enumerable.Range(0, inOrder.Count).OrderBy(i => Math.Abs(i - focal)).ThenByDescending(i => i).Take(MostColumns).Order().ToList();
        var (first, last) = (shown[0], shown[^1]);
        var columns = new List<KinColumn>();
        if (first > 0) columns.Add(new KinColumn("before", "further before", first - 1 - focal, true));
        columns.AddRange(shown.Select(i => new KinColumn(Key(inOrder[i]), Title(inOrder[i], ask), i - focal, false)));
        if (last < inOrder.Count - 1) columns.Add(new KinColumn("after", "further on", last + 1 - focal, true));
        var numbers = inOrder.Select((key, i) => (key, i)).ToDictionary(pair => pair.key, pair => Math.Clamp(pair.i, first - 1, last + 1) - first + (first > 0 ? 1 : 0));
        return (columns, ids.ToDictionary(id => id, id => numbers[keys[id]]));
    }

    private static string Key((int, int) key) => string.Create(CultureInfo.InvariantCulture, $"{key.Item1}.{key.Item2}");

    private static string Title((int Place, int Level) key, KinAsk ask) => ask.Seasons
        ? $"season {key.Place}{(key.Level > 0 ? $", step {key.Level + 1}" : "")}"
        : key.Place switch
        {
            0 => ask.OfQueens ? "the queen herself" : "the colony itself",
            > 0 => $"generation {key.Place}",
            -1 => ask.OfQueens ? "her mother and drones' mothers" : "what it came of",
            _ => $"{-key.Place} generations before",
        };
}
