using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ColonyLineage.Entries;

/// <summary>
/// When something happened in the yard: a day, or an interval that is open at its start and closed at its end,
/// (<see cref="After"/>, <see cref="Day"/>], for what was only found later. Stored as an ISO 8601 day
/// (<c>2026-07-02</c>) or interval (<c>2026-05-10/2026-07-02</c>).
/// </summary>
/// <remarks>An entry takes its place in the order of things on <see cref="Day"/>, the day it was certain.</remarks>
[JsonConverter(typeof(OccurredJson))]
public readonly record struct Occurred(DateOnly Day, DateOnly? After = null)
{
    /// <summary>The first day on which it can have happened.</summary>
    [JsonIgnore]
    public DateOnly Earliest => After is { } after ? after.AddDays(1) : Day;

    /// <summary>Whether the day itself is known.</summary>
    [JsonIgnore]
    public bool IsExact => Earliest == Day;

    /// <summary>A day known as such.</summary>
    public static implicit operator Occurred(DateOnly day) => new(day);

    /// <summary>The stored text: a day, or two days with a slash between them.</summary>
    public override string ToString() => After is { } after ? $"{Text(after)}/{Text(Day)}" : Text(Day);

    /// <summary>Reads the stored text; false where it is neither a day nor an interval that runs forward.</summary>
    public static bool TryParse(string text, out Occurred occurred)
    {
        occurred = default;
        var slash = text.IndexOf('/');
        if (!TryDay(slash < 0 ? text : text[(slash + 1)..], out var day)) return false;
        if (slash < 0)
        {
            occurred = new Occurred(day);
            return true;
        }

        if (!TryDay(text[..slash], out var after) || after >= day) return false;
        occurred = new Occurred(day, after);
        return true;
    }

    private static bool TryDay(string text, out DateOnly day) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out day);

    private static string Text(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

/// <summary>Writes <see cref="Occurred"/> as its text.</summary>
public sealed class OccurredJson : JsonConverter<Occurred>
{
    /// <inheritdoc/>
    public override Occurred Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.String && Occurred.TryParse(reader.GetString()!, out var occurred)
            ? occurred
            : throw new JsonException("A day is written 2026-07-02, an interval 2026-05-10/2026-07-02 with the earlier day first.");

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Occurred value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());
}
