using System.Text.Json.Nodes;
using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>Whether a value was there, was not, or was bad (and has been noted as such).</summary>
internal enum Found
{
    Empty,
    Given,
    Bad,
}

/// <summary>A value read off a row.</summary>
internal readonly record struct Value<T>(Found Found, T? Of)
{
    public static readonly Value<T> Empty = new(Found.Empty, default);
    public static readonly Value<T> Bad = new(Found.Bad, default);

    public static Value<T> Given(T of) => new(Found.Given, of);
}

/// <summary>Reads values off one row and collects its bad cells.</summary>
internal sealed class RowReading(Mapping map, Names names, IReadOnlyDictionary<string, int> columns, PlacesInYard places, SheetRow row)
{
    private static readonly HashSet<string> SpreadsheetErrors = new(StringComparer.Ordinal)
    {
        "#VALUE!", "#REF!", "#DIV/0!", "#NAME?", "#N/A", "#NUM!", "#NULL!", "#SPILL!", "#CALC!", "#FIELD!", "#BLOCKED!", "#UNKNOWN!", "#BUSY!", "#GETTING_DATA",
    };

    private readonly List<BadCell> _bad = [.. row.Bad];

    /// <summary>What is wrong so far.</summary>
    public IReadOnlyList<BadCell> Bad => _bad;

    /// <summary>What tells the row from the others.</summary>
    public string Key { get; private set; } = "";

    /// <summary>Reads the key; false where there is none.</summary>
    public bool ReadKey()
    {
        var key = Text(map.Key);
        if (key.Found is Found.Empty) Note(map.Key.Column, Refusals.Missing, "The cell tells the rows apart (\"key\" in the mapping), so it cannot be empty.");
        Key = key.Of ?? "";
        return key.Found is Found.Given;
    }

    /// <summary>Notes a bad cell.</summary>
    public void Note(string column, string name, string message)
    {
        var value = columns.TryGetValue(column, out var i) && i < row.Cells.Length ? row.Cells[i] : "";
        if (!_bad.Exists(bad => bad.Column == column && bad.Name == name))
            _bad.Add(new BadCell(row.Row, column, SheetReader.Shown(value), name, message));
    }

    /// <summary>Whether all conditions hold; null where a cell of theirs is bad.</summary>
    public bool? Holds(IReadOnlyList<Condition> conditions)
    {
        foreach (var condition in conditions)
        {
            var cell = Cell(condition.Column);
            if (cell.Found is Found.Bad) return null;
            if (condition.Given is { } given ? given != cell.Found is Found.Given : !condition.Values.Contains(cell.Of ?? "")) return false;
        }

        return true;
    }

    /// <summary>A text with the row's cells in it: empty where all cells are, bad where only some are.</summary>
    public Value<string> Text(Template template, string yard = "")
    {
        if (template.IsConstant) return Value<string>.Given(template.Parts[0].Text);
        var text = "";
        var (given, empty) = (0, "");
        foreach (var part in template.Parts)
        {
            if (!part.IsColumn)
            {
                text += part.Text;
            }
            else if (part.Text == Template.Place)
            {
                text += places.Of(yard, Key);
                given++;
            }
            else
            {
                var cell = Cell(part.Text);
                if (cell.Found is Found.Bad) return Value<string>.Bad;
                if (cell.Found is Found.Empty) empty = part.Text;
                else given++;
                text += cell.Of;
            }
        }

        if (given == 0) return Value<string>.Empty;
        if (empty.Length == 0) return Value<string>.Given(text);
        Note(empty, Refusals.Missing, $"The cell is empty, and the mapping's text '{template.Written}' takes it together with others that are not. Fill it, or map the columns apart.");
        return Value<string>.Bad;
    }

    /// <summary>The first choice that is not empty, translated.</summary>
    public Value<(string Text, Choice Choice)> First(IReadOnlyList<Choice> choices, string yard = "")
    {
        foreach (var choice in choices)
        {
            var text = Translated(choice, yard);
            if (text.Found is Found.Bad) return Value<(string, Choice)>.Bad;
            if (text.Found is Found.Given) return Value<(string, Choice)>.Given((text.Of!, choice));
        }

        return Value<(string, Choice)>.Empty;
    }

    /// <summary>A day.</summary>
    public Value<DateOnly> Day(IReadOnlyList<Choice> choices)
    {
        var first = First(choices);
        if (first.Found is not Found.Given) return new Value<DateOnly>(first.Found, default);
        var (text, choice) = first.Of;
        var (day, fault) = ValueText.Day(text, Formats(choice), choice.Days);
        if (fault is not var (name, message)) return Value<DateOnly>.Given(day);
        Note(choice.Text.Column, name, message);
        return Value<DateOnly>.Bad;
    }

