namespace ColonyLineage.Desk.Drawing;

/// <summary>
/// How wide a text will be: the server has no fonts, so it reckons with a wide one. A label that would not fit is broken into
/// lines, never cut by its box.
/// </summary>
public static class Lettering
{
    /// <summary>The width of a text in units of the drawing, at a size in the same units, on the safe side of common sans-serif fonts.</summary>
    public static double Width(string text, double size, bool bold = false)
    {
        double ems = 0;
        foreach (var letter in text)
            ems += letter switch
            {
                'i' or 'j' or 'l' or '.' or ',' or ':' or ';' or '\'' or '|' or '!' or ' ' => 0.36,
                'f' or 't' or 'r' or '-' or '(' or ')' or '/' => 0.45,
                'm' or 'w' or 'M' or 'W' or '→' => 0.98,
                >= 'A' and <= 'Z' => 0.74,
                >= '0' and <= '9' => 0.64,
                _ => 0.63,
            };
        return ems * size * (bold ? 1.1 : 1);
    }

    /// <summary>Breaks a text at blanks into lines of at most a width; a single word that is wider is broken within.</summary>
    public static IReadOnlyList<string> Lines(string text, double width, double size, bool bold = false)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            var joined = line.Length == 0 ? rest : $"{line} {rest}";
            if (Width(joined, size, bold) <= width)
            {
                line = joined;
                continue;
            }

            if (line.Length > 0) lines.Add(line);
            while (Width(rest, size, bold) > width && rest.Length > 1)
            {
                var take = rest.Length - 1;
                while (take > 1 && Width(rest[..take], size, bold) > width) take--;
                lines.Add(rest[..take]);
                rest = rest[take..];
            }

            line = rest;
        }

        if (line.Length > 0 || lines.Count == 0) lines.Add(line);
        return lines;
    }
}
