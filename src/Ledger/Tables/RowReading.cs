using System.Text.Json;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>Rows out of a read table, as asked for, in the order of <see cref="WholeBooks.Rows{TRow}"/>.</summary>
internal sealed class RowReading(NpgsqlDataSource source)
{
    public async Task<IReadOnlyList<TRow>> RowsAsync<TRow>(ReadTable table, Ask ask, CancellationToken cancel) where TRow : class, IRow
    {
        await using var command = source.CreateCommand();
        var filter = Set(command, table, ask);
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var rows = new List<TRow>();
        while (await reader.ReadAsync(cancel))
            if (filter.Wants(reader))
                rows.Add(RowMaker<TRow>.Make(reader));
        return rows;
    }

    public async Task WriteJsonAsync(ReadTable table, Ask ask, Stream utf8, CancellationToken cancel)
    {
        var columns = table.Question.Columns;
        var names = columns.Select(column => JsonEncodedText.Encode(column.Name)).ToArray();
        var types = columns.Select(column => column.Type).ToArray();
        await using var command = source.CreateCommand();
        var filter = Set(command, table, ask);
        await using var reader = await command.ExecuteReaderAsync(cancel);
        await using var json = new Utf8JsonWriter(utf8, RowJson.Options);
        json.WriteStartArray();
        while (await reader.ReadAsync(cancel))
        {
            if (!filter.Wants(reader)) continue;
            json.WriteStartObject();
            for (var i = 0; i < names.Length; i++)
            {
                json.WritePropertyName(names[i]);
                RowJson.WriteValue(json, reader, i, types[i]);
            }

            json.WriteEndObject();
            if (json.BytesPending > 32_768) await json.FlushAsync(cancel);
        }

        json.WriteEndArray();
    }

    private static RowFilter Set(NpgsqlCommand command, ReadTable table, Ask ask)
    {
        var filter = new RowFilter(table, ask, command.Parameters);
        command.CommandText = $"select {table.Columns} from {table.Full}{filter.Sql} order by {ReadTable.Owner}";
        return filter;
    }
}
