using ColonyLineage.Projections.Relationship;
using ColonyLineage.Projections.Sums;
using ColonyLineage.Projections.Sums.Mixed;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>The two fits of one trait: what is compared as drawn from a population, for predictions and variances; lines as they are, for what is claimed.</summary>
internal sealed class LineModel
{
    private readonly IReadOnlyList<string> _lines;
    private readonly AsLines? _asTheyAre;
    private readonly double _mothersFreedom;

    private LineModel(IReadOnlyList<string> lines, AsLines? asTheyAre, double mothersFreedom) => (_lines, _asTheyAre, _mothersFreedom) = (lines, asTheyAre, mothersFreedom);

    /// <summary>Why nothing could be fitted, or what is to be said of the fit; null where there is nothing.</summary>
    public string? Problem { get; private init; }

    public IReadOnlyList<Part> Parts { get; private init; } = [];

    /// <summary>Standard errors of a difference that two lines must lie apart, by the mothers' degrees of freedom; null where there are none.</summary>
    public double? Yardstick => _mothersFreedom >= 1 ? StudentizedRange.Quantile(.95, _lines.Count, _mothersFreedom) / Math.Sqrt(2) : null;

    private Dictionary<string, Predicted> Predictions { get; init; } = [];

    public static LineModel Of(IReadOnlyList<LineRecord> records, Trait trait, ComparedBy by, BooksPedigree? pedigree)
    {
        var terms = new LineTerms(records, by, pedigree);
        return Traits.IsShare(trait) ? ShareModel.Of(terms) : MeasureModel.Of(terms, Traits.DependsOnTreatment(trait));
    }

    /// <summary>Nothing could be fitted.</summary>
    public static LineModel None(LineTerms terms, string why) => new(terms.Lines, null, 0) { Problem = why };

    /// <param name="parts">Whether all its variances were estimated, and can be shown.</param>
    public static LineModel Fitted(LineTerms terms, IFitted asDrawn, AsLines? asTheyAre, string? problem, bool parts = true) => new(terms.Lines, asTheyAre, terms.MothersFreedom)
    {
        Problem = problem,
        Predictions = asDrawn.Predictions(0).ToDictionary(line => line.Level),
        Parts = parts ? [.. asDrawn.Components().Select(part => new Part(part.Name, part.Variance, part.StandardError))] : [],
    };

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

    /// <summary>Lines as they are.</summary>
    /// <param name="Combine">A combination of the lines, with one weight for each.</param>
    /// <param name="MothersVary">Whether anything was seen to lie between mothers of one line.</param>
    /// <param name="ErrorIsGiven">Noughts and ones scatter by as much as they must: there is no error to be estimated.</param>
    internal sealed record AsLines(Func<IReadOnlyList<double>, Contrast?> Combine, bool MothersVary, bool ErrorIsGiven);
}
