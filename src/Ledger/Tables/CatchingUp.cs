using ColonyLineage.Entries;
using ColonyLineage.Ledger.Reading;
using ColonyLineage.Ledger.Store;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// Brings the read tables up to everything that is committed, whoever recorded it and whoever calls. Under the outfit's turn for
/// reading, one snapshot of the database is compared with the one that the tables are up to; the entries that only the new one sees
/// touch their subjects; the rows that were read from a touched subject are worked out again. Nothing is missed, for it is not a
/// sequence number that tells what is new but PostgreSQL's own word on which transactions had ended.
/// </summary>
internal sealed class CatchingUp(NpgsqlDataSource source, Schema schema, Rebuilding rebuilding)
{
    /// <summary>From this many touched subjects on, working everything out anew is quicker.</summary>
    private const int Many = 2000;

    private readonly OutfitName _outfit = schema.Outfit;

    public async Task RunAsync(CancellationToken cancel)
    {
        while (!await TryAsync(cancel)) await rebuilding.RunAsync(null, cancel);
    }

    /// <summary>False where the tables have to be worked out anew.</summary>
    private async Task<bool> TryAsync(CancellationToken cancel)
    {
        await using var connection = await source.OpenConnectionAsync(cancel);
        await using var turn = await SessionLock.TakeAsync(connection, _outfit.Lock("read"), cancel);
        await using var transaction = await connection.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);
        if (await UpToAsync(connection, cancel) is not { } state) return false;
        if (state.Then == state.Now) return true;
        if (await TouchedAsync(connection, state.Then, cancel) is not { } touched) return false;
        if (touched.Count > Many || touched.Contains(Subject.Outfit)) return false;

        var writing = new AnswerWriting(schema, connection);
        if (touched.Count > 0)
        {
            var known = await KnownReads.AboutAsync(schema, connection, touched, cancel);
            if (known.Owners.Count > Many) return false;
            var answers = await WorkOutAsync(connection, known, cancel);
            writing.Add(answers, known);
        }

        await writing.FinishAsync(state.Now, cancel);
        await transaction.CommitAsync(cancel);
        return true;
    }

    private async Task<(string Then, string Now)?> UpToAsync(NpgsqlConnection connection, CancellationToken cancel)
    {
        try
        {
            // A snapshot from ahead of this cluster's time comes with books that were restored into another cluster.
            await using var command = new NpgsqlCommand(
                $"select snapshot::text, pg_current_snapshot()::text, shape from {schema.State} where pg_snapshot_xmax(snapshot) <= pg_snapshot_xmax(pg_current_snapshot())", connection);
            await using var reader = await command.ExecuteReaderAsync(cancel);
            return await reader.ReadAsync(cancel) && reader.GetString(2) == schema.Shape ? (reader.GetString(0), reader.GetString(1)) : null;
        }
        catch (PostgresException missing) when (missing.SqlState == PostgresErrorCodes.UndefinedTable)
        {
            return null;
        }
    }

    /// <summary>The subjects of the entries that came since; those of an entry that was voided as well. Null where there are very many.</summary>
    private async Task<HashSet<Subject>?> TouchedAsync(NpgsqlConnection connection, string since, CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand($"""
            with fresh as materialized (
                select id, voids from {_outfit}.entry
                where recorded_in >= pg_snapshot_xmin($1::pg_snapshot) and not pg_visible_in_snapshot(recorded_in, $1::pg_snapshot)
                limit {2 * Many})
            select m.type, m.data from fresh join {_outfit}.mt_events m on m.id = coalesce(fresh.voids, fresh.id)
            """, connection) { Parameters = { new() { Value = since } } };
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var touched = new HashSet<Subject>();
        var count = 0;
        while (await reader.ReadAsync(cancel))
        {
            if (++count >= 2 * Many) return null;
            // A void of a void changes nothing; a void whose target has not come yet touches nothing until it does.
            if (EntryRows.EntryOf(reader) is var entry and not Voided) touched.UnionWith(entry.Concerns);
        }

        return touched;
    }

    private async Task<List<Answers>> WorkOutAsync(NpgsqlConnection connection, KnownReads known, CancellationToken cancel)
    {
        var reading = new SubjectReading(_outfit);
        await reading.PrefetchAsync(connection, known.Owners.Keys.Concat(known.Reads.Keys.Select(pair => pair.Read)).Append(Subject.Outfit), cancel);
        var books = new Books(subject => reading.About(connection, subject));
        return [.. known.Owners.OrderBy(owner => owner.Key)
            .Select(owner => Answers.Of(books, owner.Key, owner.Value, reading.About(connection, owner.Key).Count > 0))];
    }
}
