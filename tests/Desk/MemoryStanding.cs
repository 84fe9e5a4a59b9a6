using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Rules;

namespace ColonyLineage.Desk.Tests;

/// <summary>What the books in memory say at the end of a day, by everything that stands but one act's own entries.</summary>
internal sealed class MemoryStanding(IReadOnlyList<Recorded> recorded, DateOnly day, ActId act) : IStanding
{
    private readonly List<Recorded> _others = [.. recorded.Where(one => one.Entry.Act != act)];
    private WholeBooks? _whole;

    private Books Books => (_whole ??= WholeBooks.Of(_others, day)).Books;

    public ColonyId? ColonyOn(Spot spot) => ColoniesIn(spot.Yard).Where(tenant => tenant.Spot == spot && !tenant.Above).Select(tenant => (ColonyId?)tenant.Colony).LastOrDefault();

    public IReadOnlyList<Tenant> ColoniesIn(YardId yard) =>
    [
        .. from colony in Books.Yard(yard).Tenants.Values.SelectMany(colonies => colonies).Distinct()
           let stay = Books.Colony(colony).Standing
           where stay is not null && stay.Spot.Yard == yard
           select new Tenant(colony, stay.Spot, stay.Above),
    ];

    public Spot? SpotOf(ColonyId colony) => Books.Colony(colony).Standing?.Spot;

    public QueenId? QueenOf(ColonyId colony) => Books.Colony(colony).Reigning?.Queen;

    public bool Knows(Subject subject) => _others.Any(one => one.Entry is not Voided && one.Entry.Concerns.Contains(subject));

    public Entry? Find(EntryId id) => _others.Select(one => one.Entry).FirstOrDefault(entry => entry.Id == id);
}
