using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>
/// How the columns of one kind of sheet become entries. Written by the user as JSON with comments; the form is told in
/// <c>mapping.md</c> beside this file.
/// </summary>
/// <remarks>
/// A sheet with the columns <c>colony</c>, <c>wash day</c>, <c>mites</c> and <c>bees</c> needs no more than this; a row without a wash
/// gives nothing, a wash without its day or its bees is a bad cell:
/// <code>
/// { "name": "autumn-2026",            // all ids come from it: keep it, and a second run adds nothing
///   "key": "{colony}",                // what tells the rows apart
///   "dates": ["M/d/yy"],              // as the sheet writes them
///   "create": ["colonies"],           // colonies that are named and not yet known begin
///   "entries": [ { "kind": "washed", "on": "{wash day}", "colony": "{colony}", "mites": "{mites}", "bees": "{bees}" } ] }
/// </code>
/// </remarks>
public sealed class Mapping
{
    internal Mapping()
    {
    }

    /// <summary>What the import is called. All ids are derived from it, so the same sheet gives the same ids for ever.</summary>
    public required string Name { get; init; }

    /// <summary>Where the names of yards, colonies and queens are at home; mappings that share it speak of the same ones. Default: <see cref="Name"/>.</summary>
    public required string Names { get; init; }

    internal char Separator { get; init; } = ',';
    internal char Decimal { get; init; } = '.';
    internal string[] Dates { get; init; } = [];
    internal IReadOnlySet<string> Ignore { get; init; } = new HashSet<string>();
    internal Template Key { get; init; } = Template.Parse("");
    internal bool CreateYards { get; init; }
    internal bool CreateColonies { get; init; }
    internal IReadOnlyList<EntryMap> Entries { get; init; } = [];

    /// <summary>Every text of the mapping that may name a column, with its place in the mapping.</summary>
    internal IEnumerable<(string Column, string Place)> Columns =>
        Key.Columns.Select(column => (column, "key")).Concat(Entries.SelectMany(entry => entry.Columns));

    /// <summary>Reads a mapping.</summary>
    /// <exception cref="RefusedException">It is not JSON, or says something that cannot be.</exception>
    public static Mapping Read(string json) => MappingReader.Read(json);

    /// <summary>Reads a mapping (UTF-8).</summary>
    /// <exception cref="RefusedException">It is not JSON, or says something that cannot be.</exception>
    public static Mapping Read(Stream json)
    {
        using var reader = new StreamReader(json, leaveOpen: true);
        return Read(reader.ReadToEnd());
    }
}

/// <summary>One way to read a value: a text, translated, moved by days.</summary>
internal sealed record Choice(Template Text, IReadOnlyDictionary<string, string?>? Words, int Days, string Place);

/// <summary>A column must have a value, must have none, or must have one of some.</summary>
internal sealed record Condition(string Column, bool? Given, IReadOnlySet<string> Values, string Place);

/// <summary>Where one field of an entry comes from: choices, or parts that have choices each.</summary>
internal sealed record FieldMap(KindField Field, IReadOnlyList<Choice> Choices, IReadOnlyList<FieldMap> Parts)
{
    /// <summary>Its own choices and those of its parts.</summary>
    public IEnumerable<Choice> All => Choices.Concat(Parts.SelectMany(part => part.All));

    /// <summary>Whether anything of it is read off the row.</summary>
    public bool ReadsTheRow => All.Any(choice => !choice.Text.IsConstant);

    /// <summary>The column to name where something is wrong with it.</summary>
    public string Column => All.Select(choice => choice.Text.Column).FirstOrDefault(column => column.Length > 0, "");
}

/// <summary>One entry that a row may give.</summary>
internal sealed record EntryMap
{
    public required string Label { get; init; }
    public required KindAttribute Kind { get; init; }
    public required Type Type { get; init; }

    /// <summary>Its place among the entries of a day: the order in which the mapping lists them, after what is created.</summary>
    public required int Order { get; init; }

    public required IReadOnlyList<Choice> On { get; init; }
    public required IReadOnlyList<Choice> After { get; init; }
    public required Template? Once { get; init; }
    public required IReadOnlyList<Condition> When { get; init; }
    public required IReadOnlyList<FieldMap> Fields { get; init; }
    public required string Place { get; init; }

    /// <summary>The fields that say something: read off the row, and not merely what the entry is about or who reports it.</summary>
    public IEnumerable<FieldMap> Telling => Fields.Where(map => map.ReadsTheRow && !map.Field.IsAbout);

    public IEnumerable<(string Column, string Place)> Columns =>
        On.Concat(After).Concat(Fields.SelectMany(map => map.All)).SelectMany(choice => choice.Text.Columns.Select(column => (column, choice.Place)))
            .Concat((Once?.Columns ?? []).Select(column => (column, $"{Place}.once")))
            .Concat(When.Select(condition => (condition.Column, condition.Place)));
}
