using System.Text.Json;
using System.Text.Json.Nodes;

namespace ColonyLineage.Entries;

/// <summary>
/// The stored form of entries: JSON in camel case, without the kind, which stands beside it. Unknown fields are refused: a
/// newer device's field would otherwise be lost in silence.
/// </summary>
public static class EntryJson
{
    /// <summary>The JSON of an entry, without its kind.</summary>
    public static string Write(Entry entry) => JsonSerializer.Serialize(entry, Kinds.TypeInfo(Kinds.Of(entry).Stored)!);

    /// <summary>The JSON of an entry as UTF-8, without its kind.</summary>
    public static byte[] WriteUtf8(Entry entry) => JsonSerializer.SerializeToUtf8Bytes(entry, Kinds.TypeInfo(Kinds.Of(entry).Stored)!);

    /// <summary>Reads what was stored under a kind's name and version, older versions included.</summary>
    /// <exception cref="RefusedException">The kind is unknown, or the JSON is not of that kind.</exception>
    public static Entry Read(string stored, ReadOnlySpan<byte> json)
    {
        try
        {
            if (Kinds.TypeInfo(stored) is { } info) return (Entry)JsonSerializer.Deserialize(json, info)!;
            return Upcasts.Lift(stored, json)
                ?? throw new RefusedException(new Refusal(Refusals.UnknownKind, "kind", $"'{stored}' is not a kind of entry known here. Update this program, or mend the kind."));
        }
        catch (JsonException problem)
        {
            throw Unreadable(problem);
        }
    }

    /// <summary>Reads an entry in the form that devices send: its JSON with a <c>kind</c> beside the fields.</summary>
    /// <exception cref="RefusedException">The kind is missing or unknown, or the JSON is not of that kind.</exception>
    public static Entry ReadTagged(JsonObject tagged)
    {
        if (tagged["kind"] is not JsonValue value || !value.TryGetValue(out string? stored))
            throw new RefusedException(new Refusal(Refusals.UnknownKind, "kind", "Say the kind of entry, for instance washed.v1."));
        var fields = new JsonObject(tagged.Where(field => field.Key != "kind").Select(field => KeyValuePair.Create(field.Key, field.Value?.DeepClone())));
        return Read(stored, JsonSerializer.SerializeToUtf8Bytes(fields, EntryJsonContext.Default.JsonObject));
    }

    /// <summary>The form that devices send: the fields with the <c>kind</c> before them.</summary>
    public static JsonObject WriteTagged(Entry entry)
    {
        var fields = (JsonObject)JsonNode.Parse(WriteUtf8(entry))!;
        var tagged = new JsonObject { ["kind"] = Kinds.Of(entry).Stored };
        foreach (var (name, field) in fields.ToList())
        {
            fields.Remove(name);
            tagged[name] = field;
        }

        return tagged;
    }

    private static RefusedException Unreadable(JsonException problem)
    {
        var field = (problem.Path ?? "").TrimStart('$', '.');
        return new RefusedException(problem is UnknownWordException
            ? new Refusal(Refusals.UnknownWord, field, problem.Message)
            : new Refusal(Refusals.NotReadable, field, $"This is not the JSON of such an entry: {problem.Message}"));
    }
}

/// <summary>Something was refused, for the reasons it carries.</summary>
public sealed class RefusedException(IReadOnlyList<Refusal> refusals) : Exception(string.Join(" ", refusals.Select(refusal => refusal.Message)))
{
    /// <summary>One reason alone.</summary>
    public RefusedException(Refusal refusal) : this([refusal])
    {
    }

    /// <summary>Why, at each field that is wrong.</summary>
    public IReadOnlyList<Refusal> Refusals { get; } = refusals;
}
