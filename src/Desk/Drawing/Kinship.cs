using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Desk.Drawing;

/// <summary>A piece of a genealogy around one queen or colony that a person can read: so many generations each way, so many boxes.</summary>
public sealed class Kinship
{
    /// <summary>About a hundred boxes are clear; two thousand are a smear.</summary>
    public const int MostOfAGeneration = 18;

    private Kinship()
    {
    }

    /// <summary>The one in the middle, then the others, nearest first, with generations: below 0 upwards, above 0 downwards.</summary>
    public required IReadOnlyList<(Guid Id, int Generation)> Shown { get; init; }

    /// <summary>The links among them.</summary>
    public required IReadOnlyList<LinkRow> Links { get; init; }

    /// <summary>How many came of it directly and are not shown.</summary>
    public required IReadOnlyDictionary<Guid, int> MoreBelow { get; init; }

    /// <summary>How many it came of directly and are not shown.</summary>
    public required IReadOnlyDictionary<Guid, int> MoreAbove { get; init; }

    /// <summary>The surroundings of one.</summary>
    /// <param name="graph">All links.</param>
    /// <param name="focal">The one in the middle.</param>
    /// <param name="up">Generations upwards, from 0.</param>
    /// <param name="down">Generations downwards, from 0.</param>
    /// <param name="kinds">The kinds of links to follow.</param>
    public static Kinship Around(Graph graph, Guid focal, int up, int down, IReadOnlySet<LinkKind> kinds)
    {
        var shown = new Dictionary<Guid, int> { [focal] = 0 };
        Spread(shown, focal, up, -1, id => graph.To(id).Where(link => kinds.Contains(link.Link)).Select(link => link.FromId));
        Spread(shown, focal, down, 1, id => graph.From(id).Where(link => kinds.Contains(link.Link)).Select(link => link.ToId));
        var links = shown.Keys.SelectMany(id => graph.From(id)).Where(link => kinds.Contains(link.Link) && shown.ContainsKey(link.ToId)).ToList();
        return new Kinship
        {
            Shown = [.. shown.Select(pair => (pair.Key, pair.Value)).OrderBy(pair => Math.Abs(pair.Value))],
            Links = links,
            MoreBelow = Hidden(shown, id => graph.From(id).Where(link => kinds.Contains(link.Link)).Select(link => link.ToId)),
            MoreAbove = Hidden(shown, id => graph.To(id).Where(link => kinds.Contains(link.Link)).Select(link => link.FromId)),
        };
    }

    /// <summary>One generation after the other; where a generation is larger than fits, every parent gets its turn for one more child.</summary>
    private static void Spread(Dictionary<Guid, int> shown, Guid focal, int generations, int step, Func<Guid, IEnumerable<Guid>> next)
    {
        List<Guid> here = [focal];
        for (var generation = 1; generation <= generations && here.Count > 0; generation++)
        {
            var waiting = here.Select(id => new Queue<Guid>(next(id).Distinct())).ToList();
            var there = new List<Guid>();
            while (there.Count < MostOfAGeneration && waiting.Any(queue => queue.Count > 0))
                foreach (var queue in waiting)
                    while (there.Count < MostOfAGeneration && queue.TryDequeue(out var id))
                        if (shown.TryAdd(id, generation * step))
                        {
                            there.Add(id);
                            break;
                        }

            here = there;
        }
    }

    private static Dictionary<Guid, int> Hidden(Dictionary<Guid, int> shown, Func<Guid, IEnumerable<Guid>> next) =>
        shown.Keys.Select(id => (Id: id, Hidden: next(id).Distinct().Count(other => !shown.ContainsKey(other)))).Where(pair => pair.Hidden > 0).ToDictionary(pair => pair.Id, pair => pair.Hidden);
}
