using ColonyLineage.Projections.Sums.Mixed;

namespace ColonyLineage.Projections.Relationship;

/// <summary>
/// A⁻¹ of queens and of all that they came of, put together entry by entry, without A itself: after Henderson 1976, Biometrics 32:69, and for queens Brascamp and
/// Bijma 2014, Genetics Selection Evolution 46:53 (both from memory). A mating is a level as well: what its daughters share; a daughter is that and a part of her own.
/// </summary>
public static class PedigreePrecision
{
    /// <summary>Below this a part of one's own is as good as none: only lines bred to the end of all variance come near.</summary>
    private const double Least = 1e-10;

    /// <param name="queens">Those whose records there are; they become the first levels, in this order.</param>
    /// <returns>The inverse, and of each further level the queen that it is; null for a mating.</returns>
    public static (Precision Precision, IReadOnlyList<int?> Further) Of(QueenPedigree pedigree, IReadOnlyList<int> queens)
    {
        var levels = new Dictionary<(bool Mating, int Number), int>();
        var order = new List<(bool Mating, int Number)>();
        int Level(bool mating, int number)
        {
            if (levels.TryGetValue((mating, number), out var level)) return level;
            order.Add((mating, number));
            return levels[(mating, number)] = order.Count - 1;
        }

        foreach (var queen in queens) Level(false, queen);
        var (sums, kinship, log) = (new Dictionary<(int, int), double>(), new List<double>(), 0.0);
        for (var at = 0; at < order.Count; at++)
        {
            var (isMating, number) = order[at];
            var (parents, variance) = isMating ? Mating(number) : Queen(number);
            variance = Math.Max(variance, Least);
            log -= Math.Log(variance);
            kinship.Add(2 * (isMating ? pedigree.BetweenBrood(number) : pedigree.Self(number)));
            (int Level, double Weight)[] all = [(at, 1), .. parents.Select(parent => (parent.Level, -parent.Weight))];
            for (var a = 0; a < all.Length; a++)
                for (var b = a; b < all.Length; b++)
                {
                    // A queen who stands twice among the parents meets herself: both of her crossed terms count.
                    var key = all[a].Level < all[b].Level ? (all[a].Level, all[b].Level) : (all[b].Level, all[a].Level);
                    sums[key] = sums.GetValueOrDefault(key) + ((a != b && all[a].Level == all[b].Level ? 2 : 1) * all[a].Weight * all[b].Weight / variance);
                }
        }

        return (new Precision([.. sums.Select(sum => (sum.Key.Item1, sum.Key.Item2, sum.Value))], log, kinship), [.. order.Skip(queens.Count).Select(level => level.Mating ? (int?)null : level.Number)]);

        (List<(int Level, double Weight)> Parents, double Variance) Queen(int queen) => pedigree.MatingOf(queen) is { } mating
            ? ([(Level(true, mating), 1)], 2 * (pedigree.Self(queen) - pedigree.BetweenBrood(mating)))
            : ([], 2 * pedigree.Self(queen));

        (List<(int Level, double Weight)> Parents, double Variance) Mating(int mating)
        {
            var drones = pedigree.DronesOf(mating);
            List<(int, double)> parents = [(Level(false, pedigree.QueenOf(mating)), .5)];
            foreach (var drone in drones) parents.Add((Level(false, drone), .5 / drones.Length));
            return (parents, 2 * pedigree.SharedBeyondParents(mating));
        }
    }
}
