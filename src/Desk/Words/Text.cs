using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Desk;

/// <summary>How days, numbers and fixed words are written on a page.</summary>
public static class Text
{
    /// <summary>1 Sep 2026.</summary>
    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>2026-09-01; null where there is none.</summary>
    public static string? Iso(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>1 Sep 2026, 18:05 UTC.</summary>
    public static string Moment(DateTimeOffset at) => at.UtcDateTime.ToString("d MMM yyyy, HH:mm 'UTC'", CultureInfo.InvariantCulture);

    /// <summary>A day or an interval of days.</summary>
    public static string When(Occurred on) => on.IsExact ? Day(on.Day) : $"between {Day(on.Earliest)} and {Day(on.Day)}";

    /// <summary>A day or an interval of days, from the first and last day possible.</summary>
    public static string When(DateOnly? from, DateOnly? to) => (from, to) switch
    {
        (null, null) => "not known",
        ({ } first, { } last) when first != last => $"between {Day(first)} and {Day(last)}",
        _ => Day((to ?? from)!.Value),
    };

    /// <summary>1, 1.5, 0.25.</summary>
    public static string Number(decimal number) => number.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>'1 colony', '3 colonies'.</summary>
    public static string Count(int count, string one, string many) => $"{count.ToString(CultureInfo.InvariantCulture)} {(count == 1 ? one : many)}";

    /// <summary>The first letter large, and a full stop at the end.</summary>
    public static string Sentence(string text) => text.Length == 0 ? "" : $"{char.ToUpperInvariant(text[0])}{text[1..]}{(text[^1] is '.' or '?' or '!' ? "" : ".")}";

    /// <summary>A season of birth: '2025', '2025 or 2026'; 'not known' where nothing tells.</summary>
    public static string Season(int? from, int? to) => (from, to) switch
    {
        (null, _) or (_, null) => "not known",
        ({ } first, { } last) when first == last => first.ToString(CultureInfo.InvariantCulture),
        ({ } first, { } last) when last == first + 1 => $"{first} or {last}",
        ({ } first, { } last) => $"{first} to {last}",
    };

    /// <summary>A fixed word as people write it: <c>NucBox</c> and <c>nucBox</c> are 'nuc box'.</summary>
    public static string Word(string word)
    {
        var text = new System.Text.StringBuilder(word.Length + 4);
        foreach (var letter in word)
        {
            if (char.IsUpper(letter) && text.Length > 0) text.Append(' ');
            text.Append(letter is '-' or '_' ? ' ' : char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }

    /// <summary>A fixed word as people write it.</summary>
    public static string Word(Enum word) => Word(word.ToString());

    /// <summary>How a queen came to reign.</summary>
    public static string Came(HowCame came) => came switch
    {
        HowCame.WithColony => "came with the colony",
        HowCame.Given => "given",
        HowCame.Cell => "from a cell that was given",
        HowCame.Supersedure => "raised by the bees in place of the old one",
        HowCame.Combined => "came with a colony combined into this one",
        _ => "found laying, nobody recorded how she came",
    };

    /// <summary>How a reign ended.</summary>
    public static string Went(HowWent went) => went switch
    {
        HowWent.Killed => "killed",
        HowWent.TakenOut => "taken out alive",
        HowWent.Superseded => "superseded",
        HowWent.Lost => "lost",
        HowWent.Replaced => "another was given, nothing said of her",
        HowWent.NotKept => "not kept when the colonies were combined",
        _ => "her colony ended",
    };
}
