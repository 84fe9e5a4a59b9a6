using ColonyLineage.Entries;
using ColonyLineage.Ledger.Store;
using Npgsql;

namespace ColonyLineage.Ledger.Recording;

/// <summary>What was sent and refused stays visible until a person has looked at it.</summary>
internal sealed class KeepingAside(NpgsqlDataSource source, OutfitName s)
{
    /// <summary>Keeps it; the same thing sent again is kept once.</summary>
    public async Task KeepAsync(EntryId? entry, Refusal refusal, string payload, CancellationToken cancel)
    {
        await using var command = source.CreateCommand($"""
            insert into {s}.kept_aside (entry, hash, refusal, message, payload) values ($1, $2, $3, $4, $5::json) on conflict (hash) do nothing
            """);
        command.Parameters.Add(new() { Value = (object?)entry?.Value ?? DBNull.Value, NpgsqlDbType = NpgsqlTypes.NpgsqlDbType.Uuid });
        command.Parameters.Add(new() { Value = ContentHash.Of(refusal.Name + payload) });
        command.Parameters.Add(new() { Value = refusal.Name });
        command.Parameters.Add(new() { Value = refusal.Message });
        command.Parameters.Add(new() { Value = payload });
        await command.ExecuteNonQueryAsync(cancel);
    }

    public async Task<IReadOnlyList<KeptAside>> AllAsync(CancellationToken cancel)
    {
        await using var command = source.CreateCommand($"select entry, received, refusal, message, payload::text from {s}.kept_aside order by number");
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var all = new List<KeptAside>();
        while (await reader.ReadAsync(cancel))
            all.Add(new KeptAside(
                reader.IsDBNull(0) ? null : new EntryId(reader.GetGuid(0)), reader.GetFieldValue<DateTimeOffset>(1), reader.GetString(2), reader.GetString(3), reader.GetString(4)));
        return all;
    }
}
