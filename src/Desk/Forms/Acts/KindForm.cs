using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using ColonyLineage.Entries;
using ColonyLineage.Rules;

namespace ColonyLineage.Desk.Forms.Acts;

/// <summary>
/// The form of one kind of entry, laid out from its fields: a blank for each, under the field's own name, so that every refusal finds its place.
/// </summary>
public sealed class KindForm(Type kind, string title, string about) : ActForm
{
    private static readonly HashSet<string> Common = [.. typeof(Entry).GetProperties().Select(property => property.Name)];

    public override string Name => Kinds.Of(kind).Name;

    public override string Title => title;

    public override string About => about;

    /// <summary>It is about the outfit or a yard, not about a colony.</summary>
    public bool IsOfOutfit => !typeof(ColonyEntry).IsAssignableFrom(kind);

    private IEnumerable<PropertyInfo> Fields => kind.GetProperties().Where(property => property.SetMethod is { IsPublic: true } && !Common.Contains(property.Name)
            && property.GetCustomAttribute<JsonIgnoreAttribute>()?.Condition != JsonIgnoreCondition.Always)
        // The colony comes first, though the kind inherits it.
        .OrderBy(property => property.Name != nameof(ColonyEntry.Colony));

    public override IReadOnlyList<Part> Parts(Bench bench) => [new(null, [.. Fields.SelectMany(field => For(field, bench))])];

    public override object Request(Reading read, Head head)
    {
        var json = new JsonObject
        {
            ["kind"] = Kinds.Of(kind).Stored, ["id"] = OneEntry.IdOf(head).Value.ToString(), ["on"] = head.On.ToString(), ["act"] = head.Act.Value.ToString(), ["order"] = head.FirstOrder, ["by"] = head.By, ["note"] = head.Note,
        };
        foreach (var field in Fields)
        {
            var name = Camel(field.Name);
            if (Value(field, name, read) is { } value) json[name] = value;
            else if (field.IsDefined(typeof(RequiredMemberAttribute)) && !read.IsFaulty) read.Refuse(Refusals.Missing, name, $"{Label(field)} is missing: fill it in.");
        }

        if (read.IsFaulty) return json;
        foreach (var empty in json.Where(field => field.Value is null).Select(field => field.Key).ToList()) json.Remove(empty);
        return new RecordOne(EntryJson.ReadTagged(json));
    }

    private static IEnumerable<Blank> For(PropertyInfo field, Bench bench)
    {
        var (name, label, type) = (Camel(field.Name), Label(field), Plain(field));
        var needed = field.IsDefined(typeof(RequiredMemberAttribute));
        var was = bench.From is { } from && from.GetType() == field.ReflectedType ? field.GetValue(from) : null;
        if (type == typeof(ColonyId))
        {
            yield return Blanks.Colony(bench, name, label, bench.ColonyWritten, needed);
        }
        else if (type == typeof(YardId))
        {
            yield return Blanks.Yard(bench, name) with { Needed = needed };
        }
        else if (type == typeof(QueenId))
        {
            yield return new(name, label) { Needed = needed };
        }
        else if (type == typeof(Quantity))
        {
            yield return Blanks.Number(name, label, needed: needed) with { Initial = Said((was as Quantity)?.Amount) };
            yield return Blanks.Unit(name + ".unit", $"Unit of {label.ToLowerInvariant()}") with { Initial = (was as Quantity)?.Unit };
        }
        else if (type == typeof(Temperature))
        {
            yield return Blanks.Number(name, label, needed: needed) with { Initial = Said((was as Temperature)?.Degrees) };
            yield return new(name + ".scale", "°C or °F", BlankKind.Choice) { Initial = (was as Temperature)?.Scale ?? "C", Choices = [new("C", "°C"), new("F", "°F")] };
        }
        else if (type.IsEnum)
        {
            yield return new(name, label, BlankKind.Choice) { Needed = needed, Initial = was?.ToString(), Choices = [.. Enum.GetValues(type).Cast<Enum>().Select(word => new Choice(word.ToString(), Text.Word(word)))] };
        }
        else if (type == typeof(bool))
        {
            yield return Nullable.GetUnderlyingType(field.PropertyType) is null ? new(name, label, BlankKind.Tick) { Initial = was is true ? "yes" : null } : Blanks.YesOrNo(name, label) with { Initial = was switch { true => "yes", false => "no", _ => null } };
        }
        else if (type == typeof(decimal) || type == typeof(int))
        {
            yield return Blanks.Number(name, label, needed: needed) with { Initial = Said(was) };
        }
        else if (type == typeof(DateOnly))
        {
            yield return new(name, label, BlankKind.Day) { Needed = needed, Initial = Said(was) };
        }
        else if (type == typeof(MonthDay))
        {
            yield return new(name, label) { Needed = needed, Initial = Said(was), Hint = "Month and day, as 10-01" };
        }
        else if (name == "course")
        {
            yield return Blanks.Course(bench.Outfit, name) with { Needed = needed, Initial = Said(was) };
        }
        else
        {
            yield return new(name, label) { Needed = needed, Initial = was is string or null ? was as string : was is IEnumerable several ? string.Join(", ", several.Cast<object>()) : Said(was), Hint = type == typeof(IReadOnlyList<string>) ? "With commas between them" : null };
        }
    }

