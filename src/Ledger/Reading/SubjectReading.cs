using ColonyLineage.Entries;
using ColonyLineage.Ledger.Store;
using Npgsql;

namespace ColonyLineage.Ledger.Reading;

/// <summary>Reads the standing entries of some subjects, as the connection's snapshot sees them.</summary>
internal static class SubjectReading
{
    /// <summary>
    /// An entry stands unless a void names it, whenever the void came and whichever stream it lies in. Entries of another subject that
    /// shares an id with one that is asked for may be among them.
    /// </summary>
    private static string Sql(OutfitName s) => $"""
        with standing as (
            select id from {s}.mt_events where stream_id = any($1)
            union
            select entry from {s}.entry_concerns where subject = any($1))
        select {EntryRows.Select}
        from standing join {s}.mt_events m using (id)
        where m.type <> 'voided.v1' and {EntryRows.IsEntry} and not exists (select from {s}.entry v where v.voids = m.id)
        """;

    public static async Task<List<Entry>> ReadAsync(NpgsqlConnection connection, OutfitName s, IEnumerable<Subject> subjects, CancellationToken cancel)
    {
        await using var command = Command(connection, s, subjects);
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var entries = new List<Entry>();
        while (await reader.ReadAsync(cancel)) entries.Add(EntryRows.EntryOf(reader));
        return entries;
    }

    /// <summary>The same while a fold waits for it: a fold is not asynchronous.</summary>
    public static List<Entry> Read(NpgsqlConnection connection, OutfitName s, Subject subject)
    {
        using var command = Command(connection, s, [subject]);
        using var reader = command.ExecuteReader();
        var entries = new List<Entry>();
        while (reader.Read()) entries.Add(EntryRows.EntryOf(reader));
        return entries;
    }

    private static NpgsqlCommand Command(NpgsqlConnection connection, OutfitName s, IEnumerable<Subject> subjects) =>
        new(Sql(s), connection) { Parameters = { new() { Value = subjects.Select(subject => subject.Id).Distinct().ToArray() } } };
}
