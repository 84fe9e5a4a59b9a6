using ColonyLineage.Entries;
using ColonyLineage.Ledger.Store;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Reading;

/// <summary>Entries as the history shows them: voided ones among them, each with the void that names it.</summary>
internal sealed class History(NpgsqlDataSource source, OutfitName s)
{
    public Task<IReadOnlyList<HistoryLine>> OfSubjectAsync(Subject subject, Ask ask, CancellationToken cancel) =>
        LinesAsync($"""
            m.id in (select id from {s}.mt_events where stream_id = $1 union all select entry from {s}.entry_concerns where subject = $1)
            and m.type <> 'voided.v1'
            """, subject.Id, ask, line => line.Entry.Concerns.Contains(subject), cancel);

    public Task<IReadOnlyList<HistoryLine>> ByIdAsync(IReadOnlyCollection<EntryId> ids, CancellationToken cancel) =>
        LinesAsync("m.id = any($1)", ids.Select(id => id.Value).ToArray(), Ask.Everything, _ => true, cancel);

    public Task<IReadOnlyList<HistoryLine>> OfActAsync(ActId act, CancellationToken cancel) =>
        LinesAsync($"m.id in (select id from {s}.entry where act = $1)", act.Value, Ask.Everything, _ => true, cancel);

    /// <summary>Entries of some kinds in the streams of some colonies.</summary>
    public Task<IReadOnlyList<HistoryLine>> OfKindsAsync(IReadOnlyCollection<ColonyId> colonies, IReadOnlyCollection<string> stored, Ask ask, CancellationToken cancel) =>
        LinesAsync($"m.stream_id = any($1) and m.type in ({string.Join(", ", stored.Select(kind => $"'{kind}'"))})", colonies.Select(colony => colony.Value).ToArray(), ask, _ => true, cancel);

    private async Task<IReadOnlyList<HistoryLine>> LinesAsync(string where, object argument, Ask ask, Func<HistoryLine, bool> wanted, CancellationToken cancel)
    {
        // Two voids may name one entry; the first recorded is shown.
        await using var command = source.CreateCommand($"""
            select distinct on (m.id) {EntryRows.Select}, v.type, v.data, v.timestamp
            from {s}.mt_events m
            left join {s}.entry e on e.voids = m.id
            left join {s}.mt_events v on v.id = e.id and ($2::timestamptz is null or v.timestamp <= $2)
            where {EntryRows.IsEntry} and ($2::timestamptz is null or m.timestamp <= $2) and {where}
            order by m.id, v.seq_id
            """);
        command.Parameters.Add(new() { Value = argument });
        command.Parameters.Add(new() { Value = (object?)ask.KnownAt?.ToUniversalTime() ?? DBNull.Value, NpgsqlDbType = NpgsqlTypes.NpgsqlDbType.TimestampTz });
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var lines = new List<HistoryLine>();
        while (await reader.ReadAsync(cancel))
        {
            var line = new HistoryLine(EntryRows.Read(reader), reader.IsDBNull(3) ? null : EntryRows.Read(reader, 3));
            if ((ask.AsOf is null || line.Entry.On.Day <= ask.AsOf) && wanted(line)) lines.Add(line);
        }

        return [.. lines.OrderBy(line => Place.Of(line.Entry))];
    }
}
