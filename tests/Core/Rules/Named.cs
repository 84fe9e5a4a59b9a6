using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;

namespace ColonyLineage.Core.Tests.Rules;

/// <summary>Ids by invented names, and entries told as a line, so that a case reads as facts in, entries out.</summary>
internal static class Named
{
    private static readonly Guid Space = new("5ca1ab1e-0000-8000-8000-000000000003");
    private static readonly ConcurrentDictionary<string, string> Names = new();

    // What every entry has; a case names it only where it is about it.
    private static readonly HashSet<string> Frame = ["kind", "id", "on", "act", "order", "visit", "by", "note"];

    public static ColonyId Colony(string name) => new(Id("colony", name));

    public static QueenId Queen(string name) => new(Id("queen", name));

    public static YardId Yard(string name) => new(Id("yard", name));

    public static ActId Act(string name) => new(Id("act", name));

    public static EntryId Entry(string name) => new(Id("entry", name));

    public static Spot Spot(string yard, string number) => new(Yard(yard), number);

    public static DateOnly Day(string day) => DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The kind and the fields of its own, for instance <c>queen-killed colony=12 queen=Q12</c>.</summary>
    public static string Tell(Entry entry)
    {
        var fields = EntryJson.WriteTagged(entry).Where(field => !Frame.Contains(field.Key) && field.Value is not null)
            .OrderBy(field => field.Key == (entry is QueenEntry ? "queen" : "colony") ? 0 : 1);
        return $"{Kinds.Of(entry).Name} {string.Join(' ', fields.Select(field => $"{field.Key}={Text(field.Value!)}"))}";
    }

    private static string Text(JsonNode value) => value switch
    {
        JsonObject spot when spot.ContainsKey("yard") => $"{Text(spot["yard"]!)}/{spot["number"]}",
        JsonArray list => string.Join('+', list.Select(item => Text(item!))),
        JsonObject fields => string.Join(',', fields.Select(field => Text(field.Value!))),
        _ => Names.GetValueOrDefault(value.ToString(), value.ToString()),
    };

    private static Guid Id(string what, string name)
    {
        var id = NamedId.Of(Space, $"{what} {name}");
        Names[id.ToString()] = name;
        return id;
    }
}
