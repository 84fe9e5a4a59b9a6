using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Server.Messages;
using Wolverine;

namespace ColonyLineage.Server.Office;

/// <summary>The books as the desk's pages see them.</summary>
internal sealed class OfficeOverLedger(OutfitLedger ledger, IMessageBus bus, Clock clock) : IOffice
{
    public DateOnly Today => clock.Today;

    public async Task<OutfitCard> OutfitAsync(CancellationToken cancel) => (await BooksAsync(Ask.Everything, cancel)).Outfit;

    public Task<IReadOnlyList<TRow>> RowsAsync<TRow>(Question<TRow> question, Ask ask, CancellationToken cancel) where TRow : class, IRow =>
        ledger.RowsAsync(question, ask, cancel);

    public async Task<Books> BooksAsync(Ask ask, CancellationToken cancel) =>
        ask.LooksBack ? (await ledger.WholeAsync(ask.AsOf, ask.KnownAt, cancel)).Books : ledger.OpenBooks(cancel);

    public Task<IReadOnlyList<HistoryLine>> HistoryAsync(Subject subject, Ask ask, CancellationToken cancel) => ledger.HistoryAsync(subject, ask, cancel);

    public Task<IReadOnlyList<HistoryLine>> EntriesAsync(IReadOnlyCollection<EntryId> ids, CancellationToken cancel) => ledger.EntriesAsync(ids, cancel);

    public Task<IReadOnlyList<HistoryLine>> ActAsync(ActId act, CancellationToken cancel) => ledger.ActAsync(act, cancel);

    public async Task<IReadOnlyList<Refusal>> RecordAsync(IReadOnlyList<Entry> entries, CancellationToken cancel) =>
        (await bus.InvokeAsync<Receipt>(new RecordAct(entries), cancel)).Refusals;

    public async Task<IReadOnlyList<Refusal>> RunAsync(object request, CancellationToken cancel) =>
        (await bus.InvokeAsync<Receipt>(new RunAct(request), cancel)).Refusals;

    // Ten a second of the outfit's day: what is written later today comes later, and an act has room for its entries.
    public int NextOrder() => (int)(clock.TimeOfDay.ToTimeSpan().TotalSeconds * 10);

    public Guid NewId() => Guid.CreateVersion7(clock.Now.Instant);
}
