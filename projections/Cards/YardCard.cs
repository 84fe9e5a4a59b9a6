using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>A yard: what is said of it, its spots, and which colonies were ever set on one of them.</summary>
public sealed record YardCard
{
    public required YardId Yard { get; init; }

    /// <summary>Something stands that names it. What was all voided leaves no yard behind.</summary>
    public bool IsKnown { get; init; }

    public string? Name { get; init; }

    public string? Landowner { get; init; }

    public string? Access { get; init; }

    public string? RunAs { get; init; }

    public DateOnly? Opened { get; init; }

    public DateOnly? Closed { get; init; }

    /// <summary>Every spot that was marked or that a colony ever stood on, by number.</summary>
    public IReadOnlyDictionary<string, SpotCard> Spots { get; init; } = new Dictionary<string, SpotCard>();

    /// <summary>Colonies that were ever set on a spot, by its number, in the order in which they first came.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<ColonyId>> Tenants { get; init; } = new Dictionary<string, IReadOnlyList<ColonyId>>();

    /// <summary>The daily maxima that are known, by day; of two the later entry counts.</summary>
    public IReadOnlyDictionary<DateOnly, DailyMaximum> Maxima { get; init; } = new Dictionary<DateOnly, DailyMaximum>();

    /// <summary>The entries about the yard itself.</summary>
    public IReadOnlyList<Entry> Entries { get; init; } = [];

    public static YardCard Fold(YardId yard, IReadOnlyList<Entry> entries)
    {
        var card = new YardCard { Yard = yard, IsKnown = entries.Count > 0 };
        var spots = new Dictionary<string, SpotCard>(StringComparer.Ordinal);
        var tenants = new Dictionary<string, List<ColonyId>>(StringComparer.Ordinal);
        var maxima = new Dictionary<DateOnly, DailyMaximum>();
        var own = new List<Entry>();
        foreach (var entry in entries)
        {
            if (entry.Stream == yard && entry is not DailyMaximum) own.Add(entry);
            switch (entry)
            {
                case YardOpened opened:
                    card = card with { Name = opened.Name, Landowner = opened.Landowner, Access = opened.Access, RunAs = opened.RunAs, Opened = opened.On.Day, Closed = null };
                    break;
                case YardDescribed described:
                    card = card with
                    {
                        Name = described.Name ?? card.Name,
                        Landowner = described.Landowner ?? card.Landowner,
                        Access = described.Access ?? card.Access,
                        RunAs = described.RunAs ?? card.RunAs,
                    };
                    break;
                case YardClosed closed:
                    card = card with { Closed = closed.On.Day };
                    break;
                case SpotMarked marked:
                    spots[marked.Spot.Number] = Spot(marked.Spot.Number) with { Row = marked.Row, Place = marked.Place, Retired = null };
                    break;
                case SpotRetired retired:
                    spots[retired.Spot.Number] = Spot(retired.Spot.Number) with { Retired = retired.On.Day };
                    break;
                case DailyMaximum maximum:
                    maxima[maximum.On.Day] = maximum;
                    break;
                case ColonyEstablished { At: { } at } established when at.Yard == yard:
                    Came(established.Colony, at.Number);
                    break;
                case Moved moved when moved.To.Yard == yard:
                    Came(moved.Colony, moved.To.Number);
                    break;
            }
        }

        return card with { Spots = spots, Tenants = tenants.ToDictionary(spot => spot.Key, IReadOnlyList<ColonyId> (spot) => spot.Value, StringComparer.Ordinal), Maxima = maxima, Entries = own };

        SpotCard Spot(string number) => spots.TryGetValue(number, out var known) ? known : new SpotCard(number, null, null, null);

        void Came(ColonyId colony, string number)
        {
            spots.TryAdd(number, Spot(number));
            if (!tenants.TryGetValue(number, out var came)) tenants.Add(number, came = []);
            if (!came.Contains(colony)) came.Add(colony);
        }
    }
}

/// <summary>A numbered place: where it stands in the yard (row from the gate, place from the left) and whether it is retired.</summary>
public sealed record SpotCard(string Number, int? Row, int? Place, DateOnly? Retired);
