using ColonyLineage.Entries;
using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Projections.Relationship;

/// <summary>
/// The pedigree that the books hold. A mother known or supposed counts alike; a queen whose mother nobody knows is a founder. The drones are those of her mother's last recorded
/// mating, or of an open one. A queen that is entered as her own ancestor loses her mother here, and is named as a conflict.
/// </summary>
public sealed class BooksPedigree
{
    private readonly Dictionary<Guid, int> _numbers = [];
    private readonly List<Guid> _ids = [];
    private readonly Dictionary<Guid, string> _names = [];
    private readonly Dictionary<Guid, int> _families = [];
    private readonly Dictionary<string, int> _sets = [];
    private readonly Dictionary<Guid, LinkRow> _mothers;
    private readonly ILookup<Guid, LinkRow> _drones;
    private readonly Dictionary<Guid, decimal> _effective = [];

    /// <param name="links">The rows of the question lineage; those between colonies are passed over.</param>
    /// <param name="queens">Further queens, by id and name: those of whom there is no link.</param>
    public BooksPedigree(IEnumerable<LinkRow> links, IEnumerable<(Guid Id, string Name)> queens)
    {
        var all = links.Where(link => link.Link is LinkKind.Mother or LinkKind.Drones).ToList();
        _mothers = all.Where(link => link.Link == LinkKind.Mother).GroupBy(link => link.ToId).ToDictionary(link => link.Key, link => link.Last());
        _drones = all.Where(link => link.Link == LinkKind.Drones).ToLookup(link => link.ToId);
        foreach (var link in all) (_names[link.FromId], _names[link.ToId]) = (link.From, link.To);
        foreach (var link in all)
            if (link.EffectiveDrones is { } drones) _effective[link.Link == LinkKind.Drones ? link.ToId : link.FromId] = drones;
        foreach (var (id, name) in queens) _names[id] = name;
        foreach (var id in _names.Keys.Order().ToList()) Add(id);
    }

    /// <summary>The pedigree of one queen alone: all that she, and the drones she met, came of.</summary>
    public static BooksPedigree Above(Graph links, Guid queen, string name) =>
        new(links.Ancestors(queen, LinkKind.Mother, LinkKind.Drones).Select(found => found.Id).Prepend(queen).SelectMany(links.To), [(queen, name)]);

    public QueenPedigree Pedigree { get; } = new();

    /// <summary>Queens that are entered as ancestors of themselves, by their mothers or by drones.</summary>
    public IReadOnlyCollection<Guid> InRings => _inRings;

    private readonly HashSet<Guid> _inRings = [];

    /// <summary>The queens, as the pedigree numbers them.</summary>
    public IReadOnlyList<Guid> Queens => _ids;

    /// <summary>Her number; null where the books do not know her.</summary>
    public int? NumberOf(Guid queen) => _numbers.TryGetValue(queen, out var number) ? number : null;

    public string NameOf(Guid queen) => _names[queen];

    /// <summary>The link to her mother; null where she is a founder here.</summary>
    public LinkRow? MotherOf(Guid queen) => _inRings.Contains(queen) ? null : _mothers.GetValueOrDefault(queen);

    /// <summary>The drone producers that a queen is recorded to have met; none where she flew in the open, or nobody knows.</summary>
    public IReadOnlyList<LinkRow> DronesOf(Guid queen) => [.. _drones[queen]];

    /// <summary>The mating of a queen, added where no daughter of hers is in the books.</summary>
    public int MatingOf(Guid queen)
    {
        if (_families.TryGetValue(queen, out var family)) return family;
        var links = _drones[queen].Where(link => _numbers.ContainsKey(link.FromId)).ToList();
        return _families[queen] = Pedigree.AddMating(_numbers[queen], SetOf([.. links.Select(link => _numbers[link.FromId])]), (double)(EffectiveDrones(queen) ?? (decimal)QueenPedigree.UsualDrones));
    }

    /// <summary>A mating that is only planned.</summary>
    public int Plan(Guid queen, IEnumerable<Guid> drones, double effective) => Pedigree.AddMating(_numbers[queen], SetOf([.. drones.Select(drone => _numbers[drone])]), effective);

    /// <summary>Effective number of drones that she met, where somebody has an opinion.</summary>
    public decimal? EffectiveDrones(Guid queen) => _effective.TryGetValue(queen, out var drones) ? drones : null;

    private int SetOf(int[] queens)
    {
        Array.Sort(queens);
        var key = string.Join(' ', queens);
        return _sets.TryGetValue(key, out var set) ? set : _sets[key] = Pedigree.AddDrones(queens);
    }

    /// <summary>Adds a queen after all that she came of, without recursion: lines of queens are long.</summary>
    private void Add(Guid queen)
    {
        var path = new Stack<Guid>([queen]);
        var open = new HashSet<Guid>();
        while (path.TryPeek(out var at))
        {
            if (_numbers.ContainsKey(at))
            {
                path.Pop();
                continue;
            }

            open.Add(at);
            var before = _inRings.Contains(at) || !_mothers.TryGetValue(at, out var link) ? [] : _drones[link.FromId].Select(drone => drone.FromId).Prepend(link.FromId).Where(id => !_numbers.ContainsKey(id)).ToList();
            if (before.Find(open.Contains) is var ring && ring != default)
            {
                // From here the way leads back: whoever stands on it between is her own ancestor.
                foreach (var one in path.TakeWhile(one => one != ring).Append(ring)) if (open.Contains(one)) _inRings.Add(one);
                continue;
            }

            if (before.Count > 0)
            {
                path.Push(before[0]);
                continue;
            }

            path.Pop();
            open.Remove(at);
            _numbers[at] = _inRings.Contains(at) || !_mothers.TryGetValue(at, out var mother) ? Pedigree.AddFounder() : Pedigree.AddDaughter(MatingOf(mother.FromId));
            _ids.Add(at);
        }
    }
}
