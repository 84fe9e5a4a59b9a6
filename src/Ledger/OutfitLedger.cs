using ColonyLineage.Entries;
using ColonyLineage.Ledger.Loading;
using ColonyLineage.Ledger.Reading;
using ColonyLineage.Ledger.Recording;
using ColonyLineage.Ledger.Store;
using ColonyLineage.Ledger.Tables;
using ColonyLineage.Projections;
using JasperFx;
using Marten;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace ColonyLineage.Ledger;

/// <summary>
/// The books of one outfit, kept in a PostgreSQL schema of its own: entries are recorded in Marten's streams, answers are kept in read
/// tables that follow them. Safe for use by many callers at once, in one process and in several.
/// </summary>
public sealed class OutfitLedger : IAsyncDisposable
{
    private readonly NpgsqlDataSource _source;
    private readonly OutfitName _outfit;
    private readonly LedgerOptions _options;
    private readonly Schema _schema;
    private readonly KeepingAside _aside;
    private readonly Recorder _recorder;
    private readonly Rebuilding _rebuilding;
    private readonly CatchingUp _catchingUp;
    private readonly DocumentStore _store;
    private readonly System.Collections.Concurrent.ConcurrentDictionary<IQuestion, object> _kept = [];
    private Watching? _watching;
    private volatile bool _behind;

    private OutfitLedger(NpgsqlDataSource source, OutfitName outfit, LedgerOptions options)
    {
        (_source, _outfit, _options) = (source, outfit, options);
        _schema = new Schema(outfit, options.DurableReadTables);
        _rebuilding = new Rebuilding(source, _schema);
        _catchingUp = new CatchingUp(source, _schema, _rebuilding);
        _store = MartenStore.Make(source, outfit, AutoCreate.None, options.RunDaemon ? marten => Watching.Register(marten, CatchUpAsync) : null);
        _aside = new KeepingAside(source, outfit);
        _recorder = new Recorder(source, _store, outfit, _aside);
    }

    /// <summary>Marten's own store over the outfit's streams, for reading.</summary>
    public IDocumentStore Store => _store;

    /// <summary>The outfit's short name: the schema.</summary>
    public string Outfit => _outfit.Name;

    /// <summary>Opens the books of an outfit; makes them where there are none.</summary>
    /// <param name="connectionString">Any PostgreSQL of version 14 or later that Npgsql reaches.</param>
    /// <param name="outfit">The outfit's short name: a small letter, then up to 40 small letters, digits or underscores.</param>
    /// <param name="options">How to run it.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<OutfitLedger> OpenAsync(string connectionString, string outfit, LedgerOptions options, CancellationToken cancel)
    {
        var name = new OutfitName(outfit);
        var source = NpgsqlDataSource.Create(Preparing(connectionString));
        try
        {
            await Opening.EnsureAsync(source, name, cancel);
            var ledger = new OutfitLedger(source, name, options);
            await ledger.CatchUpAsync(cancel);
            if (options.RunDaemon) await ledger._catchingUp.HoldWholeAsync(cancel);
            if (options.RunDaemon) ledger._watching = await Watching.StartAsync(ledger._store, ledger.CatchUpAsync, options.Log, cancel);
            return ledger;
        }
        catch
        {
            await source.DisposeAsync();
            throw;
        }
    }

    /// <summary>
    /// Records the entries of an act: all or none, in one transaction. Entries that were recorded before with the same content are known
    /// and change nothing. When it returns, the read tables hold them.
    /// </summary>
    public async Task<Receipt> RecordAsync(IReadOnlyList<Entry> entries, CancellationToken cancel)
    {
        var receipt = await _recorder.RecordAsync(entries, cancel);
        if (receipt.New.Count == 0) return receipt;
        try
        {
            await CatchUpAsync(cancel);
        }
        catch (Exception problem)
        {
            // Recorded is recorded. Whoever reads next, or the daemon, catches up.
            _behind = true;
            _options.Log.LogWarning(problem, "The read tables of {Outfit} could not follow an act just recorded.", Outfit);
        }

        return receipt;
    }

    /// <summary>Records and stops there, as a process does that is killed right after its commit.</summary>
    internal Task<Receipt> RecordWithoutFollowingAsync(IReadOnlyList<Entry> entries, CancellationToken cancel) => _recorder.RecordAsync(entries, cancel);

