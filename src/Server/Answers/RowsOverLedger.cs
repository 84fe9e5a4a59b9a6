using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Server.Answers;

/// <summary>Rows of the whole outfit: kept in memory as they are now, folded live where the question looks back.</summary>
public sealed class RowsOverLedger(OutfitLedger ledger, ReadCache cache, Clock clock) : IRows
{
    /// <inheritdoc/>
    public DateOnly Today => clock.Today;

    /// <inheritdoc/>
    public Task<IReadOnlyList<TRow>> RowsAsync<TRow>(Question<TRow> question, Ask ask, CancellationToken cancel) where TRow : class, IRow =>
        ask == Ask.Everything ? cache.RowsAsync(question, cancel) : ledger.RowsAsync(question, ask, cancel);

    /// <inheritdoc/>
    public async Task<Household> HouseholdAsync(Ask clocks, CancellationToken cancel)
    {
        if (!clocks.LooksBack) return await cache.HouseholdAsync(cancel);
        var whole = await ledger.WholeAsync(clocks.AsOf, clocks.KnownAt, cancel);
        return new Household(whole.Books.Outfit, whole.Books.Store, [.. whole.Subjects.Where(subject => subject.Kind == SubjectKind.Yard).Select(subject => whole.Books.Yard(new YardId(subject.Id)))]);
    }

    /// <inheritdoc/>
    public async Task<Books> BooksOnAsync(IReadOnlyList<Subject> subjects, Ask clocks, CancellationToken cancel) =>
        clocks.LooksBack ? (await ledger.WholeAsync(clocks.AsOf, clocks.KnownAt, cancel)).Books : await ledger.OpenBooksAsync(subjects, cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<HistoryLine>> TreatmentsAsync(IReadOnlyCollection<ColonyId> colonies, Ask clocks, CancellationToken cancel) => ledger.TreatmentsAsync(colonies, clocks, cancel);
}