    /// <summary>The JSON of a field. What it mentions is added to <paramref name="mentions"/>.</summary>
    public Value<JsonNode> Field(FieldMap field, DateOnly day, ICollection<(Mention Thing, string Column)> mentions)
    {
        if (field.Parts.Count > 0) return Parts(field, day, mentions);
        if (!field.Field.IsList) return Single(field.Field.Type, First(field.Choices), day, mentions);
        var list = new JsonArray();
        foreach (var choice in field.Choices)
        {
            var item = Single(field.Field.Type, First([choice]), day, mentions);
            if (item.Found is Found.Bad) return item;
            if (item.Found is Found.Given) list.Add(item.Of);
        }

        return list.Count == 0 ? Value<JsonNode>.Empty : Value<JsonNode>.Given(list);
    }

    private Value<JsonNode> Parts(FieldMap field, DateOnly day, ICollection<(Mention Thing, string Column)> mentions)
    {
        var values = new JsonObject();
        var empty = new List<FieldMap>();
        var readOffTheRow = 0;
        var yard = field.Parts.FirstOrDefault(part => part.Field.Type == typeof(YardId)) is { } inYard ? First(inYard.Choices).Of.Text ?? "" : "";
        foreach (var part in field.Parts)
        {
            var value = Single(part.Field.Type, First(part.Choices, yard), day, mentions);
            if (value.Found is Found.Bad) return value;
            if (value.Found is Found.Empty) empty.Add(part);
            else values[part.Field.Name] = value.Of;
            if (value.Found is Found.Given && part.Choices.Any(choice => choice.Text.Columns.Any())) readOffTheRow++;
        }

        if (readOffTheRow == 0 && field.ReadsTheRow) return Value<JsonNode>.Empty;
        foreach (var part in empty.Where(part => part.Field.Required))
        {
            Note(part.Column, Refusals.Missing, $"The cell is empty, and the {field.Field.Name}'s other cells are not. Fill it, or empty them all.");
            return Value<JsonNode>.Bad;
        }

        return Value<JsonNode>.Given(values);
    }

    private Value<JsonNode> Single(Type type, Value<(string Text, Choice Choice)> first, DateOnly day, ICollection<(Mention Thing, string Column)> mentions)
    {
        if (first.Found is not Found.Given) return new Value<JsonNode>(first.Found, null);
        var (text, choice) = first.Of;
        if (type == typeof(YardId) || type == typeof(ColonyId))
            mentions.Add((new Mention(type == typeof(YardId) ? SubjectKind.Yard : SubjectKind.Colony, text), choice.Text.Column));
        if (Named(type, text, day) is { } id) return Value<JsonNode>.Given(JsonValue.Create(id));
        var (value, fault) = ValueText.Read(type, text, choice.Text.IsConstant ? '.' : map.Decimal, Formats(choice), choice.Days);
        if (fault is not var (name, message)) return Value<JsonNode>.Given(value!);
        Note(choice.Text.Column, name, message);
        return Value<JsonNode>.Bad;
    }

    private Guid? Named(Type type, string name, DateOnly day) =>
        type == typeof(YardId) ? names.Yard(name).Value
        : type == typeof(ColonyId) ? names.Colony(name).Value
        : type == typeof(QueenId) ? names.Queen(name).Value
        : type == typeof(VisitId) ? names.Visit(name, day).Value
        : null;

    private Value<string> Translated(Choice choice, string yard)
    {
        var text = Text(choice.Text, yard);
        if (text.Found is not Found.Given || choice.Words is not { } words) return text;
        if (words.TryGetValue(text.Of!, out var word)) return word is null ? Value<string>.Empty : Value<string>.Given(word);
        if (words.TryGetValue("*", out var other)) return other is null ? Value<string>.Empty : Value<string>.Given(other == "*" ? text.Of! : other);
        Note(choice.Text.Column, Refusals.UnknownWord, $"'{text.Of}' is not among the \"words\" at {choice.Place}: {string.Join(", ", words.Keys)}. Mend the cell or add the word.");
        return Value<string>.Bad;
    }

    private Value<string> Cell(string column)
    {
        var i = columns[column];
        var text = i < row.Cells.Length ? row.Cells[i] : "";
        if (text.Length == 0 || map.Ignore.Contains(text)) return Value<string>.Empty;
        if (!SpreadsheetErrors.Contains(text)) return Value<string>.Given(text);
        Note(column, ImportRefusals.SpreadsheetError, $"'{text}' is a spreadsheet's error, not a value. Mend the cell, or add it to \"ignore\".");
        return Value<string>.Bad;
    }

    private string[] Formats(Choice choice) => choice.Text.IsConstant ? ["yyyy-MM-dd", .. map.Dates] : map.Dates;
}

/// <summary>Counts the rows of each yard, 1 for the first that is set there, bad rows included: mending one changes no other's number.</summary>
internal sealed class PlacesInYard
{
    private readonly Dictionary<(string Yard, string Key), int> _places = [];
    private readonly Dictionary<string, int> _last = [];

    /// <summary>The row's place in the yard; the same one each time it is asked for.</summary>
    public int Of(string yard, string key)
    {
        if (_places.TryGetValue((yard, key), out var place)) return place;
        return _places[(yard, key)] = _last[yard] = _last.GetValueOrDefault(yard) + 1;
    }
}
