using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.DoseCompleteness;

namespace ColonyLineage.Projections.TreatmentRecord;

/// <summary>Every treatment as recorded. See question.md.</summary>
public static class Uses
{
    /// <summary>The uses in the order of things.</summary>
    /// <param name="lines">Treatments and takings-out as the history has them, voided ones among them.</param>
    /// <param name="books">The books by the same clocks: where colonies stood, what they are called.</param>
    /// <param name="doses">Dose completeness of the colonies; where a row is missing its columns stay empty.</param>
    public static IReadOnlyList<TreatmentRow> Of(IReadOnlyList<HistoryLine> lines, Books books, IEnumerable<DoseRow> doses)
    {
        var had = doses.ToLookup(row => (row.ColonyId, row.Course, row.Season));
        return [.. lines.Where(line => line.Entry is Treated).OrderBy(line => Place.Of(line.Entry)).Select(line => Row(line, (Treated)line.Entry, books, had))];
    }

    /// <summary>What is missing, most uses first.</summary>
    public static IReadOnlyList<MissingRow> Missing(IEnumerable<TreatmentRow> rows) =>
    [
        .. rows.Where(row => !row.Voided).SelectMany(row => row.Missing).GroupBy(what => what).Select(what => new MissingRow(what.Key, what.Count()))
            .OrderByDescending(what => what.Uses).ThenBy(what => what.What, StringComparer.Ordinal),
    ];

    private static TreatmentRow Row(HistoryLine line, Treated use, Books books, ILookup<(ColonyId, string, int), DoseRow> had)
    {
        var colony = books.Colony(use.Colony);
        var stay = colony.Stays.LastOrDefault(stay => Place.Of(stay.CameBy) <= Place.Of(use));
        var course = books.Outfit.Courses.GetValueOrDefault(use.Course);
        var lot = use.Lot is { } number ? books.Store.Lots.GetValueOrDefault(number) : null;
        var season = Season.Of(use.On.Day, books.Outfit.SeasonStartMonth);
        // A course of several doses in a season is taken out after the last of them.
        var next = colony.Counted.OfType<Treated>().FirstOrDefault(other => other.Course == use.Course && Place.Of(other) > Place.Of(use) && Season.Of(other.On.Day, books.Outfit.SeasonStartMonth) == season);
        var taken = course?.TakenOut != true ? null
            : colony.Counted.OfType<TreatmentTakenOut>().FirstOrDefault(entry => entry.Course == use.Course && Place.Of(entry) > Place.Of(use) && (next is null || Place.Of(entry) < Place.Of(next)));
        var yard = stay is null ? null : books.Yard(stay.Spot.Yard);
        var maximum = yard?.Maxima.GetValueOrDefault(use.On.Day);
        var complete = had[(use.Colony, use.Course, season)].FirstOrDefault();
        var withheldFrom = course?.TakenOut == true ? taken?.On.Day : use.On.Day;
        return new TreatmentRow
        {
            YardId = stay?.Spot.Yard,
            Yard = yard is null ? null : Names.Of(yard),
            Spot = stay?.Spot.Number,
            ColonyId = use.Colony,
            Colony = Names.Of(colony),
            Since = Became(books, colony, stay),
            Season = season,
            On = use.On.Day,
            TakenOut = taken?.On.Day,
            Days = taken?.On.Day.DayNumber - use.On.Day.DayNumber,
            Course = use.Course,
            Doses = use.Doses,
            Substance = use.Substance ?? lot?.Substance ?? course?.Substance,
            Product = use.Product ?? lot?.Product,
            Lot = use.Lot,
            Amount = use.Amount?.Amount,
            Unit = use.Amount?.Unit,
            Supplier = lot?.Supplier,
            Proof = lot?.Proof,
            Prescriber = lot?.Prescriber,
            WithdrawalDays = course?.WithholdingDays,
            WithdrawalUntil = course?.WithholdingDays is { } days ? withheldFrom?.AddDays(days) : null,
            SupersOn = use.SupersOn,
            DailyMaximumC = maximum is null ? null : Math.Round(maximum.Maximum.Celsius, 1),
            CourseHad = complete?.Had,
            CourseFull = complete?.FullDoses,
            By = use.By,
            Recorded = Instant(line.Recorded.At),
            DaysLate = DateOnly.FromDateTime(line.Recorded.At.UtcDateTime).DayNumber - use.On.Day.DayNumber,
            Voided = line.IsVoided,
            VoidedBy = line.Void?.Entry.By,
            VoidedAt = line.Void is { } at ? Instant(at.At) : null,
            VoidedWhy = line.VoidedWhy,
            Missing = line.IsVoided ? [] : [.. Lacks(use, lot, course, taken, next)],
            Entries = [use.Id, .. Evidence.Of([course, lot, taken, maximum]).Where(id => id != use.Id), .. line.Void is { } gone ? [gone.Entry.Id] : Array.Empty<EntryId>()],
        };
    }

    private static IEnumerable<string> Lacks(Treated use, MedicineAcquired? lot, CourseDefined? course, TreatmentTakenOut? taken, Treated? next)
    {
        if (use.Product is null && lot is null) yield return "product";
        if (use.Substance is null && lot?.Substance is null && course?.Substance is null) yield return "active substance";
        if (use.Amount is null) yield return "amount";
        if (use.Lot is null) yield return "lot";
        else if (lot is null) yield return "purchase of the lot";
        else if (lot.Supplier is null) yield return "supplier of the lot";
        if (use.By is null) yield return "who did it";
        if (course is null) yield return "definition of the course";
        else if (course.WithholdingDays is null) yield return "withdrawal period in the course";
        if (course?.TakenOut == true && taken is null && next is null) yield return "taken out";
    }

    private static string? Became(Books books, ColonyCard colony, Stay? stay) => colony.End switch
    {
        { How: EndKind.Dead } end => $"found dead {end.On}",
        { How: EndKind.Combined } end => $"combined into {Names.Of(books.Colony(end.Into!.Value))} {end.On}",
        { How: EndKind.GivenUp } end => $"given up {end.On}",
        { How: EndKind.Sold } end => $"sold {end.On}",
        _ => colony.Standing is { } now && stay is not null && now.Spot != stay.Spot ? $"moved to {Names.Of(books.Yard(now.Spot.Yard))} {now.Spot.Number}, {now.From}" : null,
    };

    private static string Instant(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm'Z'", CultureInfo.InvariantCulture);
}
