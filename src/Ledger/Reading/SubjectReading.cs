using ColonyLineage.Entries;
using ColonyLineage.Ledger.Store;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Reading;

/// <summary>Reads the standing entries of some subjects: all asked for at once, and any other when somebody looks at it.</summary>
internal sealed class SubjectReading(OutfitName s)
{
    private readonly Dictionary<Subject, IReadOnlyList<Entry>> _about = [];

    /// <summary>An entry stands unless a void names it, whenever the void came and whichever stream it lies in.</summary>
    private string Sql => $"""
        with standing as (
            select id from {s}.mt_events where stream_id = any($1)
            union
            select entry from {s}.entry_concerns where subject = any($1))
        select {EntryRows.Select}
        from standing join {s}.mt_events m using (id)
        where m.type <> 'voided.v1' and {EntryRows.IsEntry} and not exists (select from {s}.entry v where v.voids = m.id)
        """;

    public async Task PrefetchAsync(NpgsqlConnection connection, IEnumerable<Subject> subjects, CancellationToken cancel)
    {
        var wanted = subjects.Where(subject => !_about.ContainsKey(subject)).ToHashSet();
        if (wanted.Count == 0) return;
        await using var command = Command(connection, wanted);
        var entries = new List<Entry>();
        await using (var reader = await command.ExecuteReaderAsync(cancel))
            while (await reader.ReadAsync(cancel))
                entries.Add(EntryRows.EntryOf(reader));
        Keep(wanted, entries);
    }

    /// <summary>The entries of a subject that was not foreseen, fetched while the fold waits: a fold is not asynchronous.</summary>
    public IReadOnlyList<Entry> About(NpgsqlConnection connection, Subject subject)
    {
        if (_about.TryGetValue(subject, out var known)) return known;
        using var command = Command(connection, [subject]);
        var entries = new List<Entry>();
        using (var reader = command.ExecuteReader())
            while (reader.Read())
                entries.Add(EntryRows.EntryOf(reader));
        Keep([subject], entries);
        return _about[subject];
    }

    private NpgsqlCommand Command(NpgsqlConnection connection, HashSet<Subject> wanted) =>
        new(Sql, connection) { Parameters = { new() { Value = wanted.Select(subject => subject.Id).Distinct().ToArray() } } };

    private void Keep(HashSet<Subject> wanted, List<Entry> entries)
    {
        var about = wanted.ToDictionary(subject => subject, _ => new List<Entry>());
        foreach (var entry in entries)
            foreach (var subject in entry.Concerns)
                if (about.TryGetValue(subject, out var list))
                    list.Add(entry);
        foreach (var (subject, list) in about)
        {
            list.Sort((left, right) => Place.Of(left).CompareTo(Place.Of(right)));
            _about[subject] = list;
        }
    }
}
