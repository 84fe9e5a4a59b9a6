using ColonyLineage.Projections.Relationship;
using ColonyLineage.Projections.Sums;
using ColonyLineage.Projections.Sums.Mixed;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>The two fits of one trait: what is compared as drawn from a population, for predictions and variances; lines as they are, for what is claimed.</summary>
internal sealed class LineModel
{
    private const int FewInAPlace = 3;

    /// <summary>Up to so many levels the whole matrices are worked with: there the expected information of the variances counts, beyond them the average one says the same.</summary>
    private const int Few = 300;

    /// <summary>
    /// Of shares the lines as they are still have a variance, of 3² on the logit scale: next to none among shares that can be told, and a line that lost none, or all, keeps an error that is finite. After Gelman et
    /// al. 2008, Annals of Applied Statistics 2:1360 (from memory), who take a scale of 2.5.
    /// </summary>
    private const double AsTheyAre = 9;

    private readonly IReadOnlyList<string> _lines;
    private readonly AsLines? _asTheyAre;
    private readonly double _mothersFreedom;

    private LineModel(IReadOnlyList<string> lines, IFitted? asDrawn, AsLines? asTheyAre, double mothersFreedom, string? problem, bool parts = true)
    {
        (_lines, _asTheyAre, _mothersFreedom, Problem) = (lines, asTheyAre, mothersFreedom, problem);
        Predictions = asDrawn?.Predictions(0).ToDictionary(line => line.Level) ?? [];
        Parts = !parts ? [] : [.. asDrawn?.Components().Select(part => new Part(part.Name, part.Variance, part.StandardError)) ?? []];
    }

    /// <summary>Why nothing could be fitted; null where it could.</summary>
    public string? Problem { get; }

    public IReadOnlyList<Part> Parts { get; }

    /// <summary>Standard errors of a difference that two lines must lie apart, by the mothers' degrees of freedom; null where there are none.</summary>
    public double? Yardstick => _mothersFreedom >= 1 ? StudentizedRange.Quantile(.95, _lines.Count, _mothersFreedom) / Math.Sqrt(2) : null;

    private Dictionary<string, Predicted> Predictions { get; }

    /// <summary>A combination of the lines, with one weight for each.</summary>
    /// <param name="MothersVary">Whether anything was seen to lie between mothers of one line.</param>
    /// <param name="ErrorIsGiven">Noughts and ones scatter by as much as they must: there is no error to be estimated.</param>
    private sealed record AsLines(Func<IReadOnlyList<double>, Contrast?> Combine, bool MothersVary, bool ErrorIsGiven);

    public static LineModel Of(IReadOnlyList<LineRecord> records, Trait trait, ComparedBy by, BooksPedigree? pedigree)
    {
        if (Traits.IsShare(trait)) return OfShares(records, by, pedigree);
        var (lines, mothersOf) = (LinesOf(records), MothersOf(records, by));
        var y = records.Select(record => record.Value).ToList();
        var places = records.Select(record => record.YardSeason).ToList();
        // Where most yards and seasons hold a few colonies only, a mean for each would eat them up: then they are drawn, like lines.
        var few = places.CountBy(place => place).ToList() is var sizes && 2 * sizes.Count(size => size.Value < FewInAPlace) > sizes.Count;
        var part = (few ? FixedPart.Mean(records.Count) : FixedPart.By(places)).With("queen's age", [.. records.Select(record => record.Age)]);
        if (Traits.DependsOnTreatment(trait)) part = part.With("treatments", [.. records.Select(record => record.Treatments)]);
        RandomEffect[] place = few ? [RandomEffect.Of("yard and season", places)] : [];
        var compared = RandomEffect.Of(by.ToString().ToLowerInvariant(), [.. records.Select(record => record.Line)]);
        try
        {
            var asDrawn = Fit(y, part, [Related(compared, records, by, pedigree), .. Beside(records, compared, by, pedigree), .. place]);
            var asTheyAre = by == ComparedBy.Line ? Fit(y, part.With("line", [.. records.Select(record => record.Line)]), [Mother(records), .. place]) : null;
            // Against what the records differ by at all: nothing but dust is no error.
            return asDrawn.Error > 0
                ? new LineModel(lines, asDrawn, asTheyAre is null ? null : Lines(asTheyAre, lines), mothersOf, asDrawn.Converged ? null : "The estimate of the variances did not settle: take the figures with care.")
                : new LineModel(lines, null, null, 0, records.GroupBy(record => record.YardSeason).All(place => place.Select(record => record.Value).Distinct().Count() == 1)
                    ? "All records within a yard and season are alike: there is nothing to compare by."
                    : "The records leave nothing to chance: without an error there is nothing to hold a difference against.");
        }
        catch (TooFewRecordsException)
        {
            return new LineModel(lines, null, null, 0, "There are too few records for as many yards and seasons.");
        }
    }

