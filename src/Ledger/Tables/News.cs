using ColonyLineage.Entries;
using ColonyLineage.Ledger.Reading;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// What was recorded since two earlier states: that of the books held in memory, and that of the read tables, which another process
/// may have moved on meanwhile.
/// </summary>
/// <param name="Known">What the read tables hold and the books in memory do not yet.</param>
/// <param name="Fresh">What neither holds.</param>
/// <param name="Any">Whether anything was recorded, be it without effect.</param>
internal sealed record News(Change Known, Change Fresh, bool Any)
{
    /// <summary>Null where there is so much that working everything out anew is quicker, or where the books in memory are ahead of the tables.</summary>
    public static async Task<News?> SinceAsync(NpgsqlConnection connection, Schema schema, string books, string tables, int most, CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand(Sql(schema, most), connection) { Parameters = { new() { Value = books }, new() { Value = tables } } };
        var recorded = new Dictionary<EntryId, (Entry Entry, bool InTables)>();
        var struck = new Dictionary<EntryId, (Entry? Target, bool InTables)>();
        var count = 0;
        await using var reader = await command.ExecuteReaderAsync(cancel);
        for (; await reader.ReadAsync(cancel); count++)
        {
            if (reader.GetBoolean(4)) return null;
            // What a void of long ago names has been gone ever since, or never stood.
            if (reader.GetBoolean(6)) continue;
            var inTables = reader.GetBoolean(5);
            if (reader.IsDBNull(7))
            {
                var entry = EntryRows.EntryOf(reader);
                recorded[entry.Id] = (entry, inTables);
            }
            else if (new EntryId(reader.GetGuid(7)) is var target && (inTables || !struck.ContainsKey(target)))
                struck[target] = (reader.IsDBNull(2) ? null : EntryRows.EntryOf(reader, 2), inTables);
        }

        return count >= most ? null : new News(Known(), Fresh(), count > 0);

        Change Known()
        {
            var change = new Change();
            foreach (var (id, (entry, inTables)) in recorded)
                if (inTables && !(struck.TryGetValue(id, out var by) && by.InTables))
                    change.Stand(entry);
            foreach (var (id, (target, inTables)) in struck)
                if (inTables && target is not null && !recorded.ContainsKey(id))
                    change.Strike(target);
            return change;
        }

        Change Fresh()
        {
            var change = new Change();
            foreach (var (id, (entry, inTables)) in recorded)
                if (!inTables && !struck.ContainsKey(id))
                    change.Stand(entry);
            foreach (var (id, (target, inTables)) in struck)
                if (!inTables && target is not null && !(recorded.TryGetValue(id, out var one) && !one.InTables))
                    change.Strike(target);
            return change;
        }
    }

    /// <summary>One row for each entry recorded since: itself, or the entry that it voids.</summary>
    private static string Sql(Schema schema, int most) => $"""
        with news as materialized (
            select id, voids, pg_visible_in_snapshot(recorded_in, $1::pg_snapshot) as in_books, pg_visible_in_snapshot(recorded_in, $2::pg_snapshot) as in_tables
            from {schema.Outfit}.entry
            where recorded_in >= least(pg_snapshot_xmin($1::pg_snapshot), pg_snapshot_xmin($2::pg_snapshot))
                and not (pg_visible_in_snapshot(recorded_in, $1::pg_snapshot) and pg_visible_in_snapshot(recorded_in, $2::pg_snapshot))
            limit {most})
        select m.type, m.data, t.type, t.data, news.in_books, news.in_tables,
            exists (select from {schema.Outfit}.entry v where v.voids = coalesce(news.voids, news.id) and pg_visible_in_snapshot(v.recorded_in, $1::pg_snapshot)),
            news.voids
        from news left join {schema.Outfit}.mt_events m on m.id = news.id left join {schema.Outfit}.mt_events t on t.id = news.voids
        """;
}
