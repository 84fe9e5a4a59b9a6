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

    // Most queens have no daughters and give no drones. A queen has a place in the trace once she does; until then her family's stands for her.
    private readonly Dictionary<int, int> _placeOf = [];
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
        var place = _trace.Add(0, 1.0 / all.Length, Array.ConvertAll(all, PlaceFor));
        _producers.Add(new Producers(all, place, self, _trace.Between(place, place)));
        return _producers.Count - 1;
    }

    /// <summary>Adds a mating; its number.</summary>
    /// <param name="drones">A set of drone producers, or <see cref="Open"/>.</param>
    /// <param name="effective">Effective number of drones, 1 or more.</param>
    public int AddMating(int queen, int drones = Open, double effective = UsualDrones)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(effective, 1);
        var mother = PlaceFor(queen);
        double inbreeding = 0, same = 1 / effective, spread = same;
        int[] above = [mother];
        if (drones != Open)
        {
            var of = _producers[drones];
            (inbreeding, same) = (_trace.Between(mother, of.Place), SameMating(of, effective));
            spread = same - of.Mean;
            above = [mother, of.Place];
        }

        // Two sisters: ¼ [θ(M,M) + 2 θ(M,D) + π]; beside their mother and the mean of the drone producers they share a quarter of the spread.
        _families.Add(new Family(queen, drones, _trace.Add(spread / 4, .5, above), inbreeding, (Self(queen) + (2 * inbreeding) + same) / 4));
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
    public double SharedBeyondParents(int mating) => _trace.OwnOf(_families[mating].Place);

    /// <summary>θ of a queen with herself.</summary>
    public double Self(int queen) => (1 + Inbreeding(queen)) / 2;

    /// <summary>θ of two queens.</summary>
    public double Coancestry(int queen, int other) =>
        queen == other ? Self(queen) : PlaceOf(queen) is { } one && PlaceOf(other) is { } two ? _trace.Between(one, two) : 0;

    /// <summary>θ of the brood of two matings, one bee of each.</summary>
    public double BetweenBroods(int mating, int other) => mating == other ? BetweenBrood(mating) : _trace.Between(_families[mating].Place, _families[other].Place);

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

    /// <summary>The place of a queen that gets offspring: the first time it is made. Her own is what she shares with no sister.</summary>
    private int PlaceFor(int queen)
    {
        if (_placeOf.TryGetValue(queen, out var place)) return place;
        return _placeOf[queen] = _familyOf[queen] is >= 0 and var family ? _trace.Add(Self(queen) - _families[family].Sisters, 1, _families[family].Place) : _trace.Add(Self(queen), 0);
    }

    /// <summary>Where a queen's genes are to be found; null for a founder without offspring, who shares none.</summary>
    private int? PlaceOf(int queen) =>
        _placeOf.TryGetValue(queen, out var place) ? place : _familyOf[queen] is >= 0 and var family ? _families[family].Place : null;

    private int AddTo(int family)
    {
        _familyOf.Add(family);
        return _familyOf.Count - 1;
    }

    /// <summary>The daughters of a mating.</summary>
    /// <param name="Place">Theirs in the trace.</param>
    /// <param name="Sisters">θ of two of them.</param>
    private readonly record struct Family(int Mother, int Drones, int Place, double Inbreeding, double Sisters);

    /// <param name="Place">Theirs in the trace.</param>
    /// <param name="Self">Mean θ of each with herself.</param>
    /// <param name="Mean">Mean θ of all with all, themselves included.</param>
    private sealed record Producers(int[] Queens, int Place, double Self, double Mean);
}