    /// <summary>Noughts and ones by the logistic model: yards and seasons, of which many lost none, and ages are drawn, for a group without a loss has no logit of its own.</summary>
    private static LineModel OfShares(IReadOnlyList<LineRecord> records, ComparedBy by, BooksPedigree? pedigree)
    {
        var (lines, y, mean) = (LinesOf(records), records.Select(record => record.Value).ToList(), FixedPart.Mean(records.Count));
        var compared = RandomEffect.Of(by.ToString().ToLowerInvariant(), [.. records.Select(record => record.Line)]);
        RandomEffect[] aside = [RandomEffect.Of("yard and season", [.. records.Select(record => record.YardSeason)]), RandomEffect.Of("queen's age", [.. records.Select(record => record.Age)])];
        try
        {
            var drawn = Related(compared, records, by, pedigree);
            LogisticFit Drawn(RandomEffect effect) => new LogisticModel(y, mean, [effect, .. Beside(records, compared, by, pedigree), .. aside]).Fit();
            var (asDrawn, settled) = Settled(() => Drawn(drawn)) is { } found ? (found, true) : (Drawn(drawn with { GivenVariance = AsTheyAre }), false);
            var asTheyAre = by == ComparedBy.Line ? new LogisticModel(y, mean, [compared with { GivenVariance = AsTheyAre }, Mother(records), .. aside]).Fit() : null;
            return new LineModel(
                lines, asDrawn, asTheyAre is null ? null : new AsLines(asTheyAre.CombineLevels, asTheyAre.Variance(1) > 0, true), MothersOf(records, by),
                !settled ? "One has none of it or all, and the variance between them has no end: predictions take it as 9 on the logit scale."
                : asDrawn.Converged && asTheyAre is not { Converged: false } ? null : "The estimate of the variances did not settle: take the figures with care.",
                parts: settled);
        }
        catch (SeparatedException)
        {
            return new LineModel(lines, null, null, 0, "It came to none of them, or to all: there is nothing to compare by.");
        }
        catch (TooFewRecordsException)
        {
            return new LineModel(lines, null, null, 0, "There are too few records.");
        }
    }

    /// <summary>Null where the estimate runs away.</summary>
    private static LogisticFit? Settled(Func<LogisticFit> fit)
    {
        try
        {
            return fit();
        }
        catch (SeparatedException)
        {
            return null;
        }
    }

    private static List<string> LinesOf(IReadOnlyList<LineRecord> records) => [.. records.Select(record => record.Line).Distinct().Order(StringComparer.Ordinal)];

    private static int MothersOf(IReadOnlyList<LineRecord> records, ComparedBy by) => by != ComparedBy.Line ? 0
        : records.Where(record => record.Mother is not null).Select(record => (record.Line, record.Mother)).Distinct().Count() - LinesOf(records).Count;

    /// <summary>The first line has no column: what the others are held against.</summary>
    private static AsLines Lines(IFitted fit, IReadOnlyList<string> lines) => new(
        weights =>
        {
            var byLine = lines.Zip(weights).ToDictionary(pair => $"line {pair.First}", pair => pair.Second);
            return fit.Combine([.. fit.Columns.Select(column => byLine.GetValueOrDefault(column))]);
        },
        fit.Variance(0) > 0,
        false);

    /// <summary>A line's prediction.</summary>
    public Predicted? Blup(string line) => Predictions.GetValueOrDefault(line);

