using System.Text.Json;
using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>Reads a mapping and says of everything that cannot be where it stands in it: all faults, not only the first.</summary>
internal sealed class MappingReader
{
    private static readonly JsonDocumentOptions Options = new()
    {
        AllowTrailingCommas = true,
        CommentHandling = JsonCommentHandling.Skip,
        AllowDuplicateProperties = false,
    };

    private static readonly Dictionary<string, (Type Type, KindAttribute Kind)> Kinds = ColonyLineage.Entries.Kinds.All
        .Where(kind => kind.Type != typeof(Voided) && kind.Type != typeof(ConflictSettled)) // they name entries, which a sheet cannot
        .ToDictionary(kind => kind.Kind.Name, StringComparer.Ordinal);

    private static readonly string[] TopLevel = ["name", "names", "separator", "decimal", "dates", "ignore", "key", "create", "words", "entries"];
    private static readonly string[] EntryLevel = ["kind", "label", "on", "after", "once", "when"];

    private readonly List<Refusal> _faults = [];
    private readonly Dictionary<string, IReadOnlyDictionary<string, string?>> _words = new(StringComparer.Ordinal);
    private char _decimal = '.';
    private string[] _dates = ["yyyy-MM-dd"];

    public static Mapping Read(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json, Options);
            var reader = new MappingReader();
            var mapping = reader.ReadTop(document.RootElement);
            return reader._faults.Count == 0 ? mapping! : throw new RefusedException(reader._faults);
        }
        catch (JsonException problem)
        {
            var line = problem.LineNumber is { } number ? $"line {number + 1}, character {problem.BytePositionInLine + 1}" : "";
            throw new RefusedException(new Refusal(ImportRefusals.MappingNotReadable, line, $"The mapping is not JSON: {problem.Message}"));
        }
    }

    private Mapping? ReadTop(JsonElement top)
    {
        if (top.ValueKind != JsonValueKind.Object) return Wrong<Mapping>("", "it is an object: { \"name\": …, \"key\": …, \"entries\": [ … ] }.");
        foreach (var property in top.EnumerateObject())
            if (!TopLevel.Contains(property.Name)) Wrong(property.Name, $"there is no such setting. There are {string.Join(", ", TopLevel)}.");

        var name = NeededText(top, "name", "Say what this import is called: all ids are derived from it.");
        var separator = Sign(top, "separator", ',', ",;\t");
        _decimal = Sign(top, "decimal", '.', ".,");
        if (top.TryGetProperty("dates", out var dates)) _dates = [.. Texts(dates, "dates")];
        foreach (var format in _dates)
            if (!format.Contains('d') || !format.Contains('M') || !format.Contains('y'))
                Wrong("dates", $"'{format}' lacks a day (d), a month (M) or a year (y).");
        if (_dates.Length == 0) Wrong("dates", "give at least one format, for instance \"yyyy-MM-dd\".");
        if (top.TryGetProperty("words", out var words) && IsObject(words, "words"))
            foreach (var list in words.EnumerateObject()) _words[list.Name] = WordList(list.Value, $"words.{list.Name}");

        var create = top.TryGetProperty("create", out var created) ? Texts(created, "create") : [];
        foreach (var what in create)
            if (what is not ("yards" or "colonies")) Wrong("create", $"'{what}' is not something that is created by being named: yards, colonies.");
        var ignore = top.TryGetProperty("ignore", out var ignored) ? Texts(ignored, "ignore").Select(text => text.Trim()) : [];
        var key = Template(top, "key", "") ?? Wrong<Template>("key", "say what tells the rows apart, for instance \"{colony}\" or \"{colony}/{day}\".");
        if (key is { IsConstant: true }) Wrong("key", "it reads no column, so all rows have the same: write a column in braces.");
        var entries = ReadEntries(top);
        return key is null ? null : new Mapping
        {
            Name = name,
            Names = top.TryGetProperty("names", out var names) ? Text(names, "names") ?? "" : name,
            Separator = separator,
            Decimal = _decimal,
            Dates = _dates,
            Ignore = ignore.ToHashSet(StringComparer.Ordinal),
            Key = key,
            CreateYards = create.Contains("yards"),
            CreateColonies = create.Contains("colonies"),
            Entries = entries,
        };
    }

    private List<EntryMap> ReadEntries(JsonElement top)
    {
        var entries = new List<EntryMap>();
        if (!top.TryGetProperty("entries", out var list) || list.ValueKind != JsonValueKind.Array || list.GetArrayLength() == 0)
        {
            Wrong("entries", "list at least one entry that a row gives.");
            return entries;
        }

        foreach (var (i, element) in list.EnumerateArray().Index())
            if (ReadEntry(element, i) is { } entry) entries.Add(entry);
        foreach (var twice in entries.GroupBy(entry => entry.Label).Where(same => same.Count() > 1))
            if (twice.Any(entry => entry.Once is null) || twice.DistinctBy(entry => entry.Type).Count() > 1)
                Wrong(twice.Last().Place, $"{twice.Count()} entries are labelled '{twice.Key}'. Give each a \"label\" of its own, and keep it: ids are derived from it.");
        return entries;
    }

    private EntryMap? ReadEntry(JsonElement element, int index)
    {
        var place = $"entries[{index}]";
        if (!IsObject(element, place)) return null;
        if (!element.TryGetProperty("kind", out var kindText) || Text(kindText, $"{place}.kind") is not { } kindName)
            return Wrong<EntryMap>(place, "say the \"kind\" of entry, for instance \"washed\".");
        if (!Kinds.TryGetValue(kindName, out var kind))
            return Wrong<EntryMap>($"{place}.kind", $"'{kindName}' is not a kind of entry. There are {string.Join(", ", Kinds.Keys)}.");

        var known = KindField.Of(kind.Type);
        var fields = new List<FieldMap>();
        foreach (var property in element.EnumerateObject().Where(property => !EntryLevel.Contains(property.Name)))
        {
            if (known.FirstOrDefault(field => field.Name == property.Name) is not { } field)
                Wrong($"{place}.{property.Name}", $"{kindName} has no such field. It has {string.Join(", ", known.Select(field => field.Name))}.");
            else if (ReadField(property.Value, field, $"{place}.{property.Name}") is { } map)
                fields.Add(map);
        }

        foreach (var missing in known.Where(field => field.Required && !element.TryGetProperty(field.Name, out _)))
            Wrong(place, $"{kindName} needs \"{missing.Name}\".");
        if (!element.TryGetProperty("on", out var on)) Wrong(place, "say on which day: \"on\": \"{column}\".");
        return new EntryMap
        {
            Label = element.TryGetProperty("label", out var label) ? Text(label, $"{place}.label") ?? "" : kindName,
            Kind = kind.Kind,
            Type = kind.Type,
            Order = index + 2, // yards and colonies that are created come first
            On = on.ValueKind == JsonValueKind.Undefined ? [] : Choices(on, typeof(DateOnly), $"{place}.on"),
            After = element.TryGetProperty("after", out var after) ? Choices(after, typeof(DateOnly), $"{place}.after") : [],
            Once = Template(element, "once", $"{place}."),
            When = element.TryGetProperty("when", out var when) ? Conditions(when, $"{place}.when") : [],
            Fields = fields,
            Place = place,
        };
    }

    private FieldMap? ReadField(JsonElement element, KindField field, string place)
    {
        if (field.Parts is not { Count: > 0 } known) return new FieldMap(field, Choices(element, field.Type, place), []);
        if (!IsObject(element, place)) return null;
        var parts = new List<FieldMap>();
        foreach (var property in element.EnumerateObject())
        {
            if (known.FirstOrDefault(part => part.Name == property.Name) is { } part)
                parts.Add(new FieldMap(part, Choices(property.Value, part.Type, $"{place}.{property.Name}"), []));
            else
                Wrong($"{place}.{property.Name}", $"there is no such part. There are {string.Join(", ", known.Select(part => part.Name))}.");
        }

        foreach (var missing in known.Where(part => part.Required && parts.TrueForAll(given => given.Field.Name != part.Name)))
            Wrong(place, $"\"{missing.Name}\" is missing.");
        return new FieldMap(field, [], parts);
    }

    private List<Choice> Choices(JsonElement element, Type type, string place)
    {
        if (element.ValueKind != JsonValueKind.Array) return ReadChoice(element, type, place) is { } one ? [one] : [];
        return [.. element.EnumerateArray().Select((item, i) => ReadChoice(item, type, $"{place}[{i}]")).OfType<Choice>()];
    }

    private Choice? ReadChoice(JsonElement element, Type type, string place)
    {
        IReadOnlyDictionary<string, string?>? words = null;
        var days = 0;
        if (element.ValueKind == JsonValueKind.Object)
        {
            foreach (var property in element.EnumerateObject())
                if (property.Name is not ("from" or "words" or "days")) Wrong($"{place}.{property.Name}", "a value has \"from\", and perhaps \"words\" or \"days\".");
            if (element.TryGetProperty("words", out var list)) words = Words(list, $"{place}.words");
            if (element.TryGetProperty("days", out var moved))
            {
                if (type != typeof(DateOnly) && type != typeof(Occurred)) Wrong($"{place}.days", "only a day can be moved by days.");
                if (moved.ValueKind != JsonValueKind.Number || !moved.TryGetInt32(out days) || Math.Abs(days) > 3660)
                    Wrong($"{place}.days", "a whole number of days, at most 3,660.");
            }

            if (!element.TryGetProperty("from", out var from)) return Wrong<Choice>(place, "say \"from\" which column, for instance \"{queen}\".");
            element = from;
        }

        var written = Text(element, place);
        if (written is null || Parse(written, place) is not { } text) return null;
        if (type == typeof(EntryId)) Wrong(place, "a sheet cannot name entries.");
        if (text.Parts.Any(part => part.Text == ColonyLineage.Ledger.Import.Template.Place && part.IsColumn) && !place.EndsWith(".number", StringComparison.Ordinal))
            Wrong(place, "{#} counts the rows of a yard, so it can only be a spot's number.");
        foreach (var target in words is null ? text.IsConstant ? [written] : [] : words.Where(word => word is not { Key: "*", Value: "*" }).Select(word => word.Value).OfType<string>())
            CheckConstant(type, words is null ? text.Parts[0].Text : target, words is not null, place);
        return new Choice(text, words, days, place);
    }

    private void CheckConstant(Type type, string text, bool asInSheet, string place)
    {
        if (IsId(type)) return;
        var (_, fault) = ValueText.Read(type, text, asInSheet ? _decimal : '.', asInSheet ? _dates : ["yyyy-MM-dd", .. _dates], 0);
        if (fault is var (_, message)) Wrong(place, message);
    }

    private static bool IsId(Type type) => type.GetInterfaces().Any(of => of.IsGenericType && of.GetGenericTypeDefinition() == typeof(IId<>));

    private List<Condition> Conditions(JsonElement element, string place)
    {
        var conditions = new List<Condition>();
        if (!IsObject(element, place)) return conditions;
        foreach (var property in element.EnumerateObject())
        {
            var where = $"{place}.{property.Name}";
            conditions.Add(property.Value.ValueKind switch
            {
                JsonValueKind.True or JsonValueKind.False => new Condition(property.Name, property.Value.GetBoolean(), new HashSet<string>(), where),
                _ => new Condition(property.Name, null, Texts(property.Value, where).ToHashSet(StringComparer.Ordinal), where),
            });
        }

        return conditions;
    }

    private IReadOnlyDictionary<string, string?>? Words(JsonElement element, string place)
    {
        if (element.ValueKind != JsonValueKind.String) return WordList(element, place);
        return _words.TryGetValue(element.GetString()!, out var words)
            ? words
            : Wrong<IReadOnlyDictionary<string, string?>>(place, $"there is no list '{element.GetString()}' under \"words\".");
    }

    private Dictionary<string, string?> WordList(JsonElement element, string place)
    {
        var words = new Dictionary<string, string?>(StringComparer.Ordinal);
        if (!IsObject(element, place)) return words;
        foreach (var word in element.EnumerateObject())
            words[word.Name.Trim()] = word.Value.ValueKind == JsonValueKind.Null ? null : Text(word.Value, $"{place}.{word.Name}");
        return words;
    }

    private char Sign(JsonElement top, string name, char otherwise, string allowed)
    {
        if (!top.TryGetProperty(name, out var element)) return otherwise;
        if (Text(element, name) is [var sign] && allowed.Contains(sign)) return sign;
        Wrong(name, $"take one of {string.Join(" ", allowed.Select(c => c == '\t' ? "\\t" : c.ToString()))}.");
        return otherwise;
    }

    private string NeededText(JsonElement top, string name, string message)
    {
        var text = top.TryGetProperty(name, out var element) ? Text(element, name) : null;
        if (string.IsNullOrWhiteSpace(text)) Wrong(name, message);
        return text ?? "";
    }

    private Template? Template(JsonElement of, string name, string place) =>
        of.TryGetProperty(name, out var element) && Text(element, place + name) is { } text ? Parse(text, place + name) : null;

    private Template? Parse(string written, string place)
    {
        try
        {
            return ColonyLineage.Ledger.Import.Template.Parse(written);
        }
        catch (FormatException problem)
        {
            return Wrong<Template>(place, problem.Message);
        }
    }

    private string? Text(JsonElement element, string place) => element.ValueKind switch
    {
        JsonValueKind.String => element.GetString(),
        JsonValueKind.Number or JsonValueKind.True or JsonValueKind.False => element.GetRawText(),
        _ => Wrong<string>(place, "a text is expected here."),
    };

    private IEnumerable<string> Texts(JsonElement element, string place) => element.ValueKind == JsonValueKind.Array
        ? [.. element.EnumerateArray().Select((item, i) => Text(item, $"{place}[{i}]")).OfType<string>()]
        : Text(element, place) is { } text ? [text] : [];

    private bool IsObject(JsonElement element, string place)
    {
        if (element.ValueKind == JsonValueKind.Object) return true;
        Wrong(place, "an object { … } is expected here.");
        return false;
    }

    private void Wrong(string place, string message) => _faults.Add(new Refusal(
        ImportRefusals.MappingWrong, place, place.Length == 0 ? $"The mapping: {message}" : $"The mapping at {place}: {message}"));

    private T? Wrong<T>(string place, string message) where T : class
    {
        Wrong(place, message);
        return null;
    }
}
