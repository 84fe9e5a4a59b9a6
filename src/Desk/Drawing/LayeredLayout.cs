namespace ColonyLineage.Desk.Drawing;

/// <summary>A box to be placed.</summary>
/// <param name="Key">What it stands for.</param>
/// <param name="Season">The season whose column it belongs to; null where nobody knows.</param>
/// <param name="Height">Its height in units of the drawing.</param>
public sealed record LayoutNode(Guid Key, int? Season, double Height);

/// <summary>A line from one box to another, always forward in time.</summary>
/// <param name="Tag">Whatever the caller wants to know it by.</param>
public sealed record LayoutEdge(Guid From, Guid To, int Tag);

/// <summary>A box in its place: the corner at the upper left.</summary>
public sealed record PlacedNode(Guid Key, double X, double Y, double Height, int Layer);

/// <summary>A line in its place: the points it runs through, from the right side of one box to the left side of the other.</summary>
public sealed record RoutedEdge(LayoutEdge Edge, IReadOnlyList<(double X, double Y)> Points);

/// <summary>The columns of one season.</summary>
public sealed record SeasonColumns(int? Season, double X, double Width);

/// <summary>
/// A drawing in layers from left to right: the season is the layer, with as many columns in it as there are generations of one
/// season. Lines that pass a column get a place of their own in it, so that none runs behind a box. Boxes are ordered by the mean place of
/// their neighbours (the barycentre heuristic of Sugiyama, Tagawa and Toda, 1981) and then moved as near to them as the order allows.
/// </summary>
public sealed class LayeredLayout
{
    private const double Passing = 12;
    private const int Sweeps = 12;

    private LayeredLayout()
    {
    }

    public required IReadOnlyList<PlacedNode> Nodes { get; init; }

    public required IReadOnlyList<RoutedEdge> Edges { get; init; }

    /// <summary>Lines that would lead back and close a ring: not drawn, and to be said in words.</summary>
    public required IReadOnlyList<LayoutEdge> LeftOut { get; init; }

    public required IReadOnlyList<SeasonColumns> Seasons { get; init; }

    public required double Width { get; init; }

    public required double Height { get; init; }

    /// <summary>Places boxes of one width and any height.</summary>
    /// <param name="nodes">The boxes, in the order in which equals are to stand.</param>
    /// <param name="edges">The lines; those to or from a box that is not there are ignored.</param>
    /// <param name="boxWidth">The width of every box.</param>
    /// <param name="across">The room between two columns, for the lines.</param>
    /// <param name="between">The room between two boxes of a column.</param>
    public static LayeredLayout Of(IReadOnlyList<LayoutNode> nodes, IReadOnlyList<LayoutEdge> edges, double boxWidth, double across = 56, double between = 12)
    {
        var index = nodes.Select((node, i) => (node.Key, i)).ToDictionary(pair => pair.Key, pair => pair.i);
        // Walked from the last to the first, since the order is that of the walk backwards: so equals stand as they were given.
        var known = edges.Where(edge => index.ContainsKey(edge.From) && index.ContainsKey(edge.To)).OrderByDescending(edge => index[edge.To]).ToList();
        var (order, leftOut) = Rings.Cut(nodes.Count, known, edge => index[edge.From], edge => index[edge.To]);
        var drawn = known.Except(leftOut, ReferenceEqualityComparer.Instance).Cast<LayoutEdge>().ToList();
        var (layerOf, seasons) = Layers(nodes, drawn, index, order);

        // Boxes first, then a place for every column that a line passes.
        var layers = Enumerable.Range(0, seasons.Count).Select(_ => new List<Item>()).ToList();
        var items = nodes.Select((node, i) => new Item(layerOf[i], node.Height)).ToList();
        foreach (var i in order) layers[items[i].Layer].Add(items[i]);
        var chains = new List<(LayoutEdge Edge, List<Item> Chain)>();
        foreach (var edge in drawn)
        {
            var chain = new List<Item> { items[index[edge.From]] };
            for (var layer = layerOf[index[edge.From]] + 1; layer < layerOf[index[edge.To]]; layer++)
            {
                var passing = new Item(layer, Passing);
                layers[layer].Add(passing);
                chain.Add(passing);
            }

            chain.Add(items[index[edge.To]]);
            for (var i = 1; i < chain.Count; i++)
            {
                chain[i - 1].Right.Add(chain[i]);
                chain[i].Left.Add(chain[i - 1]);
            }

            chains.Add((edge, chain));
        }

        Order(layers);
        Settle(layers, between);

        double X(int layer) => layer * (boxWidth + across);
        var columns = seasons.Select((season, layer) => (season, layer)).GroupBy(pair => pair.season)
            .Select(group => new SeasonColumns(group.Key, X(group.First().layer), X(group.Last().layer) + boxWidth - X(group.First().layer))).ToList();
        return new LayeredLayout
        {
            Nodes = [.. nodes.Select((node, i) => new PlacedNode(node.Key, X(items[i].Layer), items[i].Top, node.Height, items[i].Layer))],
            Edges = [.. chains.Select(chain => new RoutedEdge(chain.Edge, [.. Points(chain.Chain, X, boxWidth)]))],
            LeftOut = leftOut,
            Seasons = columns,
            Width = nodes.Count == 0 ? 0 : X(seasons.Count - 1) + boxWidth,
            Height = items.Count == 0 ? 0 : layers.SelectMany(layer => layer).Max(item => item.Top + item.Height),
        };
    }