    /// <summary>A line less the mean of all lines that can be told apart.</summary>
    public Contrast? FromMean(string line) => _lines.Contains(line) ? At(_lines.Select(one => (one == line ? 1.0 : 0) - (1.0 / _lines.Count)), claimed: false) : null;

    /// <summary>A line less another.</summary>
    public Contrast? Between(string line, string other) => _lines.Contains(line) && _lines.Contains(other) ? At(_lines.Select(one => one == line ? 1.0 : one == other ? -1 : 0), claimed: true) : null;

    /// <summary>How often chance makes the widest of as many lines lie so far apart; null where the mothers leave no degrees of freedom.</summary>
    public decimal? Chance(Contrast contrast) => _mothersFreedom < 1 ? null
        : Math.Round((decimal)(1 - StudentizedRange.Below(Math.Abs(contrast.Ratio) * Math.Sqrt(2), _lines.Count, contrast.Freedom)), 6);

    /// <param name="claimed">What is claimed goes by the mothers. So does an interval of one line, but of shares it is Wald's: tried by tools/simulate --lines, that one covers.</param>
    private Contrast? At(IEnumerable<double> weights, bool claimed)
    {
        var contrast = _asTheyAre?.Combine([.. weights]);
        if (contrast is null || _mothersFreedom < 1) return contrast;
        if (_asTheyAre!.ErrorIsGiven && !claimed) return contrast with { Freedom = double.PositiveInfinity };
        // Where the mothers' variance is estimated at nothing the colonies would become the replicates: the mothers stay them.
        return _asTheyAre.MothersVary ? contrast : contrast with { Freedom = Math.Min(contrast.Freedom, _mothersFreedom) };
    }



    private static IFitted Fit(IReadOnlyList<double> y, FixedPart part, IReadOnlyList<RandomEffect> effects) =>
        effects.All(effect => effect.Precision is null) && effects.Sum(effect => effect.Levels.Count) <= Few ? new MixedModel(y, part, effects).Reml() : new SparseModel(y, part, effects).Reml();

    /// <summary>The mother is named within her line: a mother whose daughters are of two lines is two.</summary>
    private static RandomEffect Mother(IReadOnlyList<LineRecord> records) => RandomEffect.Of("mother", [.. records.Select(record => $"{record.Line} {record.Mother}")]);

    /// <summary>What is drawn beside those compared: a line's mothers; of queens with several records what is a queen's own and was not handed down to her.</summary>
    private static RandomEffect[] Beside(IReadOnlyList<LineRecord> records, RandomEffect compared, ComparedBy by, BooksPedigree? pedigree) => by switch
    {
        ComparedBy.Line => [Mother(records)],
        ComparedBy.Queen when pedigree is not null && records.Count > compared.Levels.Count => [compared with { Name = "queen, not inherited" }],
        _ => [],
    };

    /// <summary>
    /// Queens as the pedigree relates them; of mothers their daughters, two of one mother as sisters are, the rest of a queen's own genes being part of the error. One that the
    /// pedigree does not know is related to nobody.
    /// </summary>
    private static RandomEffect Related(RandomEffect compared, IReadOnlyList<LineRecord> records, ComparedBy by, BooksPedigree? pedigree)
    {
        if (pedigree is null || by is not (ComparedBy.Mother or ComparedBy.Queen)) return compared;
        var ids = records.DistinctBy(record => record.Line).ToDictionary(record => record.Line, record => by == ComparedBy.Mother ? record.MotherId : record.QueenId);
        var known = compared.Levels.Select(level => ids[level]?.Value is { } id && pedigree.NumberOf(id) is { } number ? (Id: id, Number: number) : ((Guid Id, int Number)?)null).ToList();
        return by == ComparedBy.Mother
            ? compared.RelatedBy(PedigreePrecision.OfBroods(pedigree.Pedigree, [.. known.Select(one => one is { } mother ? pedigree.MatingOf(mother.Id) : (int?)null)]))
            : compared.RelatedBy(PedigreePrecision.Of(pedigree.Pedigree, [.. known.Select(one => one?.Number)]));
    }
}
