using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.OwedWork;
using ColonyLineage.Projections.TreatmentRecord;
using ColonyLineage.Projections.WinterReadiness;

namespace ColonyLineage.Desk;

/// <summary>Puts together what answers over the whole outfit are reckoned from.</summary>
public static class Gather
{
    /// <summary>Work that is to come is listed so many days ahead.</summary>
    public const int Ahead = 28;

    /// <summary>What owed work is reckoned from, for a day.</summary>
    public static async Task<Facts> FactsAsync(IRows rows, Ask ask, DateOnly day, CancellationToken cancel)
    {
        var clocks = Clocks(ask);
        var household = await rows.HouseholdAsync(clocks, cancel);
        return new Facts(
            day,
            household.Outfit,
            household.Yards,
            await rows.RowsAsync(Questions.OpenWork, clocks, cancel),
            await rows.RowsAsync(Questions.DoseCompleteness, clocks, cancel),
            await rows.RowsAsync(Questions.MiteWatch, clocks, cancel),
            await rows.RowsAsync(Questions.QueensByAge, clocks, cancel),
            await rows.RowsAsync(Questions.Register, clocks, cancel),
            await rows.RowsAsync(Questions.SpotStory, clocks, cancel));
    }

    /// <summary>What is owed on a day, at what is asked for; yards of a planned round come in its order. What is to come later than in four weeks only where all is asked for.</summary>
    public static async Task<IReadOnlyList<OwedRow>> OwedAsync(IRows rows, Ask ask, DateOnly? on, string? round, CancellationToken cancel, bool all = false)
    {
        var facts = await FactsAsync(rows, ask, on ?? Day(rows, ask), cancel);
        var owed = Owed.Of(facts, all ? null : Ahead).Where(row => ask.Wants(row, Column.Of<OwedRow>())).ToList();
        if (round is null && on is null) return owed;
        var place = (await StopsAsync(rows, ask, on, round, cancel)).Select((stop, i) => (stop.Yard, i)).DistinctBy(stop => stop.Yard).ToDictionary(stop => stop.Yard, stop => stop.i);
        if (place.Count == 0) return owed;
        return [.. owed.Where(row => row.YardId is { } yard && place.ContainsKey(yard)).OrderBy(row => place[row.YardId!.Value])];
    }

    /// <summary>What must be on the trucks for a round, or for all yards that are planned for a day.</summary>
    public static async Task<IReadOnlyList<LoadRow>> LoadAsync(IRows rows, Ask ask, DateOnly? on, string? round, CancellationToken cancel)
    {
        var clocks = Clocks(ask);
        var household = await rows.HouseholdAsync(clocks, cancel);
        var stops = await StopsAsync(rows, ask, on, round, cancel);
        var day = on ?? stops.Select(stop => stop.On).Max() ?? Day(rows, ask);
        var names = household.Yards.ToDictionary(yard => yard.Yard, Projections.Cards.Names.Of);
        return LoadList.Of(stops, Owed.Of(await FactsAsync(rows, ask, day, cancel)), await rows.RowsAsync(Questions.StoresAndFeed, clocks, cancel), household.Store, yard => names.GetValueOrDefault(yard) ?? "");
    }

    /// <summary>
    /// The yards of a planned round, or those planned for a day; one yard by its name, where one is asked for; else the yards that owe something, by name.
    /// </summary>
    public static async Task<IReadOnlyList<RoundStop>> StopsAsync(IRows rows, Ask ask, DateOnly? on, string? round, CancellationToken cancel)
    {
        var household = await rows.HouseholdAsync(Clocks(ask), cancel);
        var planned = household.Store.Rounds.Values.OrderBy(plan => plan.Round, StringComparer.Ordinal)
            .Where(plan => round is null || string.Equals(plan.Round, round, StringComparison.OrdinalIgnoreCase)).SelectMany(plan => plan.Stops).ToList();
        if (round is not null && planned.Count == 0)
            throw new RefusedException(new Refusal(Refusals.NotFound, "round", household.Store.Rounds.Count == 0 ? "No round is planned." : $"There is no round '{round}'. Take one of {string.Join(", ", household.Store.Rounds.Keys.Order(StringComparer.Ordinal))}."));
        var stops = planned.Where(stop => on is null || stop.On == on).ToList();
        if (ask.Yard is { } wanted)
        {
            var yards = household.Yards.Where(yard => yard.Yard.Value.ToString() == wanted || string.Equals(Projections.Cards.Names.Of(yard), wanted, StringComparison.OrdinalIgnoreCase)).Select(yard => yard.Yard).ToHashSet();
            var there = stops.Where(stop => yards.Contains(stop.Yard)).ToList();
            return there.Count > 0 ? there : [.. yards.Select(yard => new RoundStop(yard))];
        }

        if (stops.Count > 0 && (on is not null || round is not null)) return stops;
        return [.. household.Yards.Where(yard => yard.Closed is null).OrderBy(Projections.Cards.Names.Of, ByNumber.Order).Select(yard => new RoundStop(yard.Yard))];
    }

