namespace ColonyLineage.Projections.Lineage;

/// <summary>The links as a graph to walk: who came of whom.</summary>
public sealed class Graph
{
    private readonly ILookup<Guid, LinkRow> _down;
    private readonly ILookup<Guid, LinkRow> _up;

    public Graph(IEnumerable<LinkRow> links)
    {
        var all = links.ToList();
        _down = all.ToLookup(link => link.FromId);
        _up = all.ToLookup(link => link.ToId);
    }

    /// <summary>Links that lead from it.</summary>
    public IEnumerable<LinkRow> From(Guid id) => _down[id];

    /// <summary>Links that lead to it.</summary>
    public IEnumerable<LinkRow> To(Guid id) => _up[id];

    /// <summary>All that came of it, nearest first, each once, with the number of steps; itself left out.</summary>
    public IReadOnlyList<(Guid Id, int Steps)> Descendants(Guid id, params ReadOnlySpan<LinkKind> kinds) => Walk(id, kinds.ToArray(), _down, link => link.ToId);

    /// <summary>All that it came of, nearest first, each once, with the number of steps; itself left out.</summary>
    public IReadOnlyList<(Guid Id, int Steps)> Ancestors(Guid id, params ReadOnlySpan<LinkKind> kinds) => Walk(id, kinds.ToArray(), _up, link => link.FromId);

    private static List<(Guid Id, int Steps)> Walk(Guid start, LinkKind[] kinds, ILookup<Guid, LinkRow> links, Func<LinkRow, Guid> next)
    {
        var seen = new HashSet<Guid> { start };
        var found = new List<(Guid Id, int Steps)>();
        var queue = new Queue<(Guid Id, int Steps)>([(start, 0)]);
        while (queue.TryDequeue(out var here))
            foreach (var link in links[here.Id])
            {
                var there = next(link);
                if ((kinds.Length > 0 && !kinds.Contains(link.Link)) || !seen.Add(there)) continue;
                found.Add((there, here.Steps + 1));
                queue.Enqueue((there, here.Steps + 1));
            }

        return found;
    }
}
