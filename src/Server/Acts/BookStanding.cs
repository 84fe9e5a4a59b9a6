using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Projections;
using ColonyLineage.Rules;

namespace ColonyLineage.Server.Acts;

/// <summary>
/// What the books say at the end of a day by everything that stands but one act's own entries. Only what a decision looks at is
/// read, so an act over one yard costs a yard, not the outfit.
/// </summary>
internal sealed class BookStanding : IStanding
{
    private readonly OutfitLedger _ledger;
    private readonly DateOnly _day;
    private readonly ActId _act;
    private readonly CancellationToken _cancel;
    private readonly Dictionary<Subject, IReadOnlyList<HistoryLine>> _read = [];
    private readonly Books _books;

    public BookStanding(OutfitLedger ledger, DateOnly day, ActId act, CancellationToken cancel)
    {
        (_ledger, _day, _act, _cancel) = (ledger, day, act, cancel);
        _books = new Books(subject => [.. Standing(subject).Where(entry => entry.On.Day <= _day)]);
    }

    public ColonyId? ColonyOn(Spot spot) =>
        _books.Yard(spot.Yard).Tenants.GetValueOrDefault(spot.Number)?
            .Select(colony => (Colony: colony, Stay: _books.Colony(colony).Standing))
            .Where(tenant => tenant.Stay is { Above: false } stay && stay.Spot == spot)
            .OrderBy(tenant => Place.Of(tenant.Stay!.CameBy))
            .Select(tenant => (ColonyId?)tenant.Colony).LastOrDefault();

    public IReadOnlyList<Tenant> ColoniesIn(YardId yard) =>
    [
        .. from colony in _books.Yard(yard).Tenants.Values.SelectMany(colonies => colonies).Distinct()
           let stay = _books.Colony(colony).Standing
           where stay is not null && stay.Spot.Yard == yard
           select new Tenant(colony, stay.Spot, stay.Above),
    ];

    public Spot? SpotOf(ColonyId colony) => _books.Colony(colony).Standing?.Spot;

    // As the question of queens by age has it: a queen that was set into another colony since no longer reigns here.
    public QueenId? QueenOf(ColonyId colony) =>
        _books.Colony(colony).Reigning?.Queen is { } queen && _books.Queen(queen).LastColony == colony ? queen : null;

    public bool Knows(Subject subject) => Standing(subject).Any();

    public Entry? Find(EntryId id) =>
        _ledger.EntriesAsync([id], _cancel).GetAwaiter().GetResult().Select(line => line.Entry).FirstOrDefault(entry => entry.Act != _act);

    private IEnumerable<Entry> Standing(Subject subject) =>
        Read(subject).Where(line => line.Entry.Act != _act && line.Entry is not Voided && (line.Void is not { } voiding || voiding.Entry.Act == _act)).Select(line => line.Entry);

    // Rules decide without waiting for anything, so what they look at is read while they do.
    private IReadOnlyList<HistoryLine> Read(Subject subject)
    {
        if (!_read.TryGetValue(subject, out var lines)) _read.Add(subject, lines = _ledger.HistoryAsync(subject, Ask.Everything, _cancel).GetAwaiter().GetResult());
        return lines;
    }
}
