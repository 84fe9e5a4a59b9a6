namespace ColonyLineage.Desk.Forms;

/// <summary>How a blank is filled in.</summary>
public enum BlankKind
{
    /// <summary>One line of text.</summary>
    Text,

    /// <summary>Several lines of text.</summary>
    Lines,

    /// <summary>A number, a decimal point or comma allowed.</summary>
    Number,

    /// <summary>A day.</summary>
    Day,

    /// <summary>One of some choices.</summary>
    Choice,

    /// <summary>A box to tick.</summary>
    Tick,

    /// <summary>Several boxes to tick, under one name.</summary>
    Ticks,
}

/// <summary>Something to choose.</summary>
/// <param name="Value">What is sent.</param>
/// <param name="Said">What is read.</param>
public sealed record Choice(string Value, string Said);

/// <summary>
/// One blank of a form. Its name is the field of the request as refusals name it, so that every refusal finds its place.
/// </summary>
public sealed record Blank(string Name, string Label, BlankKind Kind = BlankKind.Text)
{
    /// <summary>What stands in it before anybody has written.</summary>
    public string? Initial { get; init; }

    /// <summary>A word of help, in the form at all times.</summary>
    public string? Hint { get; init; }

    /// <summary>Choices, or suggestions for a text.</summary>
    public IReadOnlyList<Choice> Choices { get; init; } = [];

    /// <summary>The act cannot be recorded without it.</summary>
    public bool Needed { get; init; }

    /// <summary>The id of the input in the page.</summary>
    public string Id => IdOf(Name);

    internal static string IdOf(string name) => "f-" + string.Concat(name.Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-')).Trim('-');
}

/// <summary>A line of a table of blanks.</summary>
/// <param name="Heading">What it is about.</param>
/// <param name="Blanks">Its blanks, the same in every line.</param>
/// <param name="Aside">A small word beside the heading.</param>
public sealed record BlankRow(string Heading, IReadOnlyList<Blank> Blanks, string? Aside = null);

/// <summary>A group of blanks.</summary>
public sealed record Part(string? Legend, IReadOnlyList<Blank> Blanks)
{
    /// <summary>Instead of single blanks, a table of them.</summary>
    public IReadOnlyList<BlankRow> Rows { get; init; } = [];

    /// <summary>The name under which more lines can be asked for; null where the lines are given.</summary>
    public string? More { get; init; }

    /// <summary>A word of help.</summary>
    public string? Hint { get; init; }

    /// <summary>It is rarely needed and stays folded until something stands in it.</summary>
    public bool Folded { get; init; }

    /// <summary>All blanks in it.</summary>
    public IEnumerable<Blank> All => Blanks.Concat(Rows.SelectMany(row => row.Blanks));

    /// <summary>A table with blank lines that are all alike.</summary>
    public static Part Table(string legend, string name, int lines, Func<int, IReadOnlyList<Blank>> blanks) =>
        new(legend, []) { Rows = [.. Enumerable.Range(0, lines).Select(i => new BlankRow($"{i + 1}", blanks(i)))], More = name };
}
