using System.Runtime.CompilerServices;
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
        return WholeBooks.OfStanding(Standing.InOrder(await EntryStream.ReadAllAsync(connection, s, knownAt, null, cancel), asOf));
    }

    public async IAsyncEnumerable<Recorded> InOrderOfRecordingAsync([EnumeratorCancellation] CancellationToken cancel)
    {
        await using var command = source.CreateCommand($"select {EntryRows.Select} from {s}.mt_events m where {EntryRows.IsEntry} order by m.seq_id");
        command.CommandTimeout = 0;
        await using var reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel)) yield return EntryRows.Read(reader);
    }
}
