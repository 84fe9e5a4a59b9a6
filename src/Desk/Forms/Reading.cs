using System.Globalization;
using System.Text.RegularExpressions;
using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Desk.Forms;

/// <summary>
/// Reads what a person wrote into what a request takes. What cannot be read is refused at its blank and left out, so that the
/// rules can still find what else is wrong.
/// </summary>
public sealed partial class Reading(Filled filled, Namer namer)
{
    private readonly List<Refusal> _refusals = [];
    private readonly Dictionary<string, IReadOnlyList<int>> _lines = [];

    /// <summary>The form as it was sent.</summary>
    public Filled Filled => filled;

    public string? Text(string name) => filled[name]?.ReplaceLineEndings("\n");

    public bool Ticked(string name) => filled[name] is not null;

    /// <summary>Yes, no, or nothing said.</summary>
    public bool? YesNo(string name) => filled[name] switch { "yes" => true, "no" => false, _ => null };

    public decimal? Number(string name)
    {
        if (filled[name] is not { } text) return null;
        if (text.Length < 20 && NumberText().IsMatch(text) && decimal.TryParse(text.Replace(',', '.'), NumberStyles.Number, CultureInfo.InvariantCulture, out var number)) return number;
        Refuse(Refusals.NotReadable, name, $"'{Short(text)}' is not a number: write it in figures, as in 2 or 2.5.");
        return null;
    }

