using ColonyLineage.Projections.Sums.Mixed;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>Noughts and ones by the logistic model: yards and seasons, of which many lost none, are drawn, for a group without a loss has no logit of its own.</summary>
internal static class ShareModel
{
    /// <summary>
    /// Ages and lines as they are still have a variance, of 3² on the logit scale: next to none among shares that can be told, and one that lost none, or all, keeps an error that is finite.
    /// After Gelman et al. 2008, Annals of Applied Statistics 2:1360 (from memory), who take a scale of 2.5.
    /// </summary>
    private const double AsTheyAre = 9;

    public static LineModel Of(LineTerms terms)
    {
        RandomEffect[] aside = [terms.Places, RandomEffect.Of("queen's age", [.. terms.Records.Select(record => record.Age)]) with { GivenVariance = AsTheyAre }];
        try
        {
            var drawn = terms.Related();
            var settled = Settled(terms, drawn, aside);
            var asDrawn = settled ?? Fit(terms, [drawn with { GivenVariance = AsTheyAre }, .. terms.Beside, .. aside]);
            var asTheyAre = terms.ByLine ? Fit(terms, [terms.Compared with { GivenVariance = AsTheyAre }, terms.Mothers, .. aside]) : null;
            return LineModel.Fitted(
                terms, asDrawn, asTheyAre is null ? null : new LineModel.AsLines(asTheyAre.CombineLevels, asTheyAre.Variance(1) > 0, ErrorIsGiven: true),
                settled is null ? "One has none of it or all, and the variance between them has no end: predictions take it as 9 on the logit scale."
                : asDrawn.Converged && asTheyAre is not { Converged: false } ? null : "The estimate of the variances did not settle: take the figures with care.",
                parts: settled is not null);
        }
        catch (SeparatedException)
        {
            return LineModel.None(terms, "It came to none of them, or to all: there is nothing to compare by.");
        }
        catch (TooFewRecordsException)
        {
            return LineModel.None(terms, "There are too few records.");
        }
    }

    /// <summary>Null where the variance of those compared runs away.</summary>
    private static LogisticFit? Settled(LineTerms terms, RandomEffect drawn, RandomEffect[] aside)
    {
        try
        {
            return Fit(terms, [drawn, .. terms.Beside, .. aside]);
        }
        catch (SeparatedException)
        {
            return null;
        }
    }

    private static LogisticFit Fit(LineTerms terms, IReadOnlyList<RandomEffect> effects) => new LogisticModel(terms.Y, FixedPart.Mean(terms.Y.Count), effects).Fit();
}
