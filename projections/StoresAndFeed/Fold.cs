using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.StoresAndFeed;

/// <summary>See question.md.</summary>
public sealed class StoresAndFeedQuestion : Question<StoresRow>
{
    public override string Name => "stores-and-feed";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    public override IEnumerable<StoresRow> RowsFor(Books books, Subject subject)
    {
        var colony = books.Colony(new ColonyId(subject.Id));
        if (colony.End is not null || colony.Began is null) yield break;
        yield return Row(books, colony);
    }

    private static StoresRow Row(Books books, ColonyCard colony)
    {
        var outfit = books.Outfit;
        var stay = colony.Standing;
        var lifted = colony.Counted.OfType<Inspected>().LastOrDefault(look => look.Heft is not null);
        var counted = colony.Counted.LastOrDefault(entry => entry is Inspected { FramesOfBees: not null } or ColonyEstablished { FramesOfBees: not null });
        var bees = counted is Inspected look ? look.FramesOfBees : (counted as ColonyEstablished)?.FramesOfBees;
        var target = colony.Housing is { } housing ? outfit.StoresTargets.GetValueOrDefault(housing) : null;
        var (weighed, before) = (colony.Counted.OfType<Weighed>().LastOrDefault(), colony.Counted.OfType<Weighed>().Reverse().Skip(1).FirstOrDefault());
        var tare = weighed is null ? null : weighed.Tare?.InKilograms() ?? target?.Tare?.InKilograms();
        var onDay = weighed?.Gross.InKilograms() - tare;
        var fed = Since(colony, weighed, outfit.SeasonStartMonth);
        var sugar = fed.Sum(feed => Feed.SugarOf(feed) ?? 0);
        var stores = onDay is { } had ? Round((double)had + (sugar * Feed.StoresOfSugar)) : (decimal?)null;
        var wanted = target?.Stores.InKilograms();
        var feeder = On(colony);
        var small = bees <= outfit.FewFramesOfBees || colony.Housing is Housing.NucBox or Housing.MatingNuc;
        var holds = feeder?.Holds?.InLitres();
        return new StoresRow
        {
            YardId = stay?.Spot.Yard,
            Yard = stay is null ? null : Names.Of(books.Yard(stay.Spot.Yard)),
            Spot = stay?.Spot.Number,
            ColonyId = colony.Colony,
            Colony = Names.Of(colony),
            Housing = colony.Housing,
            Small = small,
            Heft = lifted?.Heft,
            HeftOn = lifted?.On.Day,
            WeighedOn = weighed?.On.Day,
            GrossKg = Round(weighed?.Gross.InKilograms()),
            TareKg = Round(tare),
            WeighedStoresKg = Round(onDay),
            GainedKg = Round(weighed?.Gross.InKilograms() - before?.Gross.InKilograms()),
            GainedSince = before?.On.Day,
            FedSugarKg = Round(sugar),
            FedUnknown = fed.Count(feed => Feed.SugarOf(feed) is null),
            LastFed = fed.LastOrDefault()?.On.Day,
            StoresKg = stores,
            TargetKg = Round(wanted),
            TargetBy = target is null ? null : string.Join(", ", new[] { target.Region, target.Source }.OfType<string>()),
            LackingKg = stores is { } have && wanted is { } want ? Round(Math.Max(0, want - have)) : null,
            FeederOn = feeder?.On.Day,
            Feeder = feeder?.Feeder,
            FeederHoldsL = Round(holds),
            FeederPlace = feeder?.Place,
            Remarks = [.. Remarks(small, holds, fed)],
            Entries = Evidence.Of([lifted, counted, weighed, before, .. fed, feeder, target]),
        };
    }

    /// <summary>What was fed since the last weighing; of a colony that was never weighed, in the season of the last feed.</summary>
    private static List<Fed> Since(ColonyCard colony, Weighed? weighed, int startMonth)
    {
        var fed = colony.Counted.OfType<Fed>().ToList();
        if (fed.Count == 0) return fed;
        if (weighed is not null) return [.. fed.Where(feed => Place.Of(feed) > Place.Of(weighed))];
        var season = Season.Of(fed[^1].On.Day, startMonth);
        return [.. fed.Where(feed => Season.Of(feed.On.Day, startMonth) == season)];
    }

    private static FeederPutOn? On(ColonyCard colony)
    {
        FeederPutOn? on = null;
        foreach (var entry in colony.Counted)
            on = entry switch { FeederPutOn put => put, FeederTakenOff => null, _ => on };
        return on;
    }

    private static IEnumerable<string> Remarks(bool small, decimal? holds, IReadOnlyList<Fed> fed)
    {
        if (small && holds > Feed.LargeFrom) yield return FormattableString.Invariant($"a feeder of {holds:0.#} L on a small colony");
        foreach (var strong in fed.Select(Feed.TooStrong).OfType<string>().Distinct()) yield return strong;
    }

    private static decimal Round(double value) => Math.Round((decimal)value, 2);

    private static decimal? Round(decimal? value) => value is { } given ? Math.Round(given, 2) : null;
}
