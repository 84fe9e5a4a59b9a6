namespace ColonyLineage.Ledger.Import;

/// <summary>
/// A text of the mapping in which <c>{column}</c> stands for a cell; <c>{{</c> and <c>}}</c> are plain braces.
/// Without a column it is a constant.
/// </summary>
internal sealed record Template(string Written, IReadOnlyList<Template.Part> Parts)
{
    /// <summary>Stands for the row's place among the rows of the same yard, 1 for the first.</summary>
    public const string Place = "#";

    /// <summary>A plain text or a column's name.</summary>
    internal readonly record struct Part(string Text, bool IsColumn);

    /// <summary>The columns that it reads.</summary>
    public IEnumerable<string> Columns => Parts.Where(part => part.IsColumn && part.Text != Place).Select(part => part.Text);

    /// <summary>The column to name where something is wrong with it; empty for a constant.</summary>
    public string Column => Columns.FirstOrDefault("");

    /// <summary>Whether it reads nothing off the row.</summary>
    public bool IsConstant => !Parts.Any(part => part.IsColumn);

    /// <summary>Reads the written form.</summary>
    /// <exception cref="FormatException">A brace has no partner.</exception>
    public static Template Parse(string written)
    {
        var parts = new List<Part>();
        var text = new System.Text.StringBuilder();
        for (var i = 0; i < written.Length; i++)
        {
            var c = written[i];
            if (c is not ('{' or '}'))
            {
                text.Append(c);
            }
            else if (i + 1 < written.Length && written[i + 1] == c)
            {
                text.Append(c);
                i++;
            }
            else
            {
                var close = c == '{' ? written.IndexOf('}', i) : -1;
                if (close < 0) throw new FormatException($"a brace in '{written}' has no partner; write {{{{ or }}}} where a brace is meant as such.");
                if (text.Length > 0) parts.Add(new Part(text.ToString(), false));
                text.Clear();
                parts.Add(new Part(written[(i + 1)..close].Trim(), true));
                i = close;
            }
        }

        if (text.Length > 0 || parts.Count == 0) parts.Add(new Part(text.ToString(), false));
        return new Template(written, parts);
    }
}
