using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Unicode;
using ColonyLineage.Entries;

namespace ColonyLineage.Server.Api;

/// <summary>
/// JSON from outside, read so that nothing in it can mean two things or break something later: no doubled names, no comments, at most
/// 32 levels, texts that are text, and no nulls in lists, where nothing could be meant by them.
/// </summary>
public static class StrictJson
{
    private const int Deepest = 32;

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        AllowDuplicateProperties = false,
        MaxDepth = Deepest,
    };

    /// <summary>Parses a whole text.</summary>
    /// <exception cref="RefusedException">It is no such JSON.</exception>
    public static JsonNode Parse(ReadOnlySpan<byte> utf8)
    {
        // Some editors put a byte order mark before everything.
        if (utf8.StartsWith("\uFEFF"u8)) utf8 = utf8[3..];
        try
        {
            if (!Utf8.IsValid(utf8)) throw new JsonException("It is not UTF-8.");
            Scan(utf8);
            return JsonNode.Parse(utf8, documentOptions: new JsonDocumentOptions { MaxDepth = Deepest, AllowDuplicateProperties = false })
                ?? throw new JsonException("It is null.");
        }
        catch (Exception problem) when (problem is JsonException or InvalidOperationException)
        {
            throw new RefusedException(new Refusal(ServerRefusals.Malformed, "", $"This is not JSON as it is wanted here. {FirstLine(problem)}"));
        }
    }

    /// <summary>Reads a request of a known shape.</summary>
    /// <exception cref="RefusedException">It is not of that shape.</exception>
    public static object Read(JsonNode node, Type type)
    {
        try
        {
            return node.Deserialize(type, Options)!;
        }
        catch (JsonException problem)
        {
            var field = (problem.Path ?? "").TrimStart('$', '.');
            throw new RefusedException(problem is UnknownWordException
                ? new Refusal(Refusals.UnknownWord, field, problem.Message)
                : new Refusal(Refusals.NotReadable, field, $"This cannot be read: {FirstLine(problem)}"));
        }
        catch (Exception problem) when (problem is FormatException or OverflowException or InvalidOperationException or ArgumentException)
        {
            throw new RefusedException(new Refusal(Refusals.NotReadable, "", "This cannot be read: a value is not of its kind."));
        }
    }

    private static void Scan(ReadOnlySpan<byte> utf8)
    {
        var reader = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = Deepest });
        // One bit a level: set where the level is a list.
        var lists = 0UL;
        while (reader.Read())
        {
            switch (reader.TokenType)
            {
                case JsonTokenType.StartArray: lists = (lists << 1) | 1; break;
                case JsonTokenType.StartObject: lists <<= 1; break;
                case JsonTokenType.EndArray or JsonTokenType.EndObject: lists >>= 1; break;
                case JsonTokenType.Null when (lists & 1) == 1: throw new JsonException("A list holds a null.");
                case JsonTokenType.String or JsonTokenType.PropertyName: _ = reader.GetString(); break;
            }
        }
    }

    // The library tells paths and places in further lines that say the same again.
    private static string FirstLine(Exception problem) => problem.Message.Split('\n')[0].TrimEnd('\r');
}