    /// <summary>Brings the read tables up to everything that is committed, whoever recorded it.</summary>
    public async Task CatchUpAsync(CancellationToken cancel)
    {
        await _catchingUp.RunAsync(cancel);
        _behind = false;
    }

    /// <summary>The rows that are asked for, in the order of <see cref="WholeBooks.Rows{TRow}"/>: from the read table, or folded live where the question looks back.</summary>
    public async Task<IReadOnlyList<TRow>> RowsAsync<TRow>(Question<TRow> question, Ask ask, CancellationToken cancel) where TRow : class, IRow
    {
        await FreshenAsync(cancel);
        if (!ask.LooksBack) return await new RowReading(_source).RowsAsync<TRow>(Table(question), ask, cancel);
        var whole = await WholeAsync(ask.AsOf, ask.KnownAt, cancel);
        return [.. whole.Rows(question).Where(row => ask.Wants(row, question.Columns))];
    }

    /// <summary>All rows of a question as they are now, kept in memory from one time to the next; in the same order, and the same objects where nothing changed.</summary>
    public async Task<IReadOnlyList<TRow>> KeptRowsAsync<TRow>(Question<TRow> question, CancellationToken cancel) where TRow : class, IRow
    {
        var version = await VersionAsync(cancel);
        return await ((KeptRows<TRow>)_kept.GetOrAdd(question, _ => new KeptRows<TRow>(_source, _schema, _catchingUp.Changes, question))).AtAsync(version, cancel);
    }

    /// <summary>Writes the rows that are asked for as a JSON array (<see cref="RowJson"/>), straight from the read table where it can.</summary>
    public async Task WriteJsonAsync(IQuestion question, Ask ask, Stream utf8, CancellationToken cancel)
    {
        await FreshenAsync(cancel);
        if (!ask.LooksBack)
        {
            await new RowReading(_source).WriteJsonAsync(Table(question), ask, utf8, cancel);
            return;
        }

        var whole = await WholeAsync(ask.AsOf, ask.KnownAt, cancel);
        var rows = whole.Subjects.Where(subject => question.Asks(subject.Kind)).SelectMany(subject => question.Rows(whole.Books, subject));
        await utf8.WriteAsync(RowJson.Array(rows.Where(row => ask.Wants(row, question.Columns)), question.Columns), cancel);
    }

    /// <summary>A number that grows whenever the read tables take something in: what was worked out of them is good as long as it stays.</summary>
    public async Task<long> VersionAsync(CancellationToken cancel)
    {
        await FreshenAsync(cancel);
        await using var command = _source.CreateCommand($"select version from {_schema.State}");
        return (long)(await command.ExecuteScalarAsync(cancel) ?? 0L);
    }

    /// <summary>Every entry that was ever recorded, voids among them, in the order of recording.</summary>
    public IAsyncEnumerable<Recorded> ReadAllAsync(CancellationToken cancel) => new WholeReading(_source, _outfit).InOrderOfRecordingAsync(cancel);

    /// <summary>All entries in memory, folded as they are looked at, by the clocks asked for.</summary>
    public Task<WholeBooks> WholeAsync(DateOnly? asOf, DateTimeOffset? knownAt, CancellationToken cancel) =>
        new WholeReading(_source, _outfit).BooksAsync(asOf, knownAt, cancel);

    /// <summary>Books that fetch the entries of a subject when it is first looked at: today, all that is known. For one reader, for a short while.</summary>
    public Books OpenBooks(CancellationToken cancel)
    {
        // What is fetched by itself is put in order by the same books that the read tables are worked out of.
        var live = new LiveBooks("");
        live.Fetch = subject =>
        {
            cancel.ThrowIfCancellationRequested();
            using var connection = _source.OpenConnection();
            return SubjectReading.Read(connection, _outfit, subject);
        };
        return live.Books;
    }

    /// <summary>The same, with some subjects fetched at once.</summary>
    public async Task<Books> OpenBooksAsync(IReadOnlyList<Subject> first, CancellationToken cancel)
    {
        var live = new LiveBooks("") { Fetch = subject => { using var connection = _source.OpenConnection(); return SubjectReading.Read(connection, _outfit, subject); } };
        await using var connection = await _source.OpenConnectionAsync(cancel);
        live.Hold(first, await SubjectReading.ReadAsync(connection, _outfit, first, cancel));
        return live.Books;
    }

