using System.Security.Cryptography;
using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Ledger.Reading;
using ColonyLineage.Ledger.Store;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>Says how the ledger stands and, where it is asked to, compares every read table with a plain fold of the entries.</summary>
internal sealed class Checking(NpgsqlDataSource source, Schema schema)
{
    private readonly OutfitName _outfit = schema.Outfit;

    public async Task<LedgerStatus> RunAsync(bool check, CancellationToken cancel)
    {
        await using var connection = await source.OpenConnectionAsync(cancel);
        // Under the turn for reading: nobody catches up or puts rebuilt tables in place between the entries and the tables seen here.
        await using var turn = await SessionLock.TakeAsync(connection, _outfit.Lock("read"), cancel);
        await using var transaction = await connection.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);
        var advice = new List<string>();
        var entries = await CountAsync(connection, $"select count(*) from {_outfit}.entry", cancel);
        var aside = await CountAsync(connection, $"select count(*) from {_outfit}.kept_aside", cancel);
        var bytes = await CountAsync(connection, "select coalesce(sum(pg_total_relation_size(oid)), 0)::bigint from pg_class where relkind in ('r', 'm') and relnamespace = $1::regnamespace", cancel, _outfit.Name);
        var state = await StateAsync(connection, cancel);
        if (state is null)
        {
            advice.Add("The read tables are missing or are of another version of this program: run rebuild.");
            return new LedgerStatus(entries, entries, aside, bytes, [], advice);
        }

        if (state.Value.Ahead) advice.Add("The books were restored from another PostgreSQL: run rebuild.");
        var waiting = await CountAsync(connection, $"select count(*) from {_outfit}.entry where not pg_visible_in_snapshot(recorded_in, $1::pg_snapshot)", cancel, state.Value.Snapshot);
        var whole = check ? WholeBooks.OfStanding(Standing.InOrder(await EntryStream.ReadAllAsync(connection, _outfit, null, null, cancel))) : null;
        var tables = new List<TableStatus>();
        foreach (var table in schema.Tables)
            tables.Add(new TableStatus(table.Name, await CountAsync(connection, $"select count(*) from {table.Full}", cancel), whole is null ? [] : await DifferingAsync(connection, table, whole, cancel)));
        if (tables.Any(table => table.Differing.Count > 0))
            advice.Add(waiting > 0 ? "Rows differ from a plain fold, and entries wait: catch up, then check again." : "Rows differ from a plain fold: run rebuild, and tell the makers of this program.");
        return new LedgerStatus(entries, waiting, aside, bytes, tables, advice);
    }

    private async Task<(string Snapshot, bool Ahead)?> StateAsync(NpgsqlConnection connection, CancellationToken cancel)
    {
        if (await CountAsync(connection, "select count(*) from pg_class where relname = 'read_state' and relnamespace = $1::regnamespace", cancel, _outfit.Name) == 0) return null;
        await using var command = new NpgsqlCommand($"select snapshot::text, pg_snapshot_xmax(snapshot) > pg_snapshot_xmax(pg_current_snapshot()), shape from {schema.State}", connection);
        await using var reader = await command.ExecuteReaderAsync(cancel);
        return await reader.ReadAsync(cancel) && reader.GetString(2) == schema.Shape ? (reader.GetString(0), reader.GetBoolean(1)) : null;
    }

    private static async Task<IReadOnlyList<string>> DifferingAsync(NpgsqlConnection connection, ReadTable table, WholeBooks whole, CancellationToken cancel)
    {
        var folded = new Dictionary<Subject, Guid>();
        foreach (var subject in whole.Subjects.Where(subject => table.Question.Asks(subject.Kind)))
        {
            var rows = RowJson.Array(table.Question.Rows(whole.Books, subject), table.Question.Columns);
            if (rows.Length > 2) folded.Add(subject, Digest(rows));
        }

        var kept = await KeptAsync(connection, table, cancel);
        return [.. folded.Keys.Union(kept.Keys).Where(subject => folded.GetValueOrDefault(subject) != kept.GetValueOrDefault(subject)).Order()
            .Select(subject => $"{subject.Kind.ToString().ToLowerInvariant()} {subject.Id}")];
    }

    private static async Task<Dictionary<Subject, Guid>> KeptAsync(NpgsqlConnection connection, ReadTable table, CancellationToken cancel)
    {
        var kept = new Dictionary<Subject, Guid>();
        var columns = table.Question.Columns;
        using var buffer = new MemoryStream();
        await using var json = new Utf8JsonWriter(buffer, RowJson.Options);
        Subject? current = null;
        await using var command = new NpgsqlCommand($"select {table.Columns}, subject_kind, subject from {table.Full} order by {ReadTable.Owner}", connection);
        await using var reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel))
        {
            var subject = new Subject((SubjectKind)reader.GetInt16(columns.Count), reader.GetGuid(columns.Count + 1));
            if (subject != current)
            {
                Finish();
                current = subject;
                json.WriteStartArray();
            }

            json.WriteStartObject();
            for (var i = 0; i < columns.Count; i++)
            {
                json.WritePropertyName(columns[i].Name);
                RowJson.WriteValue(json, reader, i, columns[i].Type);
            }

            json.WriteEndObject();
        }

        Finish();
        return kept;

        void Finish()
        {
            if (current is not { } done) return;
            json.WriteEndArray();
            json.Flush();
            kept.Add(done, Digest(buffer.ToArray()));
            buffer.SetLength(0);
            json.Reset();
        }
    }

    private static Guid Digest(byte[] json) => new(SHA256.HashData(json)[..16]);

    private static async Task<long> CountAsync(NpgsqlConnection connection, string sql, CancellationToken cancel, params object[] arguments)
    {
        await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
        foreach (var argument in arguments) command.Parameters.Add(new NpgsqlParameter { Value = argument });
        return (long)(await command.ExecuteScalarAsync(cancel))!;
    }
}