    /// <summary>Each living colony against the owner's criteria, on a day; with what colonies have on and what the outfit has at hand.</summary>
    public static async Task<(IReadOnlyList<ReadinessRow> Rows, IReadOnlyList<RemedyRow> Remedies)> ReadinessAsync(IRows rows, Ask ask, CancellationToken cancel)
    {
        var clocks = Clocks(ask);
        var stores = await rows.RowsAsync(Questions.StoresAndFeed, clocks, cancel);
        var judged = Readiness.Of(await FactsAsync(rows, ask, Day(rows, ask), cancel), stores).Where(row => ask.Wants(row, Column.Of<ReadinessRow>())).ToList();
        return (judged, Remedies.Of(judged, stores, (await rows.HouseholdAsync(clocks, cancel)).Store));
    }

    /// <summary>The criteria of a past autumn against what came through the winter after it; the last winter that is over, where none is asked for.</summary>
    public static async Task<(DateOnly Day, DateOnly Until, IReadOnlyList<TruthRow> Rows)> TruthAsync(IRows rows, Ask ask, DateOnly? autumn, CancellationToken cancel)
    {
        var outfit = (await rows.HouseholdAsync(Clocks(ask), cancel)).Outfit;
        var day = autumn ?? Start(rows, ask, outfit);
        var until = outfit.WinterTo.From(outfit.WinterFrom.From(day));
        var (judged, _) = await ReadinessAsync(rows, ask with { AsOf = day }, cancel);
        return (day, until, until > Day(rows, ask) ? [] : Truth.Of(judged, await rows.RowsAsync(Questions.Losses, Clocks(ask), cancel), day, until));
    }

    private static DateOnly Start(IRows rows, Ask ask, Projections.Cards.OutfitCard outfit)
    {
        var end = outfit.WinterTo.From(Day(rows, ask).AddYears(-1));
        var start = outfit.WinterFrom.From(end.AddYears(-1));
        return start < end ? start : start.AddYears(-1);
    }

    /// <summary>Every treatment of a yard, a colony, a spot or a season as it was recorded, voided ones too.</summary>
    public static async Task<IReadOnlyList<TreatmentRow>> TreatmentsAsync(IRows rows, Ask ask, string? course, CancellationToken cancel)
    {
        var clocks = Clocks(ask);
        // A yard's treatments are those given while colonies stood there: the colonies that ever did are looked through.
        var bands = await rows.RowsAsync(Questions.SpotStory, clocks, cancel);
        var register = await rows.RowsAsync(Questions.Register, clocks, cancel);
        var colonies = register.Where(row => row.Kind == SubjectKind.Colony).Select(row => new ColonyId(row.Id)).ToList();
        if (ask.Colony is { } named) colonies = [.. register.Where(row => row.Kind == SubjectKind.Colony && (row.Id.ToString() == named || string.Equals(row.Name, named, StringComparison.OrdinalIgnoreCase))).Select(row => new ColonyId(row.Id))];
        else if (ask.Yard is { } yard) colonies = [.. bands.Where(band => band.YardId.Value.ToString() == yard || string.Equals(band.Yard, yard, StringComparison.OrdinalIgnoreCase)).Select(band => band.ColonyId).Distinct()];
        var lines = await rows.TreatmentsAsync(colonies, clocks, cancel);
        var books = await rows.BooksOnAsync([Subject.Outfit, Subject.Store, .. colonies.Select(colony => (Subject)colony)], clocks, cancel);
        var doses = await rows.RowsAsync(Questions.DoseCompleteness, clocks, cancel);
        return [.. Uses.Of(lines, books, doses).Where(row => ask.Wants(row, Column.Of<TreatmentRow>()) && (course is null || row.Course == course))];
    }

    /// <summary>The day that is meant where none is given: the day looked back to, else today.</summary>
    public static DateOnly Day(IRows rows, Ask ask) =>
        ask.AsOf ?? (ask.KnownAt is { } at && DateOnly.FromDateTime(at.UtcDateTime) < rows.Today ? DateOnly.FromDateTime(at.UtcDateTime) : rows.Today);

    /// <summary>The clocks alone: a yard's work depends on colonies that have left it.</summary>
    public static Ask Clocks(Ask ask) => new() { AsOf = ask.AsOf, KnownAt = ask.KnownAt };
}
