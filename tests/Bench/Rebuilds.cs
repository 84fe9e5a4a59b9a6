using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using Npgsql;

namespace ColonyLineage.Bench;

/// <summary>A rebuild of all read tables against reading and decoding the same events and doing nothing with them.</summary>
internal static class Rebuilds
{
    private const int Chunk = 1000;

    public static async Task MeasureAsync(OutfitLedger ledger, string connectionString, int pairs)
    {
        Runner.Say("Rebuilding ...");
        await using var source = NpgsqlDataSource.Create(connectionString);
        var sql = $"select type, data from {ledger.Outfit}.mt_events";
        Runner.Report("rebuild of all read tables / reading and decoding the same events", await Pairs.RunAsync(pairs, _ => ledger.RebuildAsync(null, default), _ => OneCoreAsync(source, sql)), 2.5);
        // The rebuild decodes on all cores; so may what it is compared with.
        Runner.Report("rebuild of all read tables / reading and decoding the same events on all cores", await Pairs.RunAsync(pairs, _ => ledger.RebuildAsync(null, default), _ => AllCoresAsync(source, sql)), null);
    }

    private static async Task OneCoreAsync(NpgsqlDataSource source, string sql)
    {
        var entries = new List<Entry>();
        await using var command = Command(source, sql);
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync()) entries.Add(EntryJson.Read(reader.GetString(0), reader.GetFieldValue<byte[]>(1)));
        GC.KeepAlive(entries);
    }

    private static async Task AllCoresAsync(NpgsqlDataSource source, string sql)
    {
        var decoded = new System.Collections.Concurrent.ConcurrentBag<Entry[]>();
        await Parallel.ForEachAsync(RawAsync(source, sql), (chunk, _) =>
        {
            decoded.Add([.. chunk.Select(raw => EntryJson.Read(raw.Type, raw.Json))]);
            return ValueTask.CompletedTask;
        });
        GC.KeepAlive(decoded);
    }

    private static async IAsyncEnumerable<List<(string Type, byte[] Json)>> RawAsync(NpgsqlDataSource source, string sql)
    {
        await using var command = Command(source, sql);
        await using var reader = await command.ExecuteReaderAsync();
        var chunk = new List<(string, byte[])>(Chunk);
        while (await reader.ReadAsync())
        {
            chunk.Add((reader.GetString(0), reader.GetFieldValue<byte[]>(1)));
            if (chunk.Count < Chunk) continue;
            yield return chunk;
            chunk = new List<(string, byte[])>(Chunk);
        }

        yield return chunk;
    }

    private static NpgsqlCommand Command(NpgsqlDataSource source, string sql)
    {
        var command = source.CreateCommand(sql);
        command.CommandTimeout = 0;
        return command;
    }
}
