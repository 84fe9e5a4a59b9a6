using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Relationship;

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

    /// <summary>Up to so many levels the whole matrices are worked with, beyond them the sparse equations.</summary>
    public const int Dense = 1_000;

    /// <summary>Beyond these the equations no longer fit a desk's machine.</summary>
    public const int MostLevels = 200_000;

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
        return effects.Sum(effect => effect.Levels.Count) > MostLevels
            ? (null, [new Refusal(TooManyLevels, "random", FormattableString.Invariant($"{effects.Sum(effect => effect.Levels.Count)} levels of random terms; at most {MostLevels} can be worked with."))])
            : (new ModelSheet(y, part, effects, rows.Count - kept.Count), []);
    }

    /// <summary>Relates the levels of a random term as a pedigree has its queens. All of these are predicted, those without a record as well.</summary>
    /// <param name="term">The random term; the first of that name.</param>
    /// <param name="names">The queens, as the pedigree numbers them.</param>
    public (ModelSheet? Sheet, IReadOnlyList<Refusal> Refusals) Related(string term, QueenPedigree pedigree, IReadOnlyList<string> names)
    {
        var at = Random.ToList().FindIndex(effect => effect.Name == term);
        if (at < 0) return (null, [new Refusal(Refusals.NotFound, "related", $"'{term}' is none of the random terms: {string.Join(", ", Random.Select(effect => effect.Name))}.")]);
        var numbers = names.Select((name, number) => (name, number)).ToDictionary(pair => pair.name, pair => pair.number);
        if (Random[at].Levels.Where(level => !numbers.ContainsKey(level)).ToList() is { Count: > 0 } unknown)
            return (null, [.. unknown.Take(20).Select(level => new Refusal(Refusals.NotFound, term, $"'{level}' is in no row of the pedigree. Add one, with her mother empty where she is not known."))]);
        var effect = new RandomEffect(term, names, [.. Random[at].LevelOf.Select(level => level < 0 ? -1 : numbers[Random[at].Levels[level]])])
            .RelatedBy(PedigreePrecision.Of(pedigree, [.. names.Select((_, number) => (int?)number)]));
        return (this with { Random = [.. Random.Take(at), effect, .. Random.Skip(at + 1)] }, []);
    }

    /// <summary>The variances that make the records likeliest, by whole matrices where they are small, by the sparse equations otherwise.</summary>
    public IFitted Reml() => Random.All(effect => effect.Precision is null) && Random.Sum(effect => effect.Levels.Count) <= Dense ? new MixedModel(Y, Fixed, Random).Reml() : new SparseModel(Y, Fixed, Random).Reml();

    private static bool IsFactor(string term) => term.StartsWith("factor(", StringComparison.Ordinal) && term.EndsWith(')');

    private static string[] Columns(string term) => (IsFactor(term) ? term[7..^1] : term).Split(':');
}
