using ColonyLineage.Entries;
using ColonyLineage.Rules;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

/// <summary>An invented outfit's books on one day, held in memory.</summary>
internal sealed class Books : IStanding
{
    private readonly HashSet<Subject> _known = [];
    private readonly List<Tenant> _tenants = [];
    private readonly Dictionary<ColonyId, QueenId> _queens = [];
    private readonly Dictionary<EntryId, Entry> _entries = [];

    /// <summary>
    /// Yard M: colony 12 with queen Q12 on spot 4, 40 with Q40 on 7 and the nuc A1 above it, 13 without a queen on 10. Yard K: nuc N3
    /// with QN on spot 3. Yard P: empty. Breeder queen B.
    /// </summary>
    public static Books Small() => new Books()
        .With("12", Spot("M", "4"), "Q12").With("40", Spot("M", "7"), "Q40").With("13", Spot("M", "10")).With("A1", Spot("M", "7"), above: true)
        .With("N3", Spot("K", "3"), "QN").With("Z", null).Knowing(Yard("P")).Knowing(Queen("B"));

    public static readonly Now Now = new(new DateTimeOffset(2026, 9, 10, 18, 0, 0, TimeSpan.Zero), new DateOnly(2026, 9, 10));

    public Books With(string colony, Spot? on, string? queen = null, bool above = false)
    {
        Knowing(Colony(colony));
        if (on is { } spot)
        {
            Knowing(spot.Yard);
            _tenants.Add(new Tenant(Colony(colony), spot, above));
        }

        if (queen is not null)
        {
            Knowing(Queen(queen));
            _queens[Colony(colony)] = Queen(queen);
        }

        return this;
    }

    public Books Knowing(Subject subject)
    {
        _known.Add(subject);
        return this;
    }

    public Books Holding(params Entry[] entries)
    {
        foreach (var entry in entries) _entries[entry.Id] = entry;
        return this;
    }

    public ColonyId? ColonyOn(Spot spot) =>
        _tenants.Where(tenant => tenant.Spot == spot && !tenant.Above).Select(tenant => (ColonyId?)tenant.Colony).FirstOrDefault();

    public IReadOnlyList<Tenant> ColoniesIn(YardId yard) => [.. _tenants.Where(tenant => tenant.Spot.Yard == yard)];

    public Spot? SpotOf(ColonyId colony) => _tenants.Where(tenant => tenant.Colony == colony).Select(tenant => (Spot?)tenant.Spot).FirstOrDefault();

    public QueenId? QueenOf(ColonyId colony) => _queens.TryGetValue(colony, out var queen) ? queen : null;

    public bool Knows(Subject subject) => _known.Contains(subject);

    public Entry? Find(EntryId id) => _entries.GetValueOrDefault(id);
}
