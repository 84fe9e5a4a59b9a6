using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.StoresAndFeed;

namespace ColonyLineage.Projections.WinterReadiness;

/// <summary>Whether queens, nucs and sugar at hand suffice for what stands in the way.</summary>
public static class Remedies
{
    public static IReadOnlyList<RemedyRow> Of(IEnumerable<ReadinessRow> rows, IEnumerable<StoresRow> stores, StoreCard store)
    {
        var open = rows.Where(row => row.Met == Met.NotMet).ToList();
        var lacking = stores.Where(row => row.LackingKg > 0).ToDictionary(row => row.ColonyId);
        var queens = open.Where(row => row.Criterion == "queen").ToList();
        var nucs = open.Where(row => row.Criterion == "bees").ToList();
        var fed = open.Where(row => row.Criterion == "stores" && lacking.ContainsKey(row.ColonyId)).ToList();
        var sugar = (decimal)Math.Round((double)fed.Sum(row => lacking[row.ColonyId].LackingKg!.Value) / Feed.StoresOfSugar, 1);
        return [Row(StockOf.MatedQueens, queens.Count, Units.Piece, queens), Row(StockOf.Nucs, nucs.Count, Units.Piece, nucs), Row(StockOf.Sugar, sugar, "kg", fed)];

        RemedyRow Row(StockOf thing, decimal wanted, string unit, IReadOnlyList<ReadinessRow> at)
        {
            var counted = store.Stock.Where(stock => stock.Of == thing).Select(stock => (stock.By, Amount: unit == "kg" ? stock.Amount.InKilograms() : stock.Amount.Unit == unit ? stock.Amount.Amount : null)).Where(stock => stock.Amount is not null).ToList();
            var have = counted.Count == 0 ? (decimal?)null : Math.Round(counted.Sum(stock => stock.Amount!.Value), 1);
            return new RemedyRow
            {
                Thing = thing,
                Wanted = wanted,
                Unit = unit,
                Colonies = at.Count,
                AtHand = have,
                Short = have is { } enough ? Math.Max(0, wanted - enough) : null,
                Entries = [.. at.SelectMany(row => row.Entries).Concat(counted.SelectMany(stock => stock.By).Select(entry => entry.Id)).Distinct()],
            };
        }
    }
}
