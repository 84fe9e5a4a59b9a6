using System.Globalization;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>Turns a text into the JSON value of a field. Ids are not made here: see <see cref="RowReading"/>.</summary>
internal static class ValueText
{
    /// <summary>A day of a two-digit year lies in 2000 to 2099.</summary>
    private static readonly CultureInfo Culture = TwentyFirstCentury();

    /// <summary>The value, or the refusal's name and message. A constant is written as JSON writes it, whatever the sheet does.</summary>
    public static (JsonNode? Value, (string Name, string Message)? Fault) Read(Type type, string text, char decimals, string[] dates, int days)
    {
        if (type == typeof(string)) return (JsonValue.Create(text.Replace("\r\n", "\n").Replace('\r', '\n')), null);
        if (type == typeof(int) || type == typeof(decimal)) return Number(type, text, decimals);
        if (type == typeof(bool)) return OneOf(text, ["true", "false"], value => JsonValue.Create(value == "true"));
        if (type.IsEnum) return OneOf(text, [.. Enum.GetNames(type).Select(Camel)], value => JsonValue.Create(value));
        if (type == typeof(DateOnly) || type == typeof(Occurred))
        {
            var (day, fault) = Day(text, dates, days);
            return fault is null ? (JsonValue.Create(new Occurred(day).ToString()), null) : (null, fault);
        }

        throw new NotSupportedException($"No text is read as {type}.");
    }

    /// <summary>The day in one of the formats, so many days later.</summary>
    public static (DateOnly Day, (string Name, string Message)? Fault) Day(string text, string[] formats, int days)
    {
        if (!DateOnly.TryParseExact(text, formats, Culture, DateTimeStyles.None, out var day))
            return (default, (ImportRefusals.NotADay, $"'{text}' is not a day written {string.Join(" or ", formats)}. Mend it, add its format to \"dates\", or translate it with \"words\"."));
        return (day.AddDays(days), null);
    }

    private static (JsonNode?, (string, string)?) Number(Type type, string text, char decimals)
    {
        var format = (NumberFormatInfo)CultureInfo.InvariantCulture.NumberFormat.Clone();
        format.NumberDecimalSeparator = decimals.ToString();
        if (!decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, format, out var number))
            return (null, (ImportRefusals.NotANumber, $"'{text}' is not a number (decimal sign '{decimals}', no other signs; a formula is not worked out)."));
        if (type == typeof(decimal)) return (JsonValue.Create(number), null);
        if (number != decimal.Truncate(number)) return (null, (ImportRefusals.NotANumber, $"'{text}' is not a whole number."));
        return Math.Abs(number) > int.MaxValue
            ? (null, (Refusals.OutOfRange, $"'{text}' is too large a number."))
            : (JsonValue.Create((int)number), null);
    }

    private static (JsonNode?, (string, string)?) OneOf(string text, string[] words, Func<string, JsonNode> value) => words.Contains(text)
        ? (value(text), null)
        : (null, (Refusals.UnknownWord, $"'{text}' is not one of {string.Join(", ", words)}. Translate it with \"words\" in the mapping."));

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static CultureInfo TwentyFirstCentury()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.DateTimeFormat.Calendar = new GregorianCalendar { TwoDigitYearMax = 2099 };
        return CultureInfo.ReadOnly(culture);
    }
}
