using ColonyLineage.Desk;
using ColonyLineage.Desk.Forms;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Ledger.Import;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Server.Answers;
using ColonyLineage.Server.Import;
using ColonyLineage.Server.Messages;
using Wolverine;

namespace ColonyLineage.Server.Office;

/// <summary>The books as the desk's pages see them.</summary>
internal sealed class OfficeOverLedger(OutfitLedger ledger, RowsOverLedger rows, IMessageBus bus, Clock clock) : IOffice
{
    public DateOnly Today => clock.Today;

    public async Task<OutfitCard> OutfitAsync(CancellationToken cancel) => (await BooksAsync(Ask.Everything, cancel)).Outfit;

    public Task<IReadOnlyList<TRow>> RowsAsync<TRow>(Question<TRow> question, Ask ask, CancellationToken cancel) where TRow : class, IRow => rows.RowsAsync(question, ask, cancel);

    public Task<Household> HouseholdAsync(Ask clocks, CancellationToken cancel) => rows.HouseholdAsync(clocks, cancel);

    public Task<Books> BooksOnAsync(IReadOnlyList<Subject> subjects, Ask clocks, CancellationToken cancel) => rows.BooksOnAsync(subjects, clocks, cancel);

    public Task<IReadOnlyList<HistoryLine>> TreatmentsAsync(IReadOnlyCollection<ColonyId> colonies, Ask clocks, CancellationToken cancel) => rows.TreatmentsAsync(colonies, clocks, cancel);

    public async Task<Books> BooksAsync(Ask ask, CancellationToken cancel) =>
        ask.LooksBack ? (await ledger.WholeAsync(ask.AsOf, ask.KnownAt, cancel)).Books : ledger.OpenBooks(cancel);

    public Task<IReadOnlyList<HistoryLine>> HistoryAsync(Subject subject, Ask ask, CancellationToken cancel) => ledger.HistoryAsync(subject, ask, cancel);

    public Task<IReadOnlyList<HistoryLine>> EntriesAsync(IReadOnlyCollection<EntryId> ids, CancellationToken cancel) => ledger.EntriesAsync(ids, cancel);

    public Task<IReadOnlyList<HistoryLine>> ActAsync(ActId act, CancellationToken cancel) => ledger.ActAsync(act, cancel);

    public async Task<IReadOnlyList<Refusal>> RecordAsync(IReadOnlyList<Entry> entries, CancellationToken cancel) =>
        (await bus.InvokeAsync<Receipt>(new RecordAct(entries), cancel)).Refusals;

    public async Task<IReadOnlyList<Refusal>> RunAsync(object request, CancellationToken cancel) =>
        (await bus.InvokeAsync<Receipt>(new RunAct(request), cancel)).Refusals;

    public async Task<SheetPlan> PlanSheetAsync(byte[] sheet, string map, CancellationToken cancel)
    {
        using var csv = new MemoryStream(sheet);
        return Sheets.ForDesk(await Sheets.PlanAsync(ledger, csv, Mapping.Read(map), clock.Today, cancel: cancel));
    }

    public async Task<IReadOnlyList<Refusal>> RecordSheetAsync(byte[] sheet, string map, bool skipBad, CancellationToken cancel)
    {
        using var csv = new MemoryStream(sheet);
        var plan = await Sheets.PlanAsync(ledger, csv, Mapping.Read(map), clock.Today, cancel: cancel);
        return plan.Bad.Count > 0 && !skipBad ? Sheets.Refusals(plan) : (await ledger.RecordAsync(plan.Entries, cancel)).Refusals;
    }

    public async Task<IReadOnlyList<HistoryLine>> FindTextAsync(string words, int most, Ask ask, CancellationToken cancel)
    {
        var found = new List<Place>();
        await foreach (var one in ledger.ReadAllAsync(cancel))
            if (one.Entry is not Voided && (ask.KnownAt is null || one.At <= ask.KnownAt) && (ask.AsOf is null || one.Entry.On.Day <= ask.AsOf) && EntryText.Says(one.Entry, words))
                found.Add(Place.Of(one.Entry));
        var latest = found.OrderDescending().Take(most).Select(place => place.Id).ToList();
        if (latest.Count == 0) return [];
        var lines = await ledger.EntriesAsync(latest, cancel);
        return [.. lines.Select(line => ask.KnownAt is { } at && line.Void?.At > at ? line with { Void = null } : line).OrderByDescending(line => Place.Of(line.Entry))];
    }

    // Ten a second of the outfit's day: what is written later today comes later, and an act has room for its entries.
    public int NextOrder() => (int)(clock.TimeOfDay.ToTimeSpan().TotalSeconds * 10);

    public Guid NewId() => Guid.CreateVersion7(clock.Now.Instant);
}
