using ColonyLineage.Entries;
using ColonyLineage.Ledger.Store;
using Npgsql;
using NpgsqlTypes;

namespace ColonyLineage.Ledger.Recording;

/// <summary>What was sent and refused stays visible until a person has looked at it.</summary>
internal sealed class KeepingAside(NpgsqlDataSource source, OutfitName s)
{
    /// <summary>Keeps them; the same thing sent again is kept once.</summary>
    public async Task KeepAsync(IReadOnlyList<KeptAside> aside, CancellationToken cancel)
    {
        if (aside.Count == 0) return;
        await using var connection = await source.OpenConnectionAsync(cancel);
        await using var batch = new NpgsqlBatch(connection);
        foreach (var kept in aside)
            batch.BatchCommands.Add(new NpgsqlBatchCommand($"""
                insert into {s}.kept_aside (entry, hash, received, refusal, message, payload) values ($1, $2, $3, $4, $5, $6) on conflict (hash) do nothing
                """)
            {
                Parameters =
                {
                    new() { Value = (object?)kept.Entry?.Value ?? DBNull.Value, NpgsqlDbType = NpgsqlDbType.Uuid },
                    new() { Value = ContentHash.Of(kept.Refusal, kept.Payload) },
                    new() { Value = kept.Received.ToUniversalTime() },
                    new() { Value = kept.Refusal },
                    new() { Value = kept.Message },
                    new() { Value = kept.Payload },
                },
            });
        await batch.ExecuteNonQueryAsync(cancel);
    }

    public async Task<IReadOnlyList<KeptAside>> AllAsync(CancellationToken cancel)
    {
        await using var command = source.CreateCommand($"select entry, received, refusal, message, payload from {s}.kept_aside order by number");
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var all = new List<KeptAside>();
        while (await reader.ReadAsync(cancel))
            all.Add(new KeptAside(
                reader.IsDBNull(0) ? null : new EntryId(reader.GetGuid(0)), reader.GetFieldValue<DateTimeOffset>(1), reader.GetString(2), reader.GetString(3), reader.GetString(4)));
        return all;
    }
}
