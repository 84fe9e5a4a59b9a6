using ColonyLineage.Entries;
using ColonyLineage.Ledger.Store;
using JasperFx.Events;
using Marten;
using Marten.Services;
using Npgsql;
using NpgsqlTypes;

namespace ColonyLineage.Ledger.Recording;

/// <summary>
/// Records the entries of an act: in one transaction they are listed as ours, appended to their streams by Marten, and listed for
/// the other subjects that they concern.
/// </summary>
/// <remarks>
/// An outfit records one act at a time, under a lock that ends with the transaction: a crew of six never feels it, two devices that
/// send the same act cannot meet half-way, and Marten's streams and sequence see no collisions.
/// </remarks>
internal sealed class Recorder(NpgsqlDataSource source, DocumentStore store, OutfitName s, KeepingAside aside)
{
    public async Task<Receipt> RecordAsync(IReadOnlyList<Entry> entries, CancellationToken cancel)
    {
        if (entries.Count == 0) return Refused([new Refusal(Refusals.EmptyAct, "", "The request carries no entries.")]);
        var wrong = entries.SelectMany(entry => entry.Check()).ToList();
        if (wrong.Count > 0) return Refused(wrong);

        var distinct = new Dictionary<EntryId, (Entry Entry, byte[] Hash)>();
        var other = new List<Entry>();
        foreach (var entry in entries)
        {
            var hash = ContentHash.Of(entry);
            if (!distinct.TryAdd(entry.Id, (entry, hash)) && !distinct[entry.Id].Hash.AsSpan().SequenceEqual(hash)) other.Add(entry);
        }

        if (other.Count == 0)
        {
            await using var connection = await source.OpenConnectionAsync(cancel);
            await using var transaction = await connection.BeginTransactionAsync(cancel);
            var (fresh, at) = await ListAsync(connection, distinct, cancel);
            if (fresh.Count < distinct.Count) other = await OfOtherContentAsync(connection, distinct, fresh, cancel);
            if (other.Count == 0)
            {
                var known = distinct.Keys.Where(id => !fresh.Contains(id)).ToList();
                if (fresh.Count == 0) return new Receipt([], known, []);
                var added = distinct.Values.Select(pair => pair.Entry).Where(entry => fresh.Contains(entry.Id)).ToList();
                await AppendAsync(transaction, added, at, cancel);
                await transaction.CommitAsync(cancel);
                return new Receipt([.. added.Select(entry => entry.Id)], known, []);
            }

            await transaction.RollbackAsync(cancel);
        }

        return await RefuseAsync(other, cancel);
    }

    /// <summary>Takes the outfit's turn and lists the entries as recorded; those already listed are left alone and not returned.</summary>
    private async Task<(HashSet<EntryId> Fresh, DateTimeOffset At)> ListAsync(
        NpgsqlConnection connection, Dictionary<EntryId, (Entry Entry, byte[] Hash)> entries, CancellationToken cancel)
    {
        await using var batch = new NpgsqlBatch(connection);
        batch.BatchCommands.Add(new NpgsqlBatchCommand("select pg_advisory_xact_lock($1)") { Parameters = { new() { Value = s.Lock("record") } } });
        // The instant is the server's, and taken in our turn, so that the order of instants is the order of recording.
        batch.BatchCommands.Add(new NpgsqlBatchCommand("select clock_timestamp()"));
        var all = entries.Values.ToList();
        batch.BatchCommands.Add(new NpgsqlBatchCommand($"""
            insert into {s}.entry (id, hash, act, voids) select * from unnest($1, $2, $3, $4) on conflict (id) do nothing returning id
            """)
        {
            Parameters =
            {
                new() { Value = all.Select(pair => pair.Entry.Id.Value).ToArray() },
                new() { Value = all.Select(pair => pair.Hash).ToArray() },
                new() { Value = all.Select(pair => pair.Entry.Act.Value).ToArray() },
                new() { Value = all.Select(pair => (pair.Entry as Voided)?.Entry.Value).ToArray(), NpgsqlDbType = NpgsqlDbType.Array | NpgsqlDbType.Uuid },
            },
        });
        await using var reader = await batch.ExecuteReaderAsync(cancel);
        await reader.NextResultAsync(cancel);
        await reader.ReadAsync(cancel);
        var at = reader.GetFieldValue<DateTimeOffset>(0);
        await reader.NextResultAsync(cancel);
        var fresh = new HashSet<EntryId>();
        while (await reader.ReadAsync(cancel)) fresh.Add(new EntryId(reader.GetGuid(0)));
        return (fresh, at);
    }

    private async Task<List<Entry>> OfOtherContentAsync(
        NpgsqlConnection connection, Dictionary<EntryId, (Entry Entry, byte[] Hash)> entries, HashSet<EntryId> fresh, CancellationToken cancel)
    {
        var listed = entries.Keys.Where(id => !fresh.Contains(id)).Select(id => id.Value).ToArray();
        await using var command = new NpgsqlCommand($"select id, hash from {s}.entry where id = any($1)", connection) { Parameters = { new() { Value = listed } } };
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var other = new List<Entry>();
        while (await reader.ReadAsync(cancel))
        {
            var (entry, hash) = entries[new EntryId(reader.GetGuid(0))];
            if (!hash.AsSpan().SequenceEqual(reader.GetFieldValue<byte[]>(1))) other.Add(entry);
        }

        return other;
    }

    private async Task AppendAsync(NpgsqlTransaction transaction, List<Entry> entries, DateTimeOffset at, CancellationToken cancel)
    {
        await using var session = store.LightweightSession(SessionOptions.ForTransaction(transaction));
        foreach (var entry in entries)
        {
            var stored = store.Events.BuildEvent(entry);
            stored.Id = entry.Id.Value;
            stored.Timestamp = at;
            session.Events.Append(entry.Stream.Id, stored);
        }

        var concerns = entries.SelectMany(entry => Concerns.BeyondStream(entry).Select(subject => (Subject: subject, Entry: entry.Id.Value))).ToList();
        if (concerns.Count > 0)
            session.QueueSqlCommand(
                $"insert into {s}.entry_concerns (subject, entry) select * from unnest(?, ?) on conflict do nothing",
                concerns.Select(pair => pair.Subject).ToArray(), concerns.Select(pair => pair.Entry).ToArray());
        await session.SaveChangesAsync(cancel);
    }

    private async Task<Receipt> RefuseAsync(List<Entry> other, CancellationToken cancel)
    {
        var refusals = other.Select(entry => new Refusal(Refusals.SameIdOtherContent, "id",
            $"Entry {entry.Id} was recorded before and said something else. Nothing of this act was recorded; both stay visible. Look at the two and record what is right under a new id.")).ToList();
        await aside.KeepAsync([.. other.Zip(refusals, (entry, refusal) =>
            new KeptAside(entry.Id, DateTimeOffset.UtcNow, refusal.Name, refusal.Message, EntryJson.WriteTagged(entry).ToJsonString()))], cancel);
        return Refused(refusals);
    }

    private static Receipt Refused(IReadOnlyList<Refusal> refusals) => new([], [], refusals);
}
