using System.Text.Encodings.Web;
using System.Text.Json;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// The JSON of rows: an object a row, under the columns' names; ids as text, days as ISO 8601, nulls written. From a row in memory
/// and from the database it is the same bytes.
/// </summary>
public static class RowJson
{
    /// <summary>Text stays readable: it goes out as JSON, never into a page's markup as it is.</summary>
    internal static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, SkipValidation = true };

    /// <summary>Writes one row.</summary>
    public static void Write(Utf8JsonWriter json, IRow row, IReadOnlyList<Column> columns)
    {
        json.WriteStartObject();
        WriteColumns(json, row, columns);
        json.WriteEndObject();
    }

    internal static void WriteColumns(Utf8JsonWriter json, IRow row, IReadOnlyList<Column> columns)
    {
        foreach (var column in columns)
        {
            json.WritePropertyName(column.Name);
            WriteValue(json, column.Value(row));
        }
    }

    /// <summary>The JSON array of rows.</summary>
    public static byte[] Array(IEnumerable<IRow> rows, IReadOnlyList<Column> columns)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, Options))
        {
            json.WriteStartArray();
            foreach (var row in rows) Write(json, row, columns);
            json.WriteEndArray();
        }

        return buffer.ToArray();
    }

    /// <summary>Writes one value of a column.</summary>
    public static void WriteValue(Utf8JsonWriter json, object? value)
    {
        switch (value)
        {
            case null: json.WriteNullValue(); break;
            case string text: json.WriteStringValue(text); break;
            case int whole: json.WriteNumberValue(whole); break;
            case decimal number: json.WriteNumberValue(number); break;
            case bool flag: json.WriteBooleanValue(flag); break;
            case Guid id: json.WriteStringValue(id); break;
            case DateOnly day: WriteDay(json, day); break;
            case Guid[] ids:
                json.WriteStartArray();
                foreach (var id in ids) json.WriteStringValue(id);
                json.WriteEndArray();
                break;
            case string[] texts:
                json.WriteStartArray();
                foreach (var text in texts) json.WriteStringValue(text);
                json.WriteEndArray();
                break;
            default: throw new NotSupportedException($"A row cannot hold a {value.GetType().Name}.");
        }
    }

    /// <summary>Writes one value straight from the database's reader, without a box around it.</summary>
    internal static void WriteValue(Utf8JsonWriter json, NpgsqlDataReader reader, int at, ColumnType type)
    {
        if (reader.IsDBNull(at))
        {
            json.WriteNullValue();
            return;
        }

        switch (type)
        {
            case ColumnType.Text: json.WriteStringValue(reader.GetString(at)); break;
            case ColumnType.Whole: json.WriteNumberValue(reader.GetInt32(at)); break;
            case ColumnType.Number: json.WriteNumberValue(reader.GetDecimal(at)); break;
            case ColumnType.Day: WriteDay(json, reader.GetFieldValue<DateOnly>(at)); break;
            case ColumnType.Flag: json.WriteBooleanValue(reader.GetBoolean(at)); break;
            case ColumnType.Id: json.WriteStringValue(reader.GetGuid(at)); break;
            case ColumnType.Entries: WriteValue(json, reader.GetFieldValue<Guid[]>(at)); break;
            case ColumnType.Texts: WriteValue(json, reader.GetFieldValue<string[]>(at)); break;
            default: throw new NotSupportedException($"There is no JSON for {type}.");
        }
    }

    private static void WriteDay(Utf8JsonWriter json, DateOnly day)
    {
        Span<char> text = stackalloc char[10];
        day.TryFormat(text, out _, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        json.WriteStringValue(text);
    }
}
