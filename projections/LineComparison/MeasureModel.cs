using ColonyLineage.Projections.Sums.Mixed;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>Measures by the linear model.</summary>
internal static class MeasureModel
{
    private const int FewInAPlace = 3;

    /// <summary>Up to so many levels the whole matrices are worked with: there the expected information of the variances counts, beyond them the average one says the same.</summary>
    private const int Few = 300;

    /// <param name="withTreatments">The treatments of a season stand in the model.</param>
    public static LineModel Of(LineTerms terms, bool withTreatments)
    {
        var records = terms.Records;
        // Where most yards and seasons hold a few colonies only, a mean for each would eat them up: then they are drawn, like lines.
        var sizes = records.CountBy(record => record.YardSeason).ToList();
        var few = 2 * sizes.Count(size => size.Value < FewInAPlace) > sizes.Count;
        var part = (few ? FixedPart.Mean(records.Count) : FixedPart.By([.. records.Select(record => record.YardSeason)])).With("queen's age", [.. records.Select(record => record.Age)]);
        if (withTreatments) part = part.With("treatments", [.. records.Select(record => record.Treatments)]);
        RandomEffect[] place = few ? [terms.Places] : [];
        try
        {
            var asDrawn = Fit(terms.Y, part, [terms.Related(), .. terms.Beside, .. place]);
            if (!(asDrawn.Error > 0))
                return LineModel.None(terms, records.GroupBy(record => record.YardSeason).All(one => one.Select(record => record.Value).Distinct().Count() == 1)
                    ? "All records within a yard and season are alike: there is nothing to compare by."
                    : "The records leave nothing to chance: without an error there is nothing to hold a difference against.");
            var asTheyAre = terms.ByLine ? Lines(Fit(terms.Y, part.With("line", [.. records.Select(record => record.Line)]), [terms.Mothers, .. place]), terms.Lines) : null;
            return LineModel.Fitted(terms, asDrawn, asTheyAre, asDrawn.Converged ? null : "The estimate of the variances did not settle: take the figures with care.");
        }
        catch (TooFewRecordsException)
        {
            return LineModel.None(terms, "There are too few records for as many yards and seasons.");
        }
    }

    /// <summary>The first line has no column: what the others are held against.</summary>
    private static LineModel.AsLines Lines(IFitted fit, IReadOnlyList<string> lines) => new(
        weights =>
        {
            var byLine = lines.Zip(weights).ToDictionary(pair => $"line {pair.First}", pair => pair.Second);
            return fit.Combine([.. fit.Columns.Select(column => byLine.GetValueOrDefault(column))]);
        },
        fit.Variance(0) > 0,
        ErrorIsGiven: false);

    private static IFitted Fit(IReadOnlyList<double> y, FixedPart part, IReadOnlyList<RandomEffect> effects) =>
        effects.All(effect => effect.Precision is null) && effects.Sum(effect => effect.Levels.Count) <= Few ? new MixedModel(y, part, effects).Reml() : new SparseModel(y, part, effects).Reml();
}
