using System.Globalization;
using Microsoft.AspNetCore.Http;

namespace ColonyLineage.Desk.Forms;

/// <summary>What stands in a form: what was sent, or nothing yet.</summary>
public sealed class Filled(IFormCollection? form)
{
    /// <summary>The name of the button that asks for more lines.</summary>
    public const string MoreName = "more";

    /// <summary>The form was sent.</summary>
    public bool IsSent => form is not null;

    /// <summary>A value without the blanks around it; null where there is none.</summary>
    public string? this[string name] => form is not null && form.TryGetValue(name, out var values) && !string.IsNullOrWhiteSpace(values[0]) ? values[0]!.Trim() : null;

    /// <summary>All values of a name.</summary>
    public IReadOnlyList<string> All(string name) => form is not null && form.TryGetValue(name, out var values) ? [.. values.OfType<string>().Where(value => value.Length > 0)] : [];

    /// <summary>Only more lines are asked for; nothing is to be recorded yet.</summary>
    public bool AsksForMore => this[MoreName] is not null;

    /// <summary>The number of lines of a table.</summary>
    public int Lines(string table, int first)
    {
        var shown = int.TryParse(this[LinesName(table)], NumberStyles.None, CultureInfo.InvariantCulture, out var sent) ? sent : first;
        return Math.Clamp(this[MoreName] == table ? shown + 5 : shown, 1, 200);
    }

    internal static string LinesName(string table) => "lines." + table;
}
