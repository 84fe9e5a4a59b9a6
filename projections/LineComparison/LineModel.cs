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

    private readonly IReadOnlyList<string> _lines;
    private readonly IFitted? _asTheyAre;
    private readonly double _mothersFreedom;

    private LineModel(IReadOnlyList<string> lines, IFitted? asDrawn, IFitted? asTheyAre, double mothersFreedom, string? problem)
    {
        (_lines, _asTheyAre, _mothersFreedom, Problem) = (lines, asTheyAre, mothersFreedom, problem);
        Predictions = asDrawn?.Predictions(0).ToDictionary(line => line.Level) ?? [];
        Parts = [.. asDrawn?.Components().Select(part => new Part(part.Name, part.Variance, part.StandardError)) ?? []];
    }

    /// <summary>Why nothing could be fitted; null where it could.</summary>
    public string? Problem { get; }

    public IReadOnlyList<Part> Parts { get; }

    /// <summary>Standard errors of a difference that two lines must lie apart, by the mothers' degrees of freedom; null where there are none.</summary>
    public double? Yardstick => _mothersFreedom >= 1 ? StudentizedRange.Quantile(.95, _lines.Count, _mothersFreedom) / Math.Sqrt(2) : null;

    private Dictionary<string, Predicted> Predictions { get; }

    public static LineModel Of(IReadOnlyList<LineRecord> records, Trait trait, ComparedBy by, BooksPedigree? pedigree)
    {
        var lines = records.Select(record => record.Line).Distinct().Order(StringComparer.Ordinal).ToList();
        var mothers = records.Where(record => record.Mother is not null).Select(record => (record.Line, record.Mother)).Distinct().Count();
        var mothersOf = by == ComparedBy.Line ? mothers - lines.Count : 0;
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
            return asDrawn.Error > 0
                ? new LineModel(lines, asDrawn, asTheyAre, mothersOf, asDrawn.Converged ? null : "The estimate of the variances did not settle: take the figures with care.")
                : new LineModel(lines, null, null, 0, records.GroupBy(record => record.YardSeason).All(place => place.Select(record => record.Value).Distinct().Count() == 1)
                    ? "All records within a yard and season are alike: there is nothing to compare by."
                    : "The records leave nothing to chance: without an error there is nothing to hold a difference against.");
        }
        catch (TooFewRecordsException)
        {
            return new LineModel(lines, null, null, 0, "There are too few records for as many yards and seasons.");
        }
    }

    /// <summary>A line's prediction.</summary>
    public Predicted? Blup(string line) => Predictions.GetValueOrDefault(line);

    /// <summary>A line less the mean of all lines that can be told apart.</summary>
    public Contrast? FromMean(string line) => _lines.Contains(line) ? At(_lines.Select(one => (one == line ? 1.0 : 0) - (1.0 / _lines.Count))) : null;

    /// <summary>A line less another.</summary>
    public Contrast? Between(string line, string other) => _lines.Contains(line) && _lines.Contains(other) ? At(_lines.Select(one => one == line ? 1.0 : one == other ? -1 : 0)) : null;

    /// <summary>How often chance makes the widest of as many lines lie so far apart; null where the mothers leave no degrees of freedom.</summary>
    public decimal? Chance(Contrast contrast) => _mothersFreedom < 1 ? null
        : Math.Round((decimal)(1 - StudentizedRange.Below(Math.Abs(contrast.Ratio) * Math.Sqrt(2), _lines.Count, contrast.Freedom)), 6);

    /// <summary>The first line has no column: what the others are held against.</summary>
    private Contrast? At(IEnumerable<double> weights)
    {
        if (_asTheyAre is null) return null;
        var byLine = _lines.Zip(weights).ToDictionary(pair => $"line {pair.First}", pair => pair.Second);
        var contrast = _asTheyAre.Combine([.. _asTheyAre.Columns.Select(column => byLine.GetValueOrDefault(column))]);
        // Where the mothers' variance is estimated at nothing the colonies would become the replicates: the mothers stay them.
        return contrast is null || _asTheyAre.Variance(0) > 0 || _mothersFreedom < 1 ? contrast : contrast with { Freedom = Math.Min(contrast.Freedom, _mothersFreedom) };
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
