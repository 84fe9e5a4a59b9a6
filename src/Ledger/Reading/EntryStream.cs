using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using ColonyLineage.Entries;
using ColonyLineage.Ledger.Store;
using Npgsql;

namespace ColonyLineage.Ledger.Reading;

/// <summary>Reads all entries in one go; while the next ones come in from the database, the last ones are decoded.</summary>
internal static class EntryStream
{
    private const int Chunk = 1000;

    /// <summary>All entries, in no order; those that were recorded by an instant, where one is given.</summary>
    public static async Task<List<Entry>> ReadAllAsync(
        NpgsqlConnection connection, OutfitName outfit, DateTimeOffset? knownAt, Action<int>? read, CancellationToken cancel)
    {
        var decoded = new ConcurrentQueue<Entry[]>();
        var count = 0;
        await Parallel.ForEachAsync(RawAsync(connection, outfit, knownAt, cancel), new ParallelOptions { CancellationToken = cancel }, (chunk, _) =>
        {
            decoded.Enqueue([.. chunk.Select(raw => EntryJson.Read(raw.Type, raw.Json))]);
            read?.Invoke(Interlocked.Add(ref count, chunk.Count));
            return ValueTask.CompletedTask;
        });
        var all = new List<Entry>(count);
        foreach (var entries in decoded) all.AddRange(entries);
        return all;
    }

    private static async IAsyncEnumerable<List<(string Type, byte[] Json)>> RawAsync(
        NpgsqlConnection connection, OutfitName outfit, DateTimeOffset? knownAt, [EnumeratorCancellation] CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand(
            $"select m.type, m.data from {outfit}.mt_events m where {EntryRows.IsEntry}{(knownAt is null ? "" : " and m.timestamp <= $1")}", connection) { CommandTimeout = 0 };
        if (knownAt is { } at) command.Parameters.Add(new() { Value = at.ToUniversalTime() });
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var chunk = new List<(string, byte[])>(Chunk);
        while (await reader.ReadAsync(cancel))
        {
            chunk.Add((reader.GetString(0), reader.GetFieldValue<byte[]>(1)));
            if (chunk.Count < Chunk) continue;
            yield return chunk;
            chunk = new List<(string, byte[])>(Chunk);
        }

        yield return chunk;
    }
}
