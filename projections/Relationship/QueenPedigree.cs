using System.Numerics;

namespace ColonyLineage.Projections.Relationship;

/// <summary>How many of the drones a queen met came of each drone-producing queen.</summary>
public enum DroneShares
{
    /// <summary>Of each the same number.</summary>
    Equal,

    /// <summary>As chance has it: each drone of any of them.</summary>
    AtRandom,
}

/// <summary>
/// A pedigree of queens that only grows: a queen is added once her mother, and the queens whose drones her mother met, are there. Inbreeding is
/// known as soon as a mating is added, in memory that grows with the number of queens, and is never worked out again.
/// </summary>
/// <remarks>
/// θ, the coancestry, is the chance that two genes drawn at random from two bees are copies of one. A drone is haploid; drones are not recorded,
/// so a mating is a queen, drone producers (none: open) and an effective number n of drones. Expectations are exact, since all is linear: a
/// queen is half her mother, half the mean of the drone producers, a part that she shares with the sisters of her mating, and a part of her own.
/// After Brascamp and Bijma 2014, Genetics Selection Evolution 46:53 (their notation from memory); the trace upwards after Meuwissen and Luo 1992,
/// Genetics Selection Evolution 24:305 (from memory).
/// </remarks>
/// <param name="shares">Whether drone producers share alike.</param>
/// <param name="capacity">Queens to make room for at once, where it is known how many will come.</param>
public sealed class QueenPedigree(DroneShares shares = DroneShares.Equal, int capacity = 0)
{
    /// <summary>Effective number of drones where nobody has an opinion.</summary>
    public const double UsualDrones = 12;

    /// <summary>An open mating: drones of no known queen.</summary>
    public const int Open = -1;

    private const int Founder = -1;

    // A family: the daughters of a mating. Families are numbered as they come, parents before daughters.
    private readonly List<int> _familyOf = new(capacity);
    private readonly List<Family> _families = [];
    private readonly List<Producers> _producers = [];
    private readonly Trace _trace = new();

    public int Queens => _familyOf.Count;

    /// <summary>Adds a queen of unknown parents; her number.</summary>
    public int AddFounder() => AddTo(Founder);

    /// <summary>Adds a set of drone-producing queens; its number.</summary>
    public int AddDrones(ReadOnlySpan<int> queens)
    {
        if (queens.Length == 0) return Open;
        var all = queens.ToArray();
        double self = 0;
        foreach (var queen in all) self += Self(queen) / all.Length;
        var mean = _trace.Between(this, all, all);
        _producers.Add(new Producers(all, self, mean));
        return _producers.Count - 1;
    }

    /// <summary>Adds a mating; its number.</summary>
    /// <param name="drones">A set of drone producers, or <see cref="Open"/>.</param>
    /// <param name="effective">Effective number of drones, 1 or more.</param>
    public int AddMating(int queen, int drones = Open, double effective = UsualDrones)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(effective, 1);
        double between = 0, spread, same;
        if (drones == Open)
        {
            (same, spread) = (1 / effective, 1 / effective);
        }
        else
        {
            var of = _producers[drones];
            between = _trace.Between(this, [queen], of.Queens);
            same = SameMating(of, effective);
            spread = same - of.Mean;
        }