    public int? Whole(string name)
    {
        if (filled[name] is not { } text) return null;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)) return number;
        Refuse(Refusals.NotReadable, name, $"'{Short(text)}' is not a whole number: write it in figures, as in 12.");
        return null;
    }

    public DateOnly? Day(string name)
    {
        if (filled[name] is not { } text) return null;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)) return day;
        Refuse(Refusals.NotReadable, name, $"'{Short(text)}' is not a day: write it as 2026-09-01.");
        return null;
    }

    /// <summary>The day of the act, with the day after which it happened where that blank is filled.</summary>
    public Occurred On(DateOnly today)
    {
        var on = Day("on");
        if (filled["on"] is null) Refuse(Refusals.Missing, "on", "Say the day on which it was done.");
        var after = Day("after");
        if (after is { } earlier && on is { } day && earlier >= day)
        {
            Refuse(Refusals.DayImpossible, "after", "This day comes before the day on which it was found: mend one of the two, or leave this one out.");
            after = null;
        }

        return new Occurred(on ?? today, after);
    }

    public TWord? Word<TWord>(string name) where TWord : struct, Enum
    {
        if (filled[name] is not { } text) return null;
        if (Enum.TryParse<TWord>(text, out var word) && Enum.IsDefined(word)) return word;
        Refuse(Refusals.UnknownWord, name, $"'{Short(text)}' is none of the choices: take one of them.");
        return null;
    }

    public QueenMark? Mark(string colour, string? tag = null) => Word<MarkColour>(colour) is { } seen ? new QueenMark(seen, tag is null ? null : Text(tag)) : null;

    /// <summary>An amount with its unit, in two blanks: <c>name</c> and <c>name.unit</c>.</summary>
    public Quantity? Amount(string name) => Number(name) is { } amount ? new Quantity(amount, filled[name + ".unit"] ?? "") : null;

    /// <summary>Texts with commas between them.</summary>
    public IReadOnlyList<string> Several(string name) => [.. (Text(name) ?? "").Split([',', ';', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];

    /// <summary>A yard; all zeros where none is said, for the rules to refuse.</summary>
    public YardId Yard(string name) => Named(SubjectKind.Yard, name) is { } id ? new YardId(id) : default;

    /// <summary>A colony; all zeros where none is said, for the rules to refuse.</summary>
    public ColonyId Colony(string name) => MaybeColony(name) ?? default;

    public ColonyId? MaybeColony(string name) => Named(SubjectKind.Colony, name) is { } id ? new ColonyId(id) : null;

    /// <summary>Colonies with commas between them.</summary>
    public IReadOnlyList<ColonyId> Colonies(string name)
    {
        var found = new List<ColonyId>();
        foreach (var text in Several(name))
        {
            if (namer.One(SubjectKind.Colony, text) is { } row) found.Add(new ColonyId(row.Id));
            else Refuse(Refusals.NotFound, name, $"The books know no one colony '{Short(text)}': mend the number.");
        }

        return found;
    }

    /// <summary>A queen whom the books know.</summary>
    public QueenId? Queen(string name) => Named(SubjectKind.Queen, name) is { } id ? new QueenId(id) : null;

    /// <summary>A queen whom the books know by that name; null where she is new.</summary>
    public QueenId? QueenIfKnown(string name) => filled[name] is { } text && namer.Find(SubjectKind.Queen, text, filled["yard"]) is { Count: 1 } found ? new QueenId(found[0].Id) : null;

    /// <summary>A spot in two blanks; null where no number is given, since a yard may stand there beforehand.</summary>
    public Spot? MaybeSpotByNumber(string name) => filled[name + ".number"] is null ? null : Spot(name);

    /// <summary>A spot in two blanks, for the rules to refuse where one is empty.</summary>
    public Spot Spot(string name) => new(Yard(name + ".yard"), Text(name + ".number") ?? "");

    /// <summary>The lines of a table that say something; their places are kept for the refusals.</summary>
    public IReadOnlyList<TRow> Lines<TRow>(string table, IReadOnlyList<string> blanks, Func<string, TRow> read)
    {
        var lines = Enumerable.Range(0, filled.Lines(table, 0)).Where(i => blanks.Any(blank => filled[$"{table}[{i}].{blank}"] is not null)).ToList();
        _lines[table] = lines;
        return [.. lines.Select(i => read($"{table}[{i}]."))];
    }

    /// <summary>What could not be read, with what the rules refuse, each at its blank.</summary>
    public IReadOnlyList<Refusal> With(IEnumerable<Refusal> ofRules)
    {
        var already = _refusals.Select(refusal => refusal.Field).ToHashSet();
        return [.. _refusals.Concat(ofRules.Select(InForm).Where(refusal => !already.Contains(refusal.Field))).Distinct()];
    }

    /// <summary>Something could not be read.</summary>
    public bool IsFaulty => _refusals.Count > 0;

    public void Refuse(string refusal, string name, string message) => _refusals.Add(new Refusal(refusal, name, message));

    private Refusal InForm(Refusal refusal)
    {
        if (LinePath().Match(refusal.Field) is not { Success: true } match || !_lines.TryGetValue(match.Groups[1].Value, out var lines)) return refusal;
        var line = int.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture);
        return line < lines.Count ? refusal with { Field = $"{match.Groups[1].Value}[{lines[line]}]{refusal.Field[match.Length..]}" } : refusal;
    }

    private Guid? Named(SubjectKind kind, string name)
    {
        if (filled[name] is not { } text) return null;
        var found = namer.Find(kind, text, filled["yard"]);
        var what = kind.ToString().ToLowerInvariant();
        if (found.Count == 0) Refuse(Refusals.NotFound, name, $"The books know no {what} '{Short(text)}': mend the name, or record first how it came.");
        if (found.Count > 1) Refuse(Refusals.NotFound, name, $"{found.Count} {(kind == SubjectKind.Colony ? "colonies" : what + "s")} bear this name: open the page of the right one and record from there.");
        return found.Count == 1 ? found[0].Id : null;
    }

    private static string Short(string text) => text.Length > 40 ? text[..40] + "…" : text;

    [GeneratedRegex(@"^-?\d+([.,]\d+)?$")]
    private static partial Regex NumberText();

    [GeneratedRegex(@"^(\w+)\[(\d{1,6})\]")]
    private static partial Regex LinePath();
}
