using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ColonyLineage.Entries;

namespace ColonyLineage.Simulation;

/// <summary>A history as JSON that can be run again, and as lines that a person can read.</summary>
public static partial class HistoryText
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    /// <summary>An array of <c>{"at": instant, "entry": {…}}</c>, the entries as devices send them.</summary>
    public static string Json(IReadOnlyList<Recorded> history) => new JsonArray([.. history.Select(recorded => new JsonObject
    {
        ["at"] = recorded.At.ToString("O"),
        ["entry"] = EntryJson.WriteTagged(recorded.Entry),
    })]).ToJsonString(Indented);

    /// <summary>Reads what <see cref="Json"/> wrote.</summary>
    public static IReadOnlyList<Recorded> Read(string json) =>
        [.. JsonNode.Parse(json)!.AsArray().Select(node => new Recorded(EntryJson.ReadTagged(node!["entry"]!.AsObject()), DateTimeOffset.Parse(node["at"]!.GetValue<string>())))];

    /// <summary>One line for each entry, in the order in which they were recorded, with short names in place of ids.</summary>
    public static string Lines(IReadOnlyList<Recorded> history)
    {
        var labels = Labels(history);
        return string.Join('\n', history.Select(recorded => Line(recorded, labels)));
    }

    /// <summary>Puts the short names of <see cref="Lines"/> into another text.</summary>
    public static string Shorten(string text, IReadOnlyList<Recorded> history) => Shorten(text, Labels(history));

    private static string Line(Recorded recorded, Dictionary<string, string> labels)
    {
        var fields = EntryJson.WriteTagged(recorded.Entry);
        foreach (var said in new[] { "kind", "id", "on", "act", "order", "stream", "concerns" }) fields.Remove(said);
        var entry = recorded.Entry;
        return Shorten($"{labels[entry.Id.ToString()],-4} {entry.On,-21} {entry.Order} {Kinds.Of(entry).Name,-19} {fields.ToJsonString()}  recorded {recorded.At:yyyy-MM-dd HH:mm}", labels);
    }

    private static string Shorten(string text, Dictionary<string, string> labels) =>
        Id().Replace(text, id => labels.TryGetValue(id.Value, out var label) ? label : id.Value[..4]);

    private static Dictionary<string, string> Labels(IReadOnlyList<Recorded> history)
    {
        var labels = new Dictionary<string, string>();
        foreach (var (entry, _) in history) labels.TryAdd(entry.Id.ToString(), $"e{labels.Count(label => label.Value[0] == 'e') + 1}");
        foreach (var subject in history.SelectMany(recorded => recorded.Entry.Concerns))
        {
            var letter = char.ToLowerInvariant(subject.Kind.ToString()[0]);
            labels.TryAdd(subject.Id.ToString(), $"{letter}{labels.Count(label => label.Value[0] == letter) + 1}");
        }

        return labels;
    }

    [GeneratedRegex("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}")]
    private static partial Regex Id();
}
