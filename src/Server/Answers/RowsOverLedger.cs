using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Projections;

namespace ColonyLineage.Server.Answers;

/// <summary>Rows of the whole outfit: kept in memory as they are now, folded live where the question looks back.</summary>
public sealed class RowsOverLedger(OutfitLedger ledger, ReadCache cache, Clock clock) : IRows
{
    private readonly SemaphoreSlim _one = new(1);

    // One answer asks for the rows of many questions: the books of a past day are folded once for all of them, and let go of when memory is wanted.
    private (Ask Clocks, long Version, WeakReference<WholeBooks> Books)? _past;

    /// <inheritdoc/>
    public DateOnly Today => clock.Today;

    /// <inheritdoc/>
    public async Task<IReadOnlyList<TRow>> RowsAsync<TRow>(Question<TRow> question, Ask ask, CancellationToken cancel) where TRow : class, IRow
    {
        if (ask == Ask.Everything) return await cache.RowsAsync(question, cancel);
        if (!ask.LooksBack) return await ledger.RowsAsync(question, ask, cancel);
        return await LookBackAsync<IReadOnlyList<TRow>>(ask, whole => [.. whole.Rows(question).Where(row => ask.Wants(row, question.Columns))], cancel);
    }

    /// <inheritdoc/>
    public Task<Household> HouseholdAsync(Ask clocks, CancellationToken cancel) => clocks.LooksBack
        ? LookBackAsync(clocks, whole => new Household(whole.Books.Outfit, whole.Books.Store, [.. whole.Subjects.Where(subject => subject.Kind == SubjectKind.Yard).Select(subject => whole.Books.Yard(new YardId(subject.Id)))]), cancel)
        : cache.HouseholdAsync(cancel);

    /// <inheritdoc/>
    public async Task<Books> BooksOnAsync(IReadOnlyList<Subject> subjects, Ask clocks, CancellationToken cancel) =>
        clocks.LooksBack ? (await ledger.WholeAsync(clocks.AsOf, clocks.KnownAt, cancel)).Books : await ledger.OpenBooksAsync(subjects, cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<HistoryLine>> TreatmentsAsync(IReadOnlyCollection<ColonyId> colonies, Ask clocks, CancellationToken cancel) => ledger.TreatmentsAsync(colonies, clocks, cancel);

    // Books fold as they are read: one reader at a time.
    private async Task<T> LookBackAsync<T>(Ask ask, Func<WholeBooks, T> read, CancellationToken cancel)
    {
        var (clocks, version) = (new Ask { AsOf = ask.AsOf, KnownAt = ask.KnownAt }, await ledger.VersionAsync(cancel));
        await _one.WaitAsync(cancel);
        try
        {
            if (_past is { } past && past.Clocks == clocks && past.Version == version && past.Books.TryGetTarget(out var kept)) return read(kept);
            var whole = await ledger.WholeAsync(clocks.AsOf, clocks.KnownAt, cancel);
            _past = (clocks, version, new WeakReference<WholeBooks>(whole));
            return read(whole);
        }
        finally
        {
            _one.Release();
        }
    }
}
