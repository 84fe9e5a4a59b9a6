using ColonyLineage.Projections.Sums.Mixed;

namespace ColonyLineage.Projections.Relationship;

/// <summary>
/// A⁻¹ of queens and of all that they came of, put together entry by entry, without A itself: after Henderson 1976, Biometrics 32:69, and for queens Brascamp and
/// Bijma 2014, Genetics Selection Evolution 46:53 (both from memory). A brood is a level as well, that of a mating: what its daughters share; a daughter is that and a part of her own.
/// </summary>
public static class PedigreePrecision
{
    /// <summary>Below this a part of one's own is as good as none: only lines bred to the end of all variance come near.</summary>
    private const double Least = 1e-10;

    /// <summary>Of queens.</summary>
    /// <param name="queens">They become the first levels, in this order; null for one that is related to nobody.</param>
    /// <returns>Their inverse; behind them as further levels all that they came of.</returns>
    public static Precision Of(QueenPedigree pedigree, IReadOnlyList<int?> queens) => new Levels(pedigree).Of([.. queens.Select(queen => new Level(false, queen))]);

    /// <summary>Of broods: what is handed down to the daughters of a mating alike.</summary>
    /// <param name="matings">They become the first levels, in this order; null for one that is related to nobody, and whose daughters count as half alike.</param>
    /// <returns>Their inverse; behind them as further levels all that they came of.</returns>
    public static Precision OfBroods(QueenPedigree pedigree, IReadOnlyList<int?> matings) => new Levels(pedigree).Of([.. matings.Select(mating => new Level(true, mating))]);

    /// <param name="Number">Of the queen or the mating; null where the pedigree does not know it.</param>
    private readonly record struct Level(bool Brood, int? Number);

    private sealed class Levels(QueenPedigree pedigree)
    {
        private readonly Dictionary<Level, int> _numbers = [];
        private readonly List<Level> _order = [];
        private readonly Dictionary<(int Row, int Column), double> _sums = [];
        private readonly List<double> _kinship = [];
        private double _log;

        public Precision Of(IReadOnlyList<Level> first)
        {
            foreach (var level in first)
            {
                if (level.Number is not null) _numbers[level] = _order.Count;
                _order.Add(level);
            }

            // The parents of each are put behind it where they are not there yet, and get their turn.
            for (var at = 0; at < _order.Count; at++) Add(at);
            return new Precision([.. _sums.Select(sum => (sum.Key.Row, sum.Key.Column, sum.Value))], _log, _kinship);
        }

        private void Add(int at)
        {
            var (parents, kinship, own) = Parts(_order[at]);
            own = Math.Max(own, Least);
            _kinship.Add(kinship);
            _log -= Math.Log(own);
            List<(int Number, double Weight)> all = [(at, 1), .. parents];
            for (var a = 0; a < all.Count; a++)
                for (var b = a; b < all.Count; b++)
                {
                    // A queen who stands twice among the parents meets herself: both of her crossed terms count.
                    var times = a != b && all[a].Number == all[b].Number ? 2 : 1;
                    var key = (Math.Min(all[a].Number, all[b].Number), Math.Max(all[a].Number, all[b].Number));
                    _sums[key] = _sums.GetValueOrDefault(key) + (times * all[a].Weight * all[b].Weight / own);
                }
        }

        /// <summary>What a level is the sum of, with the signs turned; its kinship with itself; and the variance of what is its own.</summary>
        private (List<(int Number, double Weight)> Parents, double Kinship, double Own) Parts(Level level)
        {
            if (level.Number is not { } number) return ([], level.Brood ? .5 : 1, level.Brood ? .5 : 1);
            if (!level.Brood)
            {
                var kinship = 2 * pedigree.Self(number);
                return pedigree.MatingOf(number) is { } of ? ([(Numbered(new Level(true, of)), -1)], kinship, kinship - (2 * pedigree.BetweenBrood(of))) : ([], kinship, kinship);
            }

            var drones = pedigree.DronesOf(number);
            List<(int, double)> parents = [(Numbered(new Level(false, pedigree.QueenOf(number))), -.5)];
            foreach (var drone in drones) parents.Add((Numbered(new Level(false, drone)), -.5 / drones.Length));
            return (parents, 2 * pedigree.BetweenBrood(number), 2 * pedigree.SharedBeyondParents(number));
        }

        private int Numbered(Level level)
        {
            if (_numbers.TryGetValue(level, out var number)) return number;
            _order.Add(level);
            return _numbers[level] = _order.Count - 1;
        }
    }
}