    private static JsonNode? Value(PropertyInfo field, string name, Reading read)
    {
        var type = Plain(field);
        if (type == typeof(ColonyId)) return Id(read.MaybeColony(name)?.Value, field);
        if (type == typeof(YardId)) return Id(read.Filled[name] is null ? null : read.Yard(name).Value, field);
        if (type == typeof(QueenId)) return Id(read.Queen(name)?.Value, field);
        if (type == typeof(Quantity)) return read.Amount(name) is { } amount ? new JsonObject { ["amount"] = amount.Amount, ["unit"] = amount.Unit } : null;
        if (type == typeof(Temperature)) return read.Number(name) is { } degrees ? new JsonObject { ["degrees"] = degrees, ["scale"] = read.Filled[name + ".scale"] ?? "" } : null;
        if (type.IsEnum) return read.Filled[name] is { } word ? Word(type, word, name, read) : null;
        if (type == typeof(bool)) return Nullable.GetUnderlyingType(field.PropertyType) is null ? (read.Ticked(name) ? true : null) : read.YesNo(name) is { } yes ? JsonValue.Create(yes) : null;
        if (type == typeof(decimal)) return read.Number(name) is { } number ? JsonValue.Create(number) : null;
        if (type == typeof(int)) return read.Whole(name) is { } whole ? JsonValue.Create(whole) : null;
        if (type == typeof(DateOnly)) return read.Day(name) is { } day ? JsonValue.Create(Said(day)) : null;
        if (type == typeof(IReadOnlyList<string>)) return read.Several(name) is { Count: > 0 } several ? new JsonArray([.. several.Select(text => JsonValue.Create(text))]) : null;
        if (read.Text(name) is not { } said) return null;
        if (type == typeof(MonthDay) && !(said.Length == 5 && said[2] == '-' && said.Remove(2, 1).All(char.IsAsciiDigit)))
        {
            read.Refuse(Refusals.NotReadable, name, "Write month and day as 10-01.");
            return null;
        }

        return JsonValue.Create(said);
    }

    // One that is missing is left to the rules, which refuse it at its blank.
    private static JsonNode? Id(Guid? id, PropertyInfo field) => id is { } given ? JsonValue.Create(given.ToString()) : field.IsDefined(typeof(RequiredMemberAttribute)) ? JsonValue.Create(Guid.Empty.ToString()) : null;

    private static JsonNode? Word(Type type, string word, string name, Reading read)
    {
        if (Enum.TryParse(type, word, out var known) && Enum.IsDefined(type, known)) return JsonValue.Create(JsonNamingPolicy.CamelCase.ConvertName(known.ToString()!));
        read.Refuse(Refusals.UnknownWord, name, "Take one of the choices.");
        return null;
    }

    private static Type Plain(PropertyInfo field) => Nullable.GetUnderlyingType(field.PropertyType) ?? field.PropertyType;

    private static string Label(PropertyInfo field) => Text.Word(field.Name) is var words ? char.ToUpperInvariant(words[0]) + words[1..] : "";

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static string? Said(object? value) => value switch { null => null, DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), decimal number => Text.Number(number), _ => Convert.ToString(value, CultureInfo.InvariantCulture) };
}
