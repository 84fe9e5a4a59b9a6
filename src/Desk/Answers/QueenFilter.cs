using ColonyLineage.Projections.QueensByAge;

namespace ColonyLineage.Desk;

/// <summary>The further filters of 'queens by age', the same for its page, its CSV and its JSON.</summary>
/// <param name="Back">Born this many seasons back, or more; null for all.</param>
/// <param name="Of">Of this season of birth, certainly or possibly; null for all.</param>
/// <param name="Few">Only where the bees are few.</param>
/// <param name="Sure"><c>certain</c>, <c>possible</c> or <c>unknown</c>; null for all.</param>
public sealed record QueenFilter(int? Back, int? Of, bool Few, string? Sure)
{
    /// <summary>The filter that an address asks for.</summary>
    public static QueenFilter From(Func<string, string?> query) => new(
        Whole(query("back")),
        Whole(query("of")),
        query("few") == "yes",
        query("sure") is "certain" or "possible" or "unknown" ? query("sure") : null);

    /// <summary>How surely a row answers: by the age asked for where one is, else by how surely her season of birth is known. Null where she does not.</summary>
    /// <param name="season">The season that 'back' is reckoned from.</param>
    public string? Answers(QueenRow row, int season)
    {
        if (Few && row.BeesFew != true) return null;
        if (row is not { SeasonFrom: { } from, SeasonTo: { } to }) return Of is null ? "unknown" : null;
        if (Of is { } of && (from > of || to < of)) return null;
        if (Of is not null && from != to) return "possible";
        if (Back is not { } back) return from == to ? "certain" : "possible";
        if (to <= season - back) return "certain";
        return from <= season - back ? "possible" : null;
    }

    /// <summary>The rows that answer.</summary>
    public IEnumerable<QueenRow> Apply(IEnumerable<QueenRow> rows, int season) =>
        rows.Where(row => Answers(row, season) is { } sure && (Sure is null || sure == Sure));

    private static int? Whole(string? text) => int.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var number) ? number : null;
}
