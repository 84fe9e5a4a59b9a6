using ColonyLineage.Entries;
using ColonyLineage.Ledger.Recording;
using ColonyLineage.Ledger.Store;
using ColonyLineage.Ledger.Tables;
using JasperFx;
using Marten;
using Npgsql;
using NpgsqlTypes;

namespace ColonyLineage.Ledger.Loading;

/// <summary>
/// Loads entries by COPY into Marten's tables and ours, in one transaction: all or none. Entries that are in the books already are
/// refused by the database, since a load that meets them is a mistake.
/// </summary>
/// <remarks>Marten's own bulk insert takes no instants of recording, so the rows are written here as its append writes them.</remarks>
internal sealed class BulkLoad(NpgsqlDataSource source, OutfitName s, DocumentStore store)
{
    public async Task RunAsync(IEnumerable<Recorded> recorded, IProgress<(string Step, double Done)>? progress, CancellationToken cancel)
    {
        var all = recorded as IReadOnlyList<Recorded> ?? [.. recorded];
        if (all.Count == 0) return;
        await using var connection = await source.OpenConnectionAsync(cancel);
        await using var transaction = await connection.BeginTransactionAsync(cancel);
        await ExecuteAsync(connection, $"select pg_advisory_xact_lock({s.Lock("record")})", cancel);
        var versions = await StreamsAsync(connection, all, cancel);
        await EventsAsync(connection, all, versions, progress, cancel);
        await OwnAsync(connection, all, progress, cancel);
        // A daemon that never ran need not page through what was loaded: the read tables are worked out of it right after.
        await ExecuteAsync(connection, $"""
            insert into {s}.mt_event_progression (name, last_seq_id) select name, max(seq_id) from {s}.mt_events, unnest(array['HighWaterMark', '{Watching.Progress}']) as name
            group by name on conflict do nothing
            """, cancel);
        await transaction.CommitAsync(cancel);
        // PostgreSQL would get round to it by itself, but what is asked meanwhile would be planned for empty tables.
        await ExecuteAsync(connection, $"analyze {s}.mt_events, {s}.mt_streams, {s}.entry, {s}.entry_concerns", cancel);
        progress?.Report(("loading", 1));
    }

    /// <summary>Makes the streams that are missing and moves the others on; gives the version that each stands at before.</summary>
    private async Task<Dictionary<Guid, long>> StreamsAsync(NpgsqlConnection connection, IReadOnlyList<Recorded> all, CancellationToken cancel)
    {
        var counts = all.GroupBy(recorded => recorded.Entry.Stream.Id).ToDictionary(stream => stream.Key, stream => stream.LongCount());
        var versions = counts.Keys.ToDictionary(id => id, _ => 0L);
        await using (var command = new NpgsqlCommand($"select id, version from {s}.mt_streams where id = any($1)", connection) { Parameters = { new() { Value = counts.Keys.ToArray() } } })
        await using (var reader = await command.ExecuteReaderAsync(cancel))
            while (await reader.ReadAsync(cancel))
                versions[reader.GetGuid(0)] = reader.GetInt64(1);
        await using var write = new NpgsqlCommand($"""
            insert into {s}.mt_streams (id, version, timestamp, tenant_id) select id, version, now(), '{StorageConstants.DefaultTenantId}' from unnest($1, $2) as n (id, version)
            on conflict (id) do update set version = excluded.version, timestamp = excluded.timestamp
            """, connection)
        {
            Parameters = { new() { Value = counts.Keys.ToArray() }, new() { Value = counts.Select(count => versions[count.Key] + count.Value).ToArray() } },
        };
        await write.ExecuteNonQueryAsync(cancel);
        return versions;
    }

    private async Task EventsAsync(
        NpgsqlConnection connection, IReadOnlyList<Recorded> all, Dictionary<Guid, long> versions, IProgress<(string, double)>? progress, CancellationToken cancel)
    {
        long last;
        await using (var command = new NpgsqlCommand($"select setval('{s}.mt_events_sequence', nextval('{s}.mt_events_sequence') + $1 - 1)", connection) { Parameters = { new() { Value = (long)all.Count } } })
            last = (long)(await command.ExecuteScalarAsync(cancel))!;
        var types = Kinds.All.ToDictionary(kind => kind.Type, kind => DotNetName(kind.Type));
        await using var copy = await connection.BeginBinaryImportAsync(
            $"copy {s}.mt_events (seq_id, id, stream_id, version, data, type, timestamp, tenant_id, mt_dotnet_type, is_archived) from stdin (format binary)", cancel);
        for (var i = 0; i < all.Count; i++)
        {
            var (entry, at) = all[i];
            await copy.StartRowAsync(cancel);
            copy.Write(last - all.Count + 1 + i, NpgsqlDbType.Bigint);
            copy.Write(entry.Id.Value, NpgsqlDbType.Uuid);
            copy.Write(entry.Stream.Id, NpgsqlDbType.Uuid);
            copy.Write(++versions[entry.Stream.Id], NpgsqlDbType.Bigint);
            copy.Write(EntryJson.WriteUtf8(entry), NpgsqlDbType.Jsonb);
            copy.Write(Kinds.Of(entry).Stored, NpgsqlDbType.Varchar);
            copy.Write(at.ToUniversalTime(), NpgsqlDbType.TimestampTz);
            copy.Write(StorageConstants.DefaultTenantId, NpgsqlDbType.Varchar);
            copy.Write(types[entry.GetType()], NpgsqlDbType.Varchar);
            copy.Write(false, NpgsqlDbType.Boolean);
            if (i % 10_000 == 0) progress?.Report(("loading", 0.8 * i / all.Count));
        }

        await copy.CompleteAsync(cancel);
    }

    private async Task OwnAsync(NpgsqlConnection connection, IReadOnlyList<Recorded> all, IProgress<(string, double)>? progress, CancellationToken cancel)
    {
        await using (var copy = await connection.BeginBinaryImportAsync($"copy {s}.entry (id, hash, act, voids) from stdin (format binary)", cancel))
        {
            foreach (var (entry, _) in all)
            {
                await copy.StartRowAsync(cancel);
                copy.Write(entry.Id.Value, NpgsqlDbType.Uuid);
                copy.Write(ContentHash.Of(entry), NpgsqlDbType.Bytea);
                copy.Write(entry.Act.Value, NpgsqlDbType.Uuid);
                if (entry is Voided voided) copy.Write(voided.Entry.Value, NpgsqlDbType.Uuid);
                else copy.WriteNull();
            }

            await copy.CompleteAsync(cancel);
        }

        progress?.Report(("loading", 0.9));
        await using var concerns = await connection.BeginBinaryImportAsync($"copy {s}.entry_concerns (subject, entry) from stdin (format binary)", cancel);
        foreach (var (entry, _) in all)
            foreach (var subject in Concerns.BeyondStream(entry))
            {
                await concerns.StartRowAsync(cancel);
                concerns.Write(subject, NpgsqlDbType.Uuid);
                concerns.Write(entry.Id.Value, NpgsqlDbType.Uuid);
            }

        await concerns.CompleteAsync(cancel);
    }

    private string DotNetName(Type type) => store.Events.BuildEvent(System.Runtime.CompilerServices.RuntimeHelpers.GetUninitializedObject(type)).DotNetTypeName;

    private static async Task ExecuteAsync(NpgsqlConnection connection, string sql, CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(cancel);
    }
}
