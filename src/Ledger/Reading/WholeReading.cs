using ColonyLineage.Entries;
using ColonyLineage.Ledger.Store;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Reading;

/// <summary>Reads every entry of the outfit: for a question about the past, for a rebuild, for a check.</summary>
internal sealed class WholeReading(NpgsqlDataSource source, OutfitName s)
{
    public async Task<WholeBooks> BooksAsync(DateOnly? asOf, DateTimeOffset? knownAt, CancellationToken cancel)
    {
        await using var connection = await source.OpenConnectionAsync(cancel);
        return WholeBooks.Of(await AllAsync(connection, knownAt, null, cancel), asOf, knownAt);
    }

    public async IAsyncEnumerable<Recorded> StreamAsync([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel)
    {
        await using var command = source.CreateCommand($"select {EntryRows.Select} from {s}.mt_events m where {EntryRows.IsEntry} order by m.seq_id");
        command.CommandTimeout = 0;
        await using var reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel)) yield return EntryRows.Read(reader);
    }

    public async Task<List<Recorded>> AllAsync(NpgsqlConnection connection, DateTimeOffset? knownAt, Action<int>? read, CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand(
            $"select {EntryRows.Select} from {s}.mt_events m where {EntryRows.IsEntry}{(knownAt is null ? "" : " and m.timestamp <= $1")}", connection);
        if (knownAt is { } at) command.Parameters.Add(new() { Value = at.ToUniversalTime() });
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var all = new List<Recorded>();
        while (await reader.ReadAsync(cancel))
        {
            all.Add(EntryRows.Read(reader));
            if (read is not null && all.Count % 10_000 == 0) read(all.Count);
        }

        return all;
    }
}
