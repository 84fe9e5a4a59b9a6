using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>What the outfit has at hand by its own counts, its lots of medicine, and the rounds that are planned.</summary>
public sealed record StoreCard
{
    /// <summary>What is at hand, by what it is; in order.</summary>
    public IReadOnlyList<Stock> Stock { get; init; } = [];

    /// <summary>Lots of medicine by number, the last entry of a lot.</summary>
    public IReadOnlyDictionary<string, MedicineAcquired> Lots { get; init; } = new Dictionary<string, MedicineAcquired>();

    /// <summary>Rounds by name; the last plan counts. A plan without yards is taken back.</summary>
    public IReadOnlyDictionary<string, RoundPlanned> Rounds { get; init; } = new Dictionary<string, RoundPlanned>();

    public static StoreCard Fold(IEnumerable<Entry> entries)
    {
        var stock = new SortedDictionary<(StockOf Of, string Which, string Unit), Stock>(Comparer<(StockOf Of, string Which, string Unit)>.Create((left, right) => left.Of != right.Of ? left.Of.CompareTo(right.Of) : left.Which != right.Which ? string.CompareOrdinal(left.Which, right.Which) : string.CompareOrdinal(left.Unit, right.Unit)));
        var lots = new Dictionary<string, MedicineAcquired>(StringComparer.Ordinal);
        var rounds = new Dictionary<string, RoundPlanned>(StringComparer.Ordinal);
        foreach (var entry in entries)
            switch (entry)
            {
                case StockCounted counted:
                    stock[Key(counted.Of, counted.Which, counted.Amount)] = new Stock(counted.Of, counted.Which, counted.Amount, [counted]);
                    break;
                case StockChanged changed:
                    var key = Key(changed.Of, changed.Which, changed.Amount);
                    var before = stock.GetValueOrDefault(key) ?? new Stock(changed.Of, changed.Which, changed.Amount with { Amount = 0 }, []);
                    stock[key] = before with { Amount = before.Amount with { Amount = before.Amount.Amount + (changed.Out ? -changed.Amount.Amount : changed.Amount.Amount) }, By = [.. before.By, changed] };
                    break;
                case MedicineAcquired lot:
                    lots[lot.Lot] = lot;
                    break;
                case RoundPlanned { Stops.Count: 0 } round:
                    rounds.Remove(round.Round);
                    break;
                case RoundPlanned round:
                    rounds[round.Round] = round;
                    break;
            }

        return new StoreCard { Stock = [.. stock.Values], Lots = lots, Rounds = rounds };
    }

    private static (StockOf, string, string) Key(StockOf of, string? which, Quantity amount) => (of, which ?? "", amount.Unit);
}

/// <summary>Something at hand. It can be less than nothing, where more went out than was counted: then a count is due.</summary>
/// <param name="By">The last count and what came and went since.</param>
public sealed record Stock(StockOf Of, string? Which, Quantity Amount, IReadOnlyList<Entry> By);
