using ColonyLineage.Entries;
using ColonyLineage.Ledger.Reading;
using ColonyLineage.Ledger.Store;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// Works all read tables out from nothing, in one pass over the entries as one snapshot sees them, into fresh tables that then take the
/// place of the old ones together with that snapshot. What is recorded meanwhile is not seen by the snapshot, and so taken in by the
/// next catching up; readers have the old tables until the new ones are there.
/// </summary>
internal sealed class Rebuilding(NpgsqlDataSource source, Schema schema)
{
    private const int SmallOutfit = 4000;
    private readonly OutfitName _outfit = schema.Outfit;

    public async Task RunAsync(IProgress<(string Step, double Done)>? progress, CancellationToken cancel)
    {
        await using var connection = await source.OpenConnectionAsync(cancel);
        await using var alone = await SessionLock.TakeAsync(connection, _outfit.Lock("rebuild"), cancel);
        await ExecuteAsync(connection, RenumberRestored, cancel);
        await ExecuteAsync(connection, schema.CreateFresh, cancel);
        var (snapshot, entries) = await ReadAsync(connection, progress, cancel);
        var whole = WholeBooks.OfStanding(Standing.InOrder(entries));
        await FoldAsync(whole, entries.Count, progress, cancel);
        progress?.Report(("indexes", 0));
        await IndexAsync(entries.Count, cancel);
        progress?.Report(("putting in place", 0));
        await SwapAsync(connection, snapshot, cancel);
        progress?.Report(("putting in place", 1));
    }

    /// <summary>
    /// Numbers of transactions mean nothing in another cluster. Books that were restored into a younger one carry numbers that lie ahead
    /// of its own; such entries are given a present one.
    /// </summary>
    private string RenumberRestored =>
        $"update {_outfit}.entry set recorded_in = pg_current_xact_id() where recorded_in >= pg_snapshot_xmax(pg_current_snapshot())";

    private async Task<(string Snapshot, List<Entry> Entries)> ReadAsync(NpgsqlConnection connection, IProgress<(string, double)>? progress, CancellationToken cancel)
    {
        await using var transaction = await connection.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);
        string snapshot;
        double expected;
        await using (var command = new NpgsqlCommand($"select pg_current_snapshot()::text, (select count(*) from {_outfit}.entry)", connection, transaction))
        await using (var reader = await command.ExecuteReaderAsync(cancel))
        {
            await reader.ReadAsync(cancel);
            snapshot = reader.GetString(0);
            expected = Math.Max(1, reader.GetInt64(1));
        }

        var entries = await EntryStream.ReadAllAsync(connection, _outfit, null, count => progress?.Report(("reading", Math.Min(1, count / expected))), cancel);
        await transaction.CommitAsync(cancel);
        return (snapshot, entries);
    }

    private async Task FoldAsync(WholeBooks whole, int entries, IProgress<(string, double)>? progress, CancellationToken cancel)
    {
        var subjects = whole.Subjects;
        var next = 0;
        async Task WorkAsync()
        {
            // Cards are folded by each worker for itself: books are for one reader at a time, the grouped entries are only looked at.
            var books = new Books(whole.About);
            await using var connection = await source.OpenConnectionAsync(cancel);
            var copy = new RowCopy(schema, connection);
            for (int from; (from = Interlocked.Add(ref next, 200) - 200) < subjects.Count;)
            {
                for (var i = from; i < Math.Min(from + 200, subjects.Count); i++)
                    await copy.AddAsync(Answers.Of(books, subjects[i], Answers.AllOf(subjects[i].Kind), stands: true), cancel);
                progress?.Report(("folding", Math.Min(1, (double)from / subjects.Count)));
            }

            await copy.CompleteAsync(cancel);
        }

        var workers = entries < SmallOutfit ? 1 : Math.Clamp(Environment.ProcessorCount, 1, 8);
        await Task.WhenAll(Enumerable.Range(0, workers).Select(_ => Task.Run(WorkAsync, cancel)));
    }

    private async Task IndexAsync(int entries, CancellationToken cancel)
    {
        if (entries < SmallOutfit)
        {
            await using var connection = await source.OpenConnectionAsync(cancel);
            await ExecuteAsync(connection, string.Join(";\n", schema.IndexFresh), cancel);
            return;
        }

        await Parallel.ForEachAsync(schema.IndexFresh.GroupBy(sql => sql.Split(" on ").Length > 1 ? "reads" : sql.Split(' ')[2].Split('.')[1]), cancel, async (ofTable, stop) =>
        {
            await using var connection = await source.OpenConnectionAsync(stop);
            await ExecuteAsync(connection, string.Join(";\n", ofTable), stop);
        });
    }

    private async Task SwapAsync(NpgsqlConnection connection, string snapshot, CancellationToken cancel)
    {
        await using var turn = await SessionLock.TakeAsync(connection, _outfit.Lock("read"), cancel);
        await using var transaction = await connection.BeginTransactionAsync(cancel);
        await ExecuteAsync(connection, $"""
            drop table if exists {schema.State};
            {schema.CreateState};
            {schema.Swap};
            insert into {schema.State} (snapshot, shape, version) values ('{snapshot}', '{schema.Shape}', nextval('{_outfit}.read_version'));
            """, cancel);
        await transaction.CommitAsync(cancel);
    }

    private static async Task ExecuteAsync(NpgsqlConnection connection, string sql, CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
        await command.ExecuteNonQueryAsync(cancel);
    }
}
