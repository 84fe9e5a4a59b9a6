using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Server.Answers;

namespace ColonyLineage.Server.Api;

/// <summary>Reads what an address or a command line asks for.</summary>
public static class Query
{
    private const int Longest = 200;

    // What the desk's pages keep in the same address for themselves, and a table of all rows has no use for.
    private static readonly HashSet<string> OfPages = ["page", "sort", "view", "show", "truth", "ended", "format"];

    /// <summary>Reads named values.</summary>
    /// <param name="question">The question asked.</param>
    /// <param name="given">The names and values; blank ones are as good as missing.</param>
    /// <exception cref="RefusedException">A value cannot be read, or the question does not take it.</exception>
    public static Asked Read(string question, IEnumerable<KeyValuePair<string, string?>> given)
    {
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        var takes = Answering.ParametersOf(question);
        foreach (var (name, value) in AsData(question, given.Where(pair => !string.IsNullOrWhiteSpace(pair.Value)).ToList()))
        {
            if (OfPages.Contains(name)) continue;
            if (!takes.Contains(name)) throw Refuse(ServerRefusals.UnknownParameter, name, $"The question {question} does not take this. It takes {string.Join(", ", takes)}.");
            if (value!.Length > Longest) throw Refuse(Refusals.TooLong, name, $"At most {Longest} characters.");
            if (value.Any(char.IsControl) || value.Any(char.IsSurrogate) && !IsText(value)) throw Refuse(Refusals.NotReadable, name, "Take out the control characters.");
            if (!values.TryAdd(name, value.Trim())) throw Refuse(ServerRefusals.Malformed, name, "Give it once.");
        }

        return new Asked
        {
            Ask = new Ask
            {
                Yard = values.GetValueOrDefault("yard"), Spot = values.GetValueOrDefault("spot"), Colony = values.GetValueOrDefault("colony"), Queen = values.GetValueOrDefault("queen"),
                Season = Whole("season", 1900, 2999), AsOf = Day("as-of"), KnownAt = Instant("known-at"),
            },
            SeasonsBack = Whole("seasons-back", 0, 100), Of = Whole("of", 1900, 2999), Course = values.GetValueOrDefault("course"), State = values.GetValueOrDefault("state"),
            Conflict = values.GetValueOrDefault("conflict"), How = values.GetValueOrDefault("how"), Few = Flag("few"), Sure = values.GetValueOrDefault("sure"),
            DescendantsOf = values.GetValueOrDefault("descendants-of"), AncestorsOf = values.GetValueOrDefault("ancestors-of"),
            ContactsOf = values.GetValueOrDefault("contacts-of"), Since = Day("since"), Living = Flag("living"),
            Kind = values.GetValueOrDefault("kind"), Act = values.GetValueOrDefault("act"), Pooled = Flag("pooled"), Rounds = Flag("rounds"), Groups = Flag("groups"), On = Day("on"), Round = values.GetValueOrDefault("round"), Work = values.GetValueOrDefault("work"),
            Period = values.GetValueOrDefault("period"), Winter = Whole("winter", 1900, 2999), By = values.GetValueOrDefault("by"), Trait = values.GetValueOrDefault("trait"),
            Pedigree = Flag("pedigree"), With = values.GetValueOrDefault("with"), Drones = values.GetValueOrDefault("drones"), Effective = Number("effective", 1, 60), Alleles = Number("alleles", 2, 100), Counted = values.GetValueOrDefault("counted"), CountBy = values.GetValueOrDefault("count-by"),
        };

        int? Whole(string name, int least, int most)
        {
            if (!values.TryGetValue(name, out var text)) return null;
            if (!int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)) throw Refuse(Refusals.NotReadable, name, $"'{text}' is not a whole number.");
            return number >= least && number <= most ? number : throw Refuse(Refusals.OutOfRange, name, $"From {least} to {most}; this is {number}.");
        }

        decimal? Number(string name, decimal least, decimal most)
        {
            if (!values.TryGetValue(name, out var text)) return null;
            if (!decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)) throw Refuse(Refusals.NotReadable, name, $"'{text}' is not a number.");
            return number >= least && number <= most ? number : throw Refuse(Refusals.OutOfRange, name, FormattableString.Invariant($"From {least} to {most}; this is {number}."));
        }

        bool Flag(string name) => values.TryGetValue(name, out var text) && text.ToLowerInvariant() switch
        {
            "true" or "yes" or "1" or "on" => true,
            "false" or "no" or "0" => false,
            _ => throw Refuse(Refusals.UnknownWord, name, "Take one of yes, no."),
        };

        DateOnly? Day(string name) => !values.TryGetValue(name, out var text) ? null
            : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day.Year is >= 1900 and < 3000 ? day
            : throw Refuse(Refusals.NotReadable, name, $"'{text}' is not a day. Write it as 2026-09-01.");

        DateTimeOffset? Instant(string name)
        {
            if (!values.TryGetValue(name, out var text)) return null;
            // A day alone means all of it.
            if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day.Year is >= 1900 and < 3000)
                return new DateTimeOffset(day, new TimeOnly(23, 59, 59), TimeSpan.Zero);
            return DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var instant) && instant.Year is >= 1900 and < 3000
                ? instant
                : throw Refuse(Refusals.NotReadable, name, $"'{text}' is not an instant. Write it as 2026-09-01T18:00Z, or a day alone for all of it.");
        }
    }

    /// <summary>The desk's pages ask in words of a person; the same address gives the same as data.</summary>
    private static IEnumerable<KeyValuePair<string, string?>> AsData(string question, List<KeyValuePair<string, string?>> given)
    {
        var up = given.Any(pair => pair is { Key: "way", Value: "up" });
        var all = given.Any(pair => pair is { Key: "all", Value: "yes" });
        var since = given.Any(pair => pair.Key == "since");
        foreach (var (name, value) in given)
        {
            switch (question, name)
            {
                case ("queens-by-age", "back"):
                    yield return new("seasons-back", value);
                    break;
                case ("conflicts", "state") when value == "all":
                case ("lineage", "way" or "all"):
                // The lives are the same whatever is drawn of them; what is drawn has names of its own: wintering, paradox, how-long.
                case ("losses", "period" or "winter" or "by" or "counted"):
                    break;
                case ("lineage", "queen"):
                    yield return new(up ? "ancestors-of" : "descendants-of", value);
                    if (!up && !all) yield return new("living", "yes");
                    break;
                case ("lineage", "colony") when since:
                    yield return new("contacts-of", value);
                    break;
                default:
                    yield return new(name, value);
                    break;
            }
        }
    }

    private static bool IsText(string value) => System.Text.Encoding.UTF8.GetString(System.Text.Encoding.UTF8.GetBytes(value)) == value;

    private static RefusedException Refuse(string name, string field, string message) => new(new Refusal(name, field, message));
}
