using Npgsql;

namespace ColonyLineage.Bench;

/// <summary>Bytes on disk for every entry, indexes and all, as PostgreSQL says.</summary>
internal static class Size
{
    public static async Task MeasureAsync(string connectionString, string outfit, int entries)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        await using var command = source.CreateCommand("""
            select (c.relname like 'mt\_%' or c.relname in ('entry', 'entry_concerns', 'kept_aside')) as kept, sum(pg_total_relation_size(c.oid))::bigint
            from pg_class c join pg_namespace n on n.oid = c.relnamespace where n.nspname = $1 and c.relkind = 'r' group by 1
            """);
        command.Parameters.Add(new() { Value = outfit });
        await using var reader = await command.ExecuteReaderAsync();
        var (kept, read) = (0L, 0L);
        while (await reader.ReadAsync())
            if (reader.GetBoolean(0)) kept = reader.GetInt64(1);
            else read = reader.GetInt64(1);
        Runner.Report("bytes on disk per entry, all told", (double)(kept + read) / entries, null);
        Runner.Report("bytes on disk per entry, the entries themselves", (double)kept / entries, null);
        Runner.Report("bytes on disk per entry, the read tables", (double)read / entries, null);
    }
}
