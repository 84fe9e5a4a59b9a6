using System.Text;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>An entry that a row gives, and what it mentions.</summary>
internal sealed record Made(EntryMap Map, Entry Entry, IReadOnlyList<(Mention Thing, string Column)> Mentions)
{
    /// <summary>Its content without the day, to compare what several rows say of the same thing.</summary>
    public string SaysOnce => EntryJson.Write(Entry with { On = new Occurred(DateOnly.MinValue) });
}

/// <summary>Makes one entry out of a row.</summary>
internal static class RowEntries
{
    /// <summary>The entry, or null where the row says nothing of it or a cell of it is bad (and noted).</summary>
    public static Made? Make(EntryMap map, RowReading row, Names names, DateOnly today)
    {
        if (row.Holds(map.When) is not true) return null;
        var once = map.Once is null ? Value<string>.Given(row.Key) : row.Text(map.Once);
        if (once.Found is not Found.Given) return null;

        var day = row.Day(map.On);
        var after = row.Day(map.After);
        var mentions = new List<(Mention Thing, string Column)>();
        var fields = map.Fields.Select(field => (Field: field, Value: row.Field(field, day.Of, mentions))).ToList();
        if (day.Found is Found.Bad || after.Found is Found.Bad || fields.Any(field => field.Value.Found is Found.Bad)) return null;

        var telling = map.Telling.Select(field => field.Field.Name).ToHashSet();
        var told = fields.Any(field => telling.Contains(field.Field.Field.Name) && field.Value.Found is Found.Given);
        var missing = fields.Where(field => field.Field.Field.Required && field.Value.Found is Found.Empty).ToList();
        if (!told && (day.Found is Found.Empty || missing.Exists(field => telling.Contains(field.Field.Field.Name)))) return null;

        if (day.Found is Found.Empty) Missing(row, map, "the day", map.On.Select(choice => choice.Text.Column).FirstOrDefault(""));
        foreach (var (field, _) in missing) Missing(row, map, field.Field.Name, field.Column);
        if (day.Found is Found.Empty || missing.Count > 0) return null;

        var on = new Occurred(day.Of, after.Found is Found.Given ? after.Of : null);
        var json = new JsonObject
        {
            ["id"] = names.Entry(map.Label, once.Of!, map.Once is not null).Value,
            ["on"] = on.ToString(),
            ["act"] = names.Act.Value,
            ["order"] = map.Order,
        };
        foreach (var (field, value) in fields)
            if (value.Found is Found.Given) json[field.Field.Name] = value.Of;

        var entry = EntryJson.Read(map.Kind.Stored, Encoding.UTF8.GetBytes(json.ToJsonString()));
        var faults = entry.Check();
        if (!told && faults is [{ Name: Refusals.SaysNothing }]) return null;
        foreach (var fault in faults) row.Note(ColumnOf(map, fault.Field), fault.Name, $"{map.Label}: {fault.Message}");
        if (on.Day > today) row.Note(ColumnOf(map, "on"), Refusals.DayInFuture, $"{map.Label}: {on.Day:yyyy-MM-dd} lies after today, {today:yyyy-MM-dd}.");
        return faults.Count == 0 && on.Day <= today ? new Made(map, entry, mentions) : null;
    }

    private static void Missing(RowReading row, EntryMap map, string what, string column) => row.Note(
        column, Refusals.Missing, $"{map.Label}: {what} is empty, and other cells of this entry are not. Fill it, or say \"when\" in the mapping at {map.Place}.");

    private static string ColumnOf(EntryMap map, string field) => field == "on"
        ? map.On.Select(choice => choice.Text.Column).FirstOrDefault("")
        : map.Fields.FirstOrDefault(mapped => mapped.Field.Name == field)?.Column ?? "";
}
