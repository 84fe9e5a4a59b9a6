using System.Text.Json;
using System.Text.Json.Serialization;

namespace ColonyLineage.Entries;

/// <summary>Writes an enum as camel-case text and reads nothing else: a number or an unknown word is refused.</summary>
public sealed class WordJson<TEnum> : JsonConverter<TEnum> where TEnum : struct, Enum
{
    private static readonly Dictionary<string, TEnum> ByWord =
        Enum.GetValues<TEnum>().ToDictionary(word => JsonNamingPolicy.CamelCase.ConvertName(word.ToString()), StringComparer.Ordinal);

    private static readonly Dictionary<TEnum, string> Words = ByWord.ToDictionary(pair => pair.Value, pair => pair.Key);

    /// <inheritdoc/>
    public override TEnum Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var said = reader.TokenType == JsonTokenType.String ? reader.GetString()! : null;
        if (said is not null && ByWord.TryGetValue(said, out var word)) return word;
        throw new UnknownWordException($"{(said is null ? "This" : $"'{said}'")} is not a word known here; take one of {string.Join(", ", ByWord.Keys)}.");
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, TEnum value, JsonSerializerOptions options) =>
        writer.WriteStringValue(Words.TryGetValue(value, out var word) ? word : throw new JsonException($"{typeof(TEnum).Name} has no word for {value:D}."));
}

/// <summary>A word in JSON that is not one of those that its field takes. Its own kind, so that it is refused by its own name.</summary>
public sealed class UnknownWordException(string message) : JsonException(message);
