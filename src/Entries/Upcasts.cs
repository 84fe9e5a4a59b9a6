using System.Text.Json;
using System.Text.Json.Nodes;

namespace ColonyLineage.Entries;

/// <summary>Lifts stored entries of older versions to the kinds of today. A version, once stored, stays readable for ever.</summary>
public static class Upcasts
{
    /// <summary>Every older version, with the type that it is lifted to.</summary>
    public static readonly IReadOnlyDictionary<string, Type> All = new Dictionary<string, Type>(StringComparer.Ordinal)
    {
        ["weighed.v1"] = typeof(Weighed),
    };

    /// <summary>The entry of today, or null where no older version has that name.</summary>
    public static Entry? Lift(string stored, ReadOnlySpan<byte> json) => stored switch
    {
        "weighed.v1" => WeighedInPounds(json),
        _ => null,
    };

    /// <summary>Version 1 had <c>pounds</c> (gross) and <c>tarePounds</c>; version 2 keeps the unit.</summary>
    private static Weighed WeighedInPounds(ReadOnlySpan<byte> json)
    {
        var fields = JsonNode.Parse(json) as JsonObject ?? throw new JsonException("An object was expected.");
        Lift("pounds", "gross");
        Lift("tarePounds", "tare");
        return fields.Deserialize(EntryJsonContext.Default.Weighed)!;

        void Lift(string was, string now)
        {
            if (!fields.Remove(was, out var pounds) || pounds is null) return;
            fields[now] = new JsonObject { ["amount"] = pounds.GetValue<decimal>(), ["unit"] = "lb" };
        }
    }
}