    /// <summary>All that was recorded about a subject but voids, in the order of things; voided entries with the void that names them.</summary>
    public Task<IReadOnlyList<HistoryLine>> HistoryAsync(Subject subject, Ask ask, CancellationToken cancel) => new History(_source, _outfit).OfSubjectAsync(subject, ask, cancel);

    /// <summary>Treatments and takings-out of some colonies, voided ones among them, in the order of things.</summary>
    public Task<IReadOnlyList<HistoryLine>> TreatmentsAsync(IReadOnlyCollection<ColonyId> colonies, Ask ask, CancellationToken cancel) =>
        new History(_source, _outfit).OfKindsAsync(colonies, [Kinds.Of(typeof(Treated)).Stored, Kinds.Of(typeof(TreatmentTakenOut)).Stored], ask, cancel);

    /// <summary>Entries by their ids, in the order of things; ids that are not in the books are left out.</summary>
    public Task<IReadOnlyList<HistoryLine>> EntriesAsync(IReadOnlyCollection<EntryId> ids, CancellationToken cancel) => new History(_source, _outfit).ByIdAsync(ids, cancel);

    /// <summary>The entries of one act, in the order of things.</summary>
    public Task<IReadOnlyList<HistoryLine>> ActAsync(ActId act, CancellationToken cancel) => new History(_source, _outfit).OfActAsync(act, cancel);

    /// <summary>Works all read tables out from the entries anew, while entries keep arriving.</summary>
    /// <param name="progress">The step, and how much of it is done, 0 to 1.</param>
    /// <param name="cancel">Gives up; the old tables stay.</param>
    public async Task RebuildAsync(IProgress<(string Step, double Done)>? progress, CancellationToken cancel)
    {
        await _rebuilding.RunAsync(progress, cancel);
        await CatchUpAsync(cancel);
    }

    /// <summary>Loads many entries with the instants at which they were recorded, then works the read tables out. For demos, benches and moves.</summary>
    public async Task LoadAsync(IEnumerable<Recorded> recorded, IProgress<(string Step, double Done)>? progress, CancellationToken cancel)
    {
        await new BulkLoad(_source, _outfit, _store).RunAsync(recorded, progress, cancel);
        await RebuildAsync(progress, cancel);
    }

    /// <summary>The same, without a word about how far it is.</summary>
    public Task LoadAsync(IEnumerable<Recorded> recorded, CancellationToken cancel) => LoadAsync(recorded, null, cancel);

    /// <summary>How the ledger stands.</summary>
    /// <param name="check">Compare every read table with a plain fold of the entries.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<LedgerStatus> StatusAsync(bool check, CancellationToken cancel) => new Checking(_source, _schema).RunAsync(check, cancel);

    /// <summary>What was refused and waits for a person, in the order of arrival.</summary>
    public Task<IReadOnlyList<KeptAside>> KeptAsideAsync(CancellationToken cancel) => _aside.AllAsync(cancel);

    /// <summary>Keeps what was refused; the same thing sent again is kept once.</summary>
    public Task KeepAsideAsync(IReadOnlyList<KeptAside> aside, CancellationToken cancel) => _aside.KeepAsync(aside, cancel);

    /// <summary>Removes the outfit with everything that was ever recorded of it. There is no way back.</summary>
    public async Task RemoveAsync(CancellationToken cancel)
    {
        if (_watching is not null) await _watching.DisposeAsync();
        _watching = null;
        await using var command = _source.CreateCommand($"drop schema if exists {_outfit} cascade");
        await command.ExecuteNonQueryAsync(cancel);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_watching is not null) await _watching.DisposeAsync();
        _store.Dispose();
        await _source.DisposeAsync();
    }

    /// <summary>What is asked again and again is prepared on its connection: a visit is some fifty statements, and to plan them takes half as long as to run them.</summary>
    private static string Preparing(string connectionString)
    {
        var settings = new NpgsqlConnectionStringBuilder(connectionString);
        if (!settings.ShouldSerialize("Max Auto Prepare")) settings.MaxAutoPrepare = 100;
        return settings.ConnectionString;
    }

    private Task FreshenAsync(CancellationToken cancel) => _behind ? CatchUpAsync(cancel) : Task.CompletedTask;

    private ReadTable Table(IQuestion question) => _schema.Tables.Single(table => table.Question == question);
}
