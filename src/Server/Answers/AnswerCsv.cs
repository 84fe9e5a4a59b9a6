using System.Globalization;
using System.Text;

namespace ColonyLineage.Server.Answers;

/// <summary>
/// Writes answers as CSV by RFC 4180: comma, CRLF, a header, quotes where they are needed, UTF-8 without a byte order mark. Several
/// texts in a cell have '; ' between them, ids of entries a space.
/// </summary>
public static class AnswerCsv
{
    /// <summary>The whole answer.</summary>
    public static void Write(TextWriter to, Answer answer)
    {
        WriteLine(to, answer.Columns.Select(column => column.Name));
        foreach (var row in answer.Rows) WriteLine(to, row.Select(Cell));
    }

    /// <summary>The whole answer as UTF-8.</summary>
    public static void Write(Stream to, Answer answer)
    {
        using var writer = new StreamWriter(to, new UTF8Encoding(false), leaveOpen: true);
        Write(writer, answer);
    }

    /// <summary>A value as the text of a cell, without quotes.</summary>
    public static string Cell(object? value) => value switch
    {
        null => "",
        string text => Guard(text),
        bool flag => flag ? "true" : "false",
        DateOnly day => AnswerJson.Text(day),
        DateTimeOffset instant => AnswerJson.Text(instant),
        Guid[] ids => string.Join(' ', ids),
        string[] texts => Guard(string.Join("; ", texts)),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };

    // A spreadsheet would run a text that begins like a formula, and anybody may name a colony. An apostrophe before it is how
    // spreadsheets themselves mark a text. Numbers of ours are not texts and stay as they are.
    private static string Guard(string text) => text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' or '＝' or '＋' or '－' or '＠' ? "'" + text : text;

    private static void WriteLine(TextWriter to, IEnumerable<string> cells)
    {
        var first = true;
        foreach (var cell in cells)
        {
            if (!first) to.Write(',');
            first = false;
            if (cell.AsSpan().IndexOfAny(",\"\r\n") < 0 && !(cell.Length > 0 && (cell[0] == ' ' || cell[^1] == ' '))) to.Write(cell);
            else
            {
                to.Write('"');
                to.Write(cell.Replace("\"", "\"\"", StringComparison.Ordinal));
                to.Write('"');
            }
        }

        to.Write("\r\n");
    }
}
