using System.Globalization;
using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>A mixed model put together from the columns of a sheet.</summary>
/// <param name="LeftOut">Rows without the trait, or without a fixed term.</param>
public sealed record ModelSheet(IReadOnlyList<double> Y, FixedPart Fixed, IReadOnlyList<RandomEffect> Random, int LeftOut)
{
    /// <summary>There is no column of that name.</summary>
    public const string NoColumn = "no-column";

    /// <summary>The cell is no number, and the column is to be one of numbers.</summary>
    public const string NotANumber = "not-a-number";

    /// <summary>There are no more rows than fixed terms.</summary>
    public const string TooFewRecords = "too-few-records";

    /// <summary>More levels of random effects than can be worked with.</summary>
    public const string TooManyLevels = "too-many-levels";

    /// <summary>Puts the model together.</summary>
    /// <param name="trait">A column of numbers; rows without one are left out.</param>
    /// <param name="fixedTerms">
    /// Columns. One of numbers is a covariate, unless it is written <c>factor(COLUMN)</c>; others are groups; <c>A:B</c> is a group for each pair.
    /// The first groups get a mean of their own each, further ones are held against their first.
    /// </param>
    /// <param name="randomTerms">Columns or pairs of columns.</param>
    /// <param name="nested">Each random column lies within the one before it: its names are read together.</param>
    public static (ModelSheet? Sheet, IReadOnlyList<Refusal> Refusals) Of(
        IReadOnlyList<string> columns, IReadOnlyList<(int Row, IReadOnlyList<string> Cells)> rows, string trait, IReadOnlyList<string> fixedTerms, IReadOnlyList<string> randomTerms, bool nested = false)
    {
        var refusals = new List<Refusal>();
        var random = nested ? [.. randomTerms.Select((_, i) => string.Join(':', randomTerms.Take(i + 1)))] : randomTerms;
        foreach (var name in fixedTerms.Concat(random).SelectMany(Columns).Prepend(trait).Distinct().Where(name => !columns.Contains(name)))
            refusals.Add(new Refusal(NoColumn, name, $"There is no column '{name}'. There are: {string.Join(", ", columns)}."));
        if (refusals.Count > 0) return (null, refusals);

        string Cell(IReadOnlyList<string> cells, string name) => cells[columns.ToList().IndexOf(name)];
        bool Empty(string cell) => cell is "" or "NA";
        var kept = rows.Where(row => !Empty(Cell(row.Cells, trait)) && !fixedTerms.SelectMany(Columns).Any(name => Empty(Cell(row.Cells, name)))).ToList();
        double[] Numbers(string name) =>
        [
            .. kept.Select(row =>
            {
                if (double.TryParse(Cell(row.Cells, name), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)) return number;
                refusals.Add(new Refusal(NotANumber, FormattableString.Invariant($"row {row.Row}, {name}"), $"'{Cell(row.Cells, name)}' is no number."));
                return 0;
            }),
        ];
        string[] Names(string term) => [.. kept.Select(row => string.Join(' ', Columns(term).Select(name => Cell(row.Cells, name))))];
        bool IsCovariate(string term) => !IsFactor(term) && !term.Contains(':') && kept.All(row => double.TryParse(Cell(row.Cells, term), NumberStyles.Float, CultureInfo.InvariantCulture, out _));

        var y = Numbers(trait);
        var groups = fixedTerms.FirstOrDefault(term => !IsCovariate(term));
        var part = groups is null ? FixedPart.Mean(kept.Count) : FixedPart.By(Names(groups));
        foreach (var term in fixedTerms.Where(term => term != groups)) part = IsCovariate(term) ? part.With(term, Numbers(term)) : part.With(term, Names(term));
        var effects = random.Select(term => RandomEffect.Of(
            term, [.. kept.Select(row => Columns(term).Any(name => Empty(Cell(row.Cells, name))) ? null : string.Join(' ', Columns(term).Select(name => Cell(row.Cells, name))))])).ToList();
        if (refusals.Count > 0) return (null, refusals);
        if (kept.Count <= part.Groups.Count + part.Columns.Count)
            return (null, [new Refusal(TooFewRecords, trait, FormattableString.Invariant($"{kept.Count} rows cannot tell {part.Groups.Count + part.Columns.Count} fixed terms and an error apart. Leave terms out, or add rows."))]);
        return effects.Sum(effect => effect.Levels.Count) > MixedModel.MostLevels
            ? (null, [new Refusal(TooManyLevels, "random", FormattableString.Invariant($"{effects.Sum(effect => effect.Levels.Count)} levels of random terms; at most {MixedModel.MostLevels} can be worked with."))])
            : (new ModelSheet(y, part, effects, rows.Count - kept.Count), []);
    }

    private static bool IsFactor(string term) => term.StartsWith("factor(", StringComparison.Ordinal) && term.EndsWith(')');

    private static string[] Columns(string term) => (IsFactor(term) ? term[7..^1] : term).Split(':');
}
