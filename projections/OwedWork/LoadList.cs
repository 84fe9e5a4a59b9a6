using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.StoresAndFeed;

namespace ColonyLineage.Projections.OwedWork;

/// <summary>What must be on the truck: for the yards of a round in their order, by truck, and in all; with what runs short.</summary>
public static class LoadList
{
    /// <summary>What doses are counted in.</summary>
    private const string FullDose = "full dose";

    /// <param name="stops">The yards, in the order of the round.</param>
    /// <param name="owed">What is owed on the day, of any yards.</param>
    /// <param name="stores">What colonies have on, of any yards.</param>
    /// <param name="store">What the outfit has at hand.</param>
    /// <param name="nameOf">A yard's name.</param>
    public static IReadOnlyList<LoadRow> Of(IReadOnlyList<RoundStop> stops, IEnumerable<OwedRow> owed, IEnumerable<StoresRow> stores, StoreCard store, Func<YardId, string> nameOf)
    {
        var due = owed.Where(row => row.State is Due.Now or Due.Late && row.YardId is not null).ToLookup(row => row.YardId!.Value);
        var fed = stores.Where(row => row.YardId is not null).ToLookup(row => row.YardId!.Value);
        var yards = new List<LoadRow>();
        for (var i = 0; i < stops.Count; i++)
        {
            var stop = stops[i];
            yards.AddRange(Gather(due[stop.Yard].Select(Need).OfType<LoadRow>().Concat(Feeding([.. fed[stop.Yard]])))
                .Select(row => row with { Truck = stop.Truck, On = stop.On, Stop = i + 1, YardId = stop.Yard, Yard = nameOf(stop.Yard), Why = stop.Why }));
        }

        var trucks = yards.GroupBy(row => row.Truck).OrderBy(truck => truck.Key, ByNumber.Order).ToList();
        return
        [
            .. yards,
            .. trucks.Count > 1 ? trucks.Where(truck => truck.Key is not null).SelectMany(truck => Gather(truck.Select(Bare)).Select(row => row with { Truck = truck.Key })) : [],
            .. Gather(yards.Select(Bare)).Select(row => AtHand(row, store)),
        ];
    }

    private static LoadRow Bare(LoadRow row) => row with { Truck = null, On = null, Stop = null, YardId = null, Yard = null, Why = null };

    private static LoadRow? Need(OwedRow row) => row is not { Load: { } thing, LoadAmount: { } amount } ? null : new LoadRow
    {
        Thing = thing,
        Which = row.LoadWhich,
        Amount = amount,
        Unit = thing == StockOf.Doses ? FullDose : Units.Piece,
        For = row.Work,
        Entries = row.Entries,
    };

    private static IEnumerable<LoadRow> Feeding(IReadOnlyList<StoresRow> rows)
    {
        if (rows.Count == 0) yield break;
        var total = NextRound.Of(rows)[^1];
        if (total.SugarKg > 0) yield return Thing(StockOf.Sugar, null, total.SugarKg, "kg");
        if (total.LargeFeeders > 0) yield return Thing(StockOf.Feeders, "large", total.LargeFeeders, Units.Piece);
        if (total.SmallFeeders > 0) yield return Thing(StockOf.Feeders, "small", total.SmallFeeders, Units.Piece);

        LoadRow Thing(StockOf thing, string? which, decimal amount, string unit) => new() { Thing = thing, Which = which, Amount = amount, Unit = unit, For = "feeding", Entries = total.Entries };
    }

    /// <summary>Things of a kind together.</summary>
    private static IEnumerable<LoadRow> Gather(IEnumerable<LoadRow> rows) =>
        rows.GroupBy(row => (row.Thing, row.Which, row.Unit)).OrderBy(thing => thing.Key.Thing).ThenBy(thing => thing.Key.Which, StringComparer.Ordinal).ThenBy(thing => thing.Key.Unit, StringComparer.Ordinal)
            .Select(thing => thing.First() with
            {
                Amount = thing.Sum(row => row.Amount),
                For = string.Join(", ", thing.SelectMany(row => row.For.Split(", ")).Distinct().Order(StringComparer.Ordinal)),
                Entries = [.. thing.SelectMany(row => row.Entries).Distinct()],
            });

    /// <summary>Counts in another unit of the same kind are converted; where several kinds were counted and none was asked for, they are added.</summary>
    private static LoadRow AtHand(LoadRow row, StoreCard store)
    {
        var counted = store.Stock.Where(stock => stock.Of == row.Thing && (row.Which is null || string.Equals(stock.Which, row.Which, StringComparison.OrdinalIgnoreCase)))
            .Select(stock => (stock.By, Amount: In(stock.Amount, row.Unit))).Where(stock => stock.Amount is not null).ToList();
        if (counted.Count == 0) return row;
        var have = Math.Round(counted.Sum(stock => stock.Amount!.Value), 1);
        return row with { AtHand = have, Short = Math.Max(0, row.Amount - have), Entries = [.. row.Entries.Concat(counted.SelectMany(stock => stock.By).Select(entry => entry.Id)).Distinct()] };
    }

    private static decimal? In(Quantity amount, string unit) => amount.Unit == unit || (unit == FullDose && amount.Unit == Units.Piece) ? amount.Amount : unit == "kg" ? amount.InKilograms() : unit == "L" ? amount.InLitres() : null;
}
