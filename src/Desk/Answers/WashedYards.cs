using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.MiteWatch;

namespace ColonyLineage.Desk;

/// <summary>What washes tell when they are put together: of all yards, for the untreated ones are what a treated one is compared with.</summary>
public sealed record WashedYards(IReadOnlyList<WashRow> Washes, OutfitCard Outfit)
{
    /// <summary>Reads them by the clocks asked for.</summary>
    public static async Task<WashedYards> OfAsync(IRows rows, Ask ask, CancellationToken cancel)
    {
        var clocks = Gather.Clocks(ask);
        return new WashedYards(await rows.RowsAsync(Questions.MiteWatch, clocks, cancel), (await rows.HouseholdAsync(clocks, cancel)).Outfit);
    }

    /// <summary>What treatments did in the yards asked for. A treatment is of the season in which the round after it ended.</summary>
    public IReadOnlyList<EfficacyRow> Treatments(Ask ask) =>
        [.. Efficacies.Of(Washes, Outfit).Where(row => (ask.Season is null || SeasonOf(row.AfterTo) == ask.Season) && ask.Wants(row, Column.Of<EfficacyRow>()))];

    /// <summary>From the last round of each yard asked for, in the season asked for; the growth is the outfit's setting.</summary>
    public IReadOnlyList<ForecastRow> Forecasts(Ask ask) =>
        [.. Forecast.OfLast(Rounds.Of(Washes, Outfit).Where(round => ask.Season is null || SeasonOf(round.To) == ask.Season), Outfit.MiteGrowth).Where(row => ask.Wants(row, Column.Of<ForecastRow>()))];

    private int SeasonOf(DateOnly day) => Season.Of(day, Outfit.SeasonStartMonth);
}
