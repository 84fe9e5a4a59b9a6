using System.Runtime.InteropServices;

namespace ColonyLineage.Projections.Lineage;

/// <summary>The links as a graph to walk: who came of whom.</summary>
/// <remarks>
/// Queens and colonies are numbered once, and their links lie in arrays one after the other, so that a walk looks nothing up by id. It is made of one
/// version of the links and never changes: any number of walks may go on at once.
/// </remarks>
public sealed class Graph
{
    private readonly Dictionary<Guid, int> _numbers;
    private readonly Guid[] _ids;
    private readonly Side _down, _up;

    public Graph(IEnumerable<LinkRow> links)
    {
        var all = links as IReadOnlyCollection<LinkRow> ?? [.. links];
        var (from, to) = (new int[all.Count], new int[all.Count]);
        _numbers = new Dictionary<Guid, int>(all.Count);
        var ids = new List<Guid>(all.Count);
        var at = 0;
        foreach (var link in all) (from[at], to[at++]) = (Number(link.FromId, ids), Number(link.ToId, ids));
        _ids = [.. ids];
        (_down, _up) = (new Side(all, from, to, ids.Count), new Side(all, to, from, ids.Count));
    }

    /// <summary>Links that lead from it.</summary>
    public IReadOnlyList<LinkRow> From(Guid id) => _down.LinksOf(_numbers.GetValueOrDefault(id, -1));

    /// <summary>Links that lead to it.</summary>
    public IReadOnlyList<LinkRow> To(Guid id) => _up.LinksOf(_numbers.GetValueOrDefault(id, -1));

    /// <summary>All that came of it, nearest first, each once, with the number of steps; itself left out.</summary>
    /// <param name="kinds">The kinds of links to follow; none for all.</param>
    public IReadOnlyList<(Guid Id, int Steps)> Descendants(Guid id, params ReadOnlySpan<LinkKind> kinds) => Ids(_down, id, kinds);

    /// <summary>All that it came of, nearest first, each once, with the number of steps; itself left out.</summary>
    /// <param name="kinds">The kinds of links to follow; none for all.</param>
    public IReadOnlyList<(Guid Id, int Steps)> Ancestors(Guid id, params ReadOnlySpan<LinkKind> kinds) => Ids(_up, id, kinds);

    /// <summary>All that came of some (<paramref name="down"/>) or that they came of, nearest first, each once, with the link by which it was come upon first; they themselves left out.</summary>
    public IReadOnlyList<(LinkRow Link, int Steps)> Walk(IEnumerable<Guid> starts, bool down)
    {
        var side = down ? _down : _up;
        var found = Walk(side, [.. starts.Select(id => _numbers.GetValueOrDefault(id, -1)).Where(node => node >= 0)], []);
        var walked = new List<(LinkRow, int)>(found.Nodes.Count);
        for (var (level, at) = (0, 0); level < found.Ends.Count; level++)
            for (; at < found.Ends[level]; at++) walked.Add((side.Links[found.By[at]], level + 1));
        return walked;
    }

    private int Number(Guid id, List<Guid> ids)
    {
        ref var number = ref CollectionsMarshal.GetValueRefOrAddDefault(_numbers, id, out var known);
        if (known) return number;
        ids.Add(id);
        return number = ids.Count - 1;
    }

    private List<(Guid Id, int Steps)> Ids(Side side, Guid start, ReadOnlySpan<LinkKind> kinds)
    {
        if (!_numbers.TryGetValue(start, out var node)) return [];
        var found = Walk(side, [node], kinds);
        var ids = new List<(Guid, int)>(found.Nodes.Count);
        CollectionsMarshal.SetCount(ids, found.Nodes.Count);
        var into = CollectionsMarshal.AsSpan(ids);
        var nodes = CollectionsMarshal.AsSpan(found.Nodes);
        for (var (level, at) = (0, 0); level < found.Ends.Count; level++)
            for (; at < found.Ends[level]; at++) into[at] = (_ids[nodes[at]], level + 1);
        return ids;
    }

    private Found Walk(Side side, ReadOnlySpan<int> starts, ReadOnlySpan<LinkKind> kinds)
    {
        var follows = kinds.Length == 0 ? uint.MaxValue : 0;
        foreach (var kind in kinds) follows |= 1u << (int)kind;
        // A bit for each that was seen: a walk is over before a set of ids would be filled.
        var seen = new ulong[(_ids.Length / 64) + 1];
        foreach (var start in starts) seen[start >> 6] |= 1UL << (start & 63);
        var found = new Found([], [], []);
        foreach (var start in starts) side.Follow(start, follows, seen, found);
        for (var at = 0; at < found.Nodes.Count;)
        {
            found.Ends.Add(found.Nodes.Count);
            for (var end = found.Nodes.Count; at < end; at++) side.Follow(found.Nodes[at], follows, seen, found);
        }

        return found;
    }

    /// <summary>What a walk comes upon, nearest first.</summary>
    /// <param name="By">The place of the link to each.</param>
    /// <param name="Ends">How many lie within one step, within two and so on.</param>
    private readonly record struct Found(List<int> Nodes, List<int> By, List<int> Ends);

    /// <summary>The links in one direction: those of a node lie one after the other, in the order in which they were given.</summary>
    private sealed class Side
    {
        private readonly int[] _starts, _there;
        private readonly byte[] _kinds;

        public Side(IReadOnlyCollection<LinkRow> links, int[] here, int[] there, int nodes)
        {
            (_starts, _there, _kinds, Links) = (new int[nodes + 1], new int[links.Count], new byte[links.Count], new LinkRow[links.Count]);
            foreach (var node in here) _starts[node + 1]++;
            for (var node = 0; node < nodes; node++) _starts[node + 1] += _starts[node];
            var next = _starts[..nodes];
            var at = 0;
            foreach (var link in links)
            {
                var place = next[here[at]]++;
                (Links[place], _there[place], _kinds[place]) = (link, there[at++], (byte)link.Link);
            }
        }

        public LinkRow[] Links { get; }

        public ArraySegment<LinkRow> LinksOf(int node) => node < 0 ? ArraySegment<LinkRow>.Empty : new ArraySegment<LinkRow>(Links, _starts[node], _starts[node + 1] - _starts[node]);

        public void Follow(int node, uint follows, ulong[] seen, Found found)
        {
            for (var place = _starts[node]; place < _starts[node + 1]; place++)
            {
                var there = _there[place];
                var bit = 1UL << (there & 63);
                if ((seen[there >> 6] & bit) != 0 || (follows & (1u << _kinds[place])) == 0) continue;
                seen[there >> 6] |= bit;
                found.Nodes.Add(there);
                found.By.Add(place);
            }
        }
    }
}