    private static IEnumerable<(double X, double Y)> Points(List<Item> chain, Func<int, double> x, double boxWidth)
    {
        for (var i = 0; i < chain.Count; i++)
        {
            if (i > 0) yield return (x(chain[i].Layer), chain[i].Middle);
            if (i < chain.Count - 1) yield return (x(chain[i].Layer) + boxWidth, chain[i].Middle);
        }
    }

    /// <summary>
    /// The column of every box. A box stands in the column of its season, but never before what it came of: a season that
    /// contradicts its mother's is moved behind hers. Within a season every generation has a column.
    /// </summary>
    private static (int[] LayerOf, List<int?> Seasons) Layers(IReadOnlyList<LayoutNode> nodes, List<LayoutEdge> edges, Dictionary<Guid, int> index, int[] order)
    {
        var into = edges.ToLookup(edge => index[edge.To], edge => index[edge.From]);
        var from = edges.ToLookup(edge => index[edge.From], edge => index[edge.To]);
        var least = nodes.Min(node => node.Season) ?? 0;
        var guess = new int[nodes.Count];
        // What has no season of its own stands with its earliest child, or else at the beginning.
        foreach (var i in order.Reverse()) guess[i] = nodes[i].Season ?? (from[i].Any() ? from[i].Min(child => guess[child]) : least);
        var place = new (int Season, int Level)[nodes.Count];
        foreach (var i in order)
        {
            var parents = into[i].ToList();
            var season = nodes[i].Season is { } own ? own : parents.Count > 0 ? parents.Max(parent => place[parent].Season) : guess[i];
            foreach (var parent in parents) season = Math.Max(season, place[parent].Season);
            var level = 0;
            foreach (var parent in parents)
                if (place[parent].Season == season) level = Math.Max(level, place[parent].Level + 1);
            place[i] = (season, level);
        }

        var columns = place.Distinct().Order().ToList();
        var at = columns.Select((column, layer) => (column, layer)).ToDictionary(pair => pair.column, pair => pair.layer);
        var anyKnown = nodes.Any(node => node.Season is not null);
        return ([.. place.Select(where => at[where])], [.. columns.Select(column => anyKnown ? column.Season : (int?)null)]);
    }