        // Two sisters: ¼ [θ(M,M) + 2 θ(M,D) + π].
        _families.Add(new Family(queen, drones, between, (Self(queen) + (2 * between) + same) / 4, spread / 4));
        return _families.Count - 1;
    }

    /// <summary>Adds a daughter of a mating; her number.</summary>
    public int AddDaughter(int mating) => AddTo(mating);

    /// <summary>F of a queen.</summary>
    public double Inbreeding(int queen) => _familyOf[queen] is >= 0 and var family ? _families[family].Inbreeding : 0;

    /// <summary>F of the brood of a mating, workers and queens alike.</summary>
    public double BroodInbreeding(int mating) => _families[mating].Inbreeding;

    /// <summary>θ of two bees of the brood of a mating: workers of one colony, or queens raised from it.</summary>
    public double BetweenBrood(int mating) => _families[mating].Sisters;

    /// <summary>Of θ of two of a brood what came neither by their mother nor by the mean of the drone producers: drones of one queen, drones that are the same.</summary>
    public double SharedBeyondParents(int mating) => _families[mating].Spread;

    /// <summary>θ of a queen with herself.</summary>
    public double Self(int queen) => (1 + Inbreeding(queen)) / 2;

    /// <summary>θ of two queens.</summary>
    public double Coancestry(int queen, int other) => queen == other ? Self(queen) : _trace.Between(this, [queen], [other]);

    /// <summary>θ of the brood of two matings, one bee of each.</summary>
    public double BetweenBroods(int mating, int other) => mating == other ? BetweenBrood(mating) : _trace.BetweenFamilies(this, mating, other);

    /// <summary>The mating that a queen is a daughter of; null for a founder.</summary>
    public int? MatingOf(int queen) => _familyOf[queen] is >= 0 and var family ? family : null;

    /// <summary>The queen of a mating.</summary>
    public int QueenOf(int mating) => _families[mating].Mother;

    /// <summary>The drone producers of a mating; none where it was open.</summary>
    public ReadOnlySpan<int> DronesOf(int mating) => _families[mating].Drones is >= 0 and var drones ? _producers[drones].Queens : [];

    /// <summary>θ of all queens with all, in the order in which they were added: a table filled family by family, without the trace.</summary>
    /// <exception cref="ArgumentException">More queens than a table of this size can hold.</exception>
    public double[,] Table()
    {
        if (Queens > 10_000) throw new ArgumentException("A table of more than 10,000 queens does not fit; ask for pairs.");
        var table = new double[Queens, Queens];
        var daughters = Enumerable.Range(0, Queens).ToLookup(queen => _familyOf[queen]);
        var placed = daughters[Founder].ToList();
        foreach (var founder in placed) table[founder, founder] = .5;
        for (var family = 0; family < _families.Count; family++)
        {
            var of = _families[family];
            var drones = DronesOf(family).ToArray();
            double To(int queen) => (table[of.Mother, queen] + (drones.Length == 0 ? 0 : drones.Average(drone => table[drone, queen]))) / 2;
            var inbreeding = drones.Length == 0 ? 0 : drones.Average(drone => table[of.Mother, drone]);
            foreach (var queen in placed)
            {
                var there = To(queen);
                foreach (var daughter in daughters[family]) table[daughter, queen] = table[queen, daughter] = there;
            }

            foreach (var daughter in daughters[family])
                foreach (var sister in daughters[family])
                    table[daughter, sister] = daughter == sister ? (1 + inbreeding) / 2 : of.Sisters;
            placed.AddRange(daughters[family]);
        }

        return table;
    }

    /// <summary>
    /// π, the chance that two sisters' genes from their fathers are copies of one: of the same drone with 1/n, of two drones of one queen, of drones of two queens.
    /// </summary>
    private double SameMating(Producers of, double effective)
    {
        var count = of.Queens.Length;
        var drone = 1 / effective;
        var queen = shares == DroneShares.Equal ? Math.Max(0, (1.0 / count) - drone) : (1 - drone) / count;
        var others = count == 1 ? 0 : ((count * of.Mean) - of.Self) / (count - 1);
        return drone + (queen * of.Self) + ((1 - drone - queen) * (count == 1 ? of.Self : others));
    }

    private int AddTo(int family)
    {
        _familyOf.Add(family);
        return _familyOf.Count - 1;
    }

    /// <summary>The daughters of a mating.</summary>
    /// <param name="Sisters">θ of two of them.</param>
    /// <param name="Spread">What they share beside their mother and the mean of the drone producers.</param>
    private readonly record struct Family(int Mother, int Drones, double Inbreeding, double Sisters, double Spread);

    /// <param name="Self">Mean θ of each with herself.</param>
    /// <param name="Mean">Mean θ of all with all, themselves included.</param>
    private sealed record Producers(int[] Queens, double Self, double Mean);

    /// <summary>
    /// The trace upwards: two parties of queens are followed from the youngest family to the oldest, each with the part of its genes that came by there; what
    /// both have in a family, in a queen or in a founder, they have in common.
    /// </summary>
    private sealed class Trace
    {
        private readonly List<int> _founders = [];
        private double[] _one = [], _other = [];
        private double[] _familyOne = [], _familyOther = [];
        private int[] _next = [], _first = [];

        // A bit for each family that waits. Parents are older than daughters, so the families are taken from the top down, word by word.
        private ulong[] _waits = [];
        private int _top, _ones, _others;

        // Whether a party has come to a founder: what the other brings there later they have in common.
        private bool _endedOne, _endedOther;

        public double Between(QueenPedigree pedigree, ReadOnlySpan<int> queens, ReadOnlySpan<int> others)
        {
            Begin(pedigree);
            foreach (var queen in queens) Put(pedigree, queen, 1.0 / queens.Length, 0);
            foreach (var other in others) Put(pedigree, other, 0, 1.0 / others.Length);
            return Follow(pedigree);
        }

        public double BetweenFamilies(QueenPedigree pedigree, int family, int other)
        {
            Begin(pedigree);
            Wait(family, 1, 0);
            Wait(other, 0, 1);
            return Follow(pedigree);
        }

        private double Follow(QueenPedigree pedigree)
        {
            double shared = 0;
            for (; _top >= 0; _top--)
                while (_waits[_top] != 0)
                {
                    var bit = 63 - BitOperations.LeadingZeroCount(_waits[_top]);
                    _waits[_top] &= ~(1UL << bit);
                    shared += Take(pedigree, (_top * 64) + bit);
                }

            foreach (var founder in _founders)
            {
                shared += _one[founder] * _other[founder] / 2;
                _one[founder] = _other[founder] = 0;
            }

            return shared;
        }

        private double Take(QueenPedigree pedigree, int family)
        {
            var of = pedigree._families[family];
            var own = ((1 + of.Inbreeding) / 2) - of.Sisters;
            double shared = 0;
            for (var queen = _first[family]; queen >= 0; queen = _next[queen])
            {
                shared += _one[queen] * _other[queen] * own;
                _one[queen] = _other[queen] = 0;
            }

            var (one, other) = (_familyOne[family], _familyOther[family]);
            if (one != 0) _ones--;
            if (other != 0) _others--;
            (_familyOne[family], _familyOther[family], _first[family]) = (0, 0, -1);
            shared += one * other * of.Spread;
            // Where one party has come to its end there is nothing more in common.
            if ((_ones == 0 && one == 0 && !_endedOne) || (_others == 0 && other == 0 && !_endedOther)) return shared;
            Put(pedigree, of.Mother, one / 2, other / 2);
            if (of.Drones < 0) return shared;
            var drones = pedigree._producers[of.Drones].Queens;
            foreach (var drone in drones) Put(pedigree, drone, one / 2 / drones.Length, other / 2 / drones.Length);
            return shared;
        }

        private void Put(QueenPedigree pedigree, int queen, double one, double other)
        {
            var family = pedigree._familyOf[queen];
            if (_one[queen] == 0 && _other[queen] == 0)
            {
                if (family == Founder) _founders.Add(queen);
                else
                {
                    _next[queen] = _first[family];
                    _first[family] = queen;
                }
            }

            _one[queen] += one;
            _other[queen] += other;
            if (family != Founder) Wait(family, one, other);
            else
            {
                if (one != 0) _endedOne = true;
                if (other != 0) _endedOther = true;
            }
        }

        private void Wait(int family, double one, double other)
        {
            if (_familyOne[family] == 0 && one != 0) _ones++;
            if (_familyOther[family] == 0 && other != 0) _others++;
            _familyOne[family] += one;
            _familyOther[family] += other;
            _waits[family / 64] |= 1UL << (family % 64);
            _top = Math.Max(_top, family / 64);
        }

        private void Begin(QueenPedigree pedigree)
        {
            (_top, _ones, _others, _endedOne, _endedOther) = (-1, 0, 0, false, false);
            _founders.Clear();
            if (_one.Length < pedigree.Queens)
            {
                var size = Math.Max(pedigree.Queens, 2 * _one.Length);
                Array.Resize(ref _one, size);
                Array.Resize(ref _other, size);
                Array.Resize(ref _next, size);
            }

            if (_first.Length >= pedigree._families.Count) return;
            var (from, families) = (_first.Length, Math.Max(pedigree._families.Count, 2 * _first.Length));
            Array.Resize(ref _familyOne, families);
            Array.Resize(ref _familyOther, families);
            Array.Resize(ref _waits, (families / 64) + 1);
            Array.Resize(ref _first, families);
            _first.AsSpan(from).Fill(-1);
        }
    }
}
