namespace ColonyLineage.Projections.Sums.Sparse;

/// <summary>
/// The order in which the unknowns of a sparse symmetric system are eliminated so that few zeros fill: always one of those with the fewest others left
/// beside it. After George and Liu 1989, SIAM Review 31:1, with the cheap bound of the degree of Amestoy, Davis and Duff 1996, SIAM J. Matrix Anal.
/// Appl. 17:886 (both from memory).
/// </summary>
internal static class FillOrder
{
    /// <param name="neighbours">Of every unknown those it shares an entry with, itself left out.</param>
    /// <param name="last">So many unknowns, the last ones, come last in any case, in their own order.</param>
    /// <returns>The unknowns in the order of elimination.</returns>
    public static int[] Of(IReadOnlyList<HashSet<int>> neighbours, int last)
    {
        var (count, free) = (neighbours.Count, neighbours.Count - last);
        // An unknown's neighbours: those of its own and those in cliques that earlier ones left behind.
        var own = neighbours.Select(set => new HashSet<int>(set)).ToArray();
        var cliquesOf = Enumerable.Range(0, count).Select(_ => new List<int>()).ToArray();
        var cliques = new int[count][];
        var gone = new bool[count];
        var degrees = new int[count];
        var waiting = new PriorityQueue<int, (int Degree, int Unknown)>();
        for (var i = 0; i < free; i++) waiting.Enqueue(i, (degrees[i] = own[i].Count, i));
        var order = new List<int>(count);
        while (order.Count < free)
        {
            if (!waiting.TryDequeue(out var next, out var key)) break;
            if (gone[next] || key.Degree != degrees[next]) continue;
            gone[next] = true;
            order.Add(next);
            // Where even the one with the fewest is beside all others, all that are left are.
            if (degrees[next] >= count - order.Count && cliquesOf[next].Count == 1 && own[next].Count == 0)
            {
                order.AddRange(Enumerable.Range(0, free).Where(i => !gone[i]));
                break;
            }

            var clique = new HashSet<int>(own[next]);
            foreach (var old in cliquesOf[next])
            {
                foreach (var i in cliques[old]) if (i != next) clique.Add(i);
                cliques[old] = [];
            }

            var absorbed = cliquesOf[next].ToHashSet();
            cliques[next] = [.. clique];
            foreach (var i in clique)
            {
                own[i].Remove(next);
                own[i].ExceptWith(clique);
                cliquesOf[i].RemoveAll(absorbed.Contains);
                cliquesOf[i].Add(next);
                if (i >= free) continue;
                degrees[i] = Math.Min(count - order.Count - 1, own[i].Count + cliquesOf[i].Sum(one => cliques[one].Length - 1));
                waiting.Enqueue(i, (degrees[i], i));
            }

            own[next] = [];
        }

        order.AddRange(Enumerable.Range(free, last));
        return [.. order];
    }
}
