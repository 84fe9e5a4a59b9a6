using ColonyLineage.Entries;
using ColonyLineage.Ledger.Reading;
using ColonyLineage.Ledger.Store;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// Brings the read tables up to everything that is committed, whoever recorded it and whoever calls. Under the outfit's turn for
/// reading, one snapshot of the database is compared with the one that the tables are up to; the entries that only the new one sees
/// touch their subjects; the rows that were read from a touched subject are worked out before and after, and the differences written.
/// Nothing is missed, for it is not a sequence number that tells what is new but PostgreSQL's own word on which transactions had ended.
/// </summary>
/// <remarks>
/// The books that this needs are kept in memory from one time to the next (<see cref="LiveBooks"/>), as far as they were looked at,
/// or whole in a process that watches. They are a help and no truth: they are dropped on any doubt.
/// </remarks>
internal sealed class CatchingUp(NpgsqlDataSource source, Schema schema, Rebuilding rebuilding)
{
    /// <summary>From this many new entries or touched owners on, working everything out anew is quicker.</summary>
    private const int Many = 4000;

    /// <summary>Entries held in memory at most, some 500 bytes each.</summary>
    private const int MostHeld = 1_500_000;

    private readonly OutfitName _outfit = schema.Outfit;
    private readonly SemaphoreSlim _one = new(1);
    private LiveBooks? _books;

    private bool _whole;

    /// <summary>What this process changed in the read tables, for those who keep rows of them.</summary>
    public Changes Changes { get; } = new();

    public Task RunAsync(CancellationToken cancel) => AloneAsync(async () =>
    {
        while (!await TryAsync(cancel))
        {
            await rebuilding.RunAsync(null, cancel);
            if (_whole && _books is null) _books = await LoadAsync(cancel);
        }
    }, cancel);

    /// <summary>Keeps the whole books in memory from now on, so that catching up has nothing to fetch.</summary>
    public Task HoldWholeAsync(CancellationToken cancel) => AloneAsync(async () =>
    {
        _whole = true;
        _books = await LoadAsync(cancel);
    }, cancel);

    private async Task AloneAsync(Func<Task> work, CancellationToken cancel)
    {
        await _one.WaitAsync(cancel);
        try
        {
            await work();
        }
        catch
        {
            _books = null;
            throw;
        }
        finally
        {
            _one.Release();
        }
    }

    private async Task<LiveBooks?> LoadAsync(CancellationToken cancel)
    {
        await using var connection = await source.OpenConnectionAsync(cancel);
        await using var transaction = await connection.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);
        string snapshot;
        await using (var command = new NpgsqlCommand($"select pg_current_snapshot()::text, (select count(*) from {_outfit}.entry)", connection))
        await using (var reader = await command.ExecuteReaderAsync(cancel))
        {
            await reader.ReadAsync(cancel);
            snapshot = reader.GetString(0);
            if (reader.GetInt64(1) > MostHeld) return null;
        }

        return new LiveBooks(snapshot, Standing.InOrder(await EntryStream.ReadAllAsync(connection, _outfit, null, null, cancel)));
    }

    /// <summary>False where the tables have to be worked out anew.</summary>
    private async Task<bool> TryAsync(CancellationToken cancel)
    {
        await using var connection = await source.OpenConnectionAsync(cancel);
        await using var turn = await SessionLock.TakeAsync(connection, _outfit.Lock("read"), cancel);
        await using var transaction = await connection.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);
        if (await UpToAsync(connection, cancel) is not { } state) return Drop();
        if (_books is null || _books.Held > MostHeld) _books = new LiveBooks(state.Then);
        if (await News.SinceAsync(connection, schema, _books.UpTo, state.Then, Many, cancel) is not { } news) return Drop();
        if (!news.Any) return true;
        _books.Apply(news.Known);
        if (news.Fresh.Touched.Contains(Subject.Outfit))
        {
            // Settings, courses and lines are read by nearly every row.
            _books.Apply(news.Fresh);
            _books.UpTo = state.Now;
            return false;
        }

        _books.Fetch = subject => news.Fresh.Before(subject, SubjectReading.Read(connection, _outfit, subject));
        var writing = new AnswerWriting(schema, connection);
        if (news.Fresh.Touched.Count > 0)
        {
            var owners = await Owners.OfAsync(schema, connection, news.Fresh.Touched, cancel);
            if (owners.Count > Many) return Drop();
            await PrefetchAsync(connection, owners.Keys, news.Fresh, cancel);
            var asked = owners.OrderBy(owner => owner.Key).ToList();
            var before = WorkOut(asked);
            _books.Apply(news.Fresh);
            _books.Fetch = subject => SubjectReading.Read(connection, _outfit, subject);
            writing.Add([.. before.Zip(WorkOut(asked))]);
        }

        var version = await writing.FinishAsync(state.Now, cancel);
        await transaction.CommitAsync(cancel);
        Changes.Add(state.Version, version, writing.Changed);
        _books.UpTo = state.Now;
        return true;
    }

    private List<Answers> WorkOut(List<KeyValuePair<Subject, int>> owners) =>
        [.. owners.Select(owner => Answers.Of(_books!.Books, owner.Key, owner.Value, _books.StandsAbout(owner.Key)))];

    private bool Drop()
    {
        _books = null;
        return false;
    }

    /// <summary>Where the tables are and where the database is now; null where the tables are missing, of another version, or from another cluster.</summary>
    private async Task<(string Then, string Now, long Version)?> UpToAsync(NpgsqlConnection connection, CancellationToken cancel)
    {
        try
        {
            // A snapshot from ahead of this cluster's time comes with books that were restored into another cluster. What follows in this
            // transaction looks up a few rows among very many; PostgreSQL, which cannot know how few, would rather read whole tables.
            await using var command = new NpgsqlCommand(
                $"""
                set local enable_seqscan = off;
                select snapshot::text, pg_current_snapshot()::text, shape, version from {schema.State} where pg_snapshot_xmax(snapshot) <= pg_snapshot_xmax(pg_current_snapshot())
                """, connection);
            await using var reader = await command.ExecuteReaderAsync(cancel);
            return await reader.ReadAsync(cancel) && reader.GetString(2) == schema.Shape ? (reader.GetString(0), reader.GetString(1), reader.GetInt64(3)) : null;
        }
        catch (PostgresException missing) when (missing.SqlState == PostgresErrorCodes.UndefinedTable)
        {
            return null;
        }
    }

    /// <summary>Fetches at once what the owners' rows will be read from, as it was before what is fresh.</summary>
    private async Task PrefetchAsync(NpgsqlConnection connection, IReadOnlyCollection<Subject> owners, Change fresh, CancellationToken cancel)
    {
        if (_books!.Missing(owners).Count == 0) return;
        var missing = _books.Missing([.. owners, .. await Owners.ReadByAsync(schema, connection, owners, cancel), Subject.Outfit]);
        var after = await SubjectReading.ReadAsync(connection, _outfit, missing, cancel);
        var before = after.Where(entry => !fresh.Came.ContainsKey(entry.Id)).Concat(fresh.Gone.Values);
        _books.Hold(missing, before);
    }
}