    /// <summary>Sweeps to and fro, and keeps the order with the fewest crossings.</summary>
    private static void Order(List<List<Item>> layers)
    {
        Number(layers);
        var best = layers.Select(layer => layer.ToList()).ToList();
        var fewest = Crossings(layers);
        for (var sweep = 0; sweep < Sweeps && fewest > 0; sweep++)
        {
            var forward = sweep % 2 == 0;
            for (var step = 1; step < layers.Count; step++)
            {
                var layer = layers[forward ? step : layers.Count - 1 - step];
                foreach (var item in layer)
                {
                    var near = forward ? item.Left : item.Right;
                    item.Wish = near.Count == 0 ? item.Rank : near.Average(other => (double)other.Rank);
                }

                // A stable sort: equals stay as they are.
                var sorted = layer.OrderBy(item => item.Wish).ToList();
                layer.Clear();
                layer.AddRange(sorted);
                Number(layer);
            }

            var crossings = Crossings(layers);
            if (crossings >= fewest) continue;
            fewest = crossings;
            best = [.. layers.Select(layer => layer.ToList())];
        }

        for (var i = 0; i < layers.Count; i++)
        {
            layers[i].Clear();
            layers[i].AddRange(best[i]);
        }

        Number(layers);
    }

    private static void Number(List<List<Item>> layers)
    {
        foreach (var layer in layers) Number(layer);
    }

    private static void Number(List<Item> layer)
    {
        for (var i = 0; i < layer.Count; i++) layer[i].Rank = i;
    }

    private static long Crossings(List<List<Item>> layers)
    {
        long crossings = 0;
        foreach (var layer in layers)
        {
            // Pairs out of order among the right ends, read by the left ends: counted on a tree of sums.
            var ends = layer.OrderBy(item => item.Rank).SelectMany(item => item.Right.Select(right => right.Rank).Order()).ToList();
            if (ends.Count < 2) continue;
            var sums = new int[ends.Max() + 2];
            var seen = 0;
            foreach (var end in ends)
            {
                var upTo = 0;
                for (var i = end + 1; i > 0; i -= i & -i) upTo += sums[i];
                crossings += seen - upTo;
                for (var i = end + 1; i < sums.Length; i += i & -i) sums[i]++;
                seen++;
            }
        }

        return crossings;
    }

    /// <summary>Moves every box as near to the middle of its neighbours as the order and the room between allow.</summary>
    private static void Settle(List<List<Item>> layers, double between)
    {
        foreach (var layer in layers)
        {
            double top = 0;
            foreach (var item in layer)
            {
                item.Top = top;
                top += item.Height + between;
            }
        }

        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            var forward = sweep % 2 == 0;
            for (var step = 0; step < layers.Count; step++)
                Fit(layers[forward ? step : layers.Count - 1 - step], between, sweep == Sweeps - 1 ? null : forward);
        }

        var least = layers.SelectMany(layer => layer).Select(item => item.Top).DefaultIfEmpty(0).Min();
        foreach (var item in layers.SelectMany(layer => layer)) item.Top -= least;
    }

    /// <summary>The tops nearest to the wished ones (least squares) that keep the order and the room between: pooled adjacent violators.</summary>
    private static void Fit(List<Item> layer, double between, bool? forward)
    {
        var pools = new List<(double Sum, int Count)>();
        double offset = 0;
        var offsets = new double[layer.Count];
        for (var i = 0; i < layer.Count; i++)
        {
            var item = layer[i];
            offsets[i] = offset;
            offset += item.Height + between;
            var near = forward switch { true => item.Left, false => item.Right, _ => [.. item.Left, .. item.Right] };
            if (near.Count == 0) near = [.. item.Left, .. item.Right];
            var wish = near.Count == 0 ? item.Top : near.Average(other => other.Middle) - (item.Height / 2);
            pools.Add((wish - offsets[i], 1));
            while (pools.Count > 1 && pools[^2].Sum / pools[^2].Count > pools[^1].Sum / pools[^1].Count)
            {
                pools[^2] = (pools[^2].Sum + pools[^1].Sum, pools[^2].Count + pools[^1].Count);
                pools.RemoveAt(pools.Count - 1);
            }
        }

        var at = 0;
        foreach (var (sum, count) in pools)
            for (var i = 0; i < count; i++, at++) layer[at].Top = (sum / count) + offsets[at];
    }

    private sealed class Item(int layer, double height)
    {
        public int Layer { get; } = layer;

        public double Height { get; } = height;

        public double Top { get; set; }

        public double Middle => Top + (Height / 2);

        public int Rank { get; set; }

        public double Wish { get; set; }

        public List<Item> Left { get; } = [];

        public List<Item> Right { get; } = [];
    }
}
