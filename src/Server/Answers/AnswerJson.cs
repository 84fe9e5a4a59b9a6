using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using ColonyLineage.Ledger.Tables;

namespace ColonyLineage.Server.Answers;

/// <summary>Writes answers as JSON: an object a row, its properties named as the columns.</summary>
public static class AnswerJson
{
    // What is written here is sent as JSON and never pasted into a page, so letters beyond ASCII stay readable.
    public static readonly System.Text.Json.JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    internal static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The start of the envelope, up to and with the name of the rows.</summary>
    public static void WriteHead(Utf8JsonWriter json, string question, Asked asked, DateOnly today)
    {
        json.WriteStartObject();
        json.WriteString("question", question);
        json.WritePropertyName("asked");
        json.WriteStartObject();
        json.WriteString("today", Text(today));
        foreach (var (name, value) in asked.Given())
        {
            json.WritePropertyName(name.Replace('-', '_'));
            WriteValue(json, value);
        }

        json.WriteEndObject();
        json.WritePropertyName("rows");
    }

    /// <summary>The whole answer.</summary>
    public static void Write(Stream to, string question, Asked asked, DateOnly today, Answer answer)
    {
        using var json = new Utf8JsonWriter(to, Options);
        WriteHead(json, question, asked, today);
        json.WriteStartArray();
        var names = answer.Columns.Select(column => JsonEncodedText.Encode(column.Name)).ToArray();
        foreach (var row in answer.Rows)
        {
            json.WriteStartObject();
            for (var i = 0; i < names.Length; i++)
            {
                json.WritePropertyName(names[i]);
                WriteValue(json, row[i]);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    internal static void WriteValue(Utf8JsonWriter json, object? value)
    {
        if (value is DateTimeOffset instant) json.WriteStringValue(Text(instant));
        else RowJson.WriteValue(json, value);
    }

    /// <summary>A day as ISO 8601 has it.</summary>
    public static string Text(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>An instant as RFC 3339 has it, in UTC.</summary>
    public static string Text(DateTimeOffset instant) => instant.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.FFFFFF'Z'", CultureInfo.InvariantCulture);
}
