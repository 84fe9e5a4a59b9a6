using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ColonyLineage.Entries;

/// <summary>A day of every year, written <c>10-01</c>: month, then day. The 29th of February is the 28th where there is none.</summary>
[JsonConverter(typeof(MonthDayJson))]
public readonly record struct MonthDay(int Month, int Day)
{
    /// <summary>Whether there is such a day in any year: the 31st of February is in none.</summary>
    [JsonIgnore]
    public bool Exists => Month is >= 1 and <= 12 && Day >= 1 && Day <= DateTime.DaysInMonth(2024, Month);

    /// <summary>The day in a year.</summary>
    public DateOnly In(int year) => new(year, Month, Math.Min(Day, DateTime.DaysInMonth(year, Month)));

    /// <summary>The first such day on or after another.</summary>
    public DateOnly From(DateOnly day) => In(day.Year) is var same && same >= day ? same : In(day.Year + 1);

    /// <summary>The written form.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Month:00}-{Day:00}");
}

/// <summary>Writes <see cref="MonthDay"/> as its text. A day that does not exist is read all the same, to be refused at its field.</summary>
public sealed class MonthDayJson : JsonConverter<MonthDay>
{
    /// <inheritdoc/>
    public override MonthDay Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.String && reader.GetString() is { Length: 5 } text && text[2] == '-'
            && int.TryParse(text.AsSpan(0, 2), NumberStyles.None, CultureInfo.InvariantCulture, out var month)
            && int.TryParse(text.AsSpan(3), NumberStyles.None, CultureInfo.InvariantCulture, out var day))
            return new MonthDay(month, day);
        throw new JsonException("A day of the year is written 10-01: month, then day.");
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, MonthDay value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());
}
