using ColonyLineage.Projections.Relationship;
using ColonyLineage.Projections.Sums.Mixed;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>The terms of a model of lines, mothers, queens or makers, made from their records.</summary>
internal sealed class LineTerms
{
    private readonly ComparedBy _by;
    private readonly BooksPedigree? _pedigree;

    /// <param name="pedigree">Relates queens, or the daughters of mothers; null for what is related to nobody.</param>
    public LineTerms(IReadOnlyList<LineRecord> records, ComparedBy by, BooksPedigree? pedigree)
    {
        (Records, _by, _pedigree) = (records, by, pedigree);
        Y = [.. records.Select(record => record.Value)];
        Compared = RandomEffect.Of(by.ToString().ToLowerInvariant(), [.. records.Select(record => record.Line)]);
        Places = RandomEffect.Of("yard and season", [.. records.Select(record => record.YardSeason)]);
        var mothers = records.Where(record => record.Mother is not null).Select(record => (record.Line, record.Mother)).Distinct().Count();
        MothersFreedom = ByLine ? mothers - Lines.Count : 0;
    }

    public IReadOnlyList<LineRecord> Records { get; }

    public IReadOnlyList<double> Y { get; }

    public bool ByLine => _by == ComparedBy.Line;

    public IReadOnlyList<string> Lines => Compared.Levels;

    /// <summary>Mothers, each within her line, less lines; 0 where no lines are compared.</summary>
    public double MothersFreedom { get; }

    /// <summary>What is compared, related to nobody.</summary>
    public RandomEffect Compared { get; }

    public RandomEffect Places { get; }

    /// <summary>The mother is named within her line: a mother whose daughters are of two lines is two.</summary>
    public RandomEffect Mothers => RandomEffect.Of("mother", [.. Records.Select(record => $"{record.Line} {record.Mother}")]);

    /// <summary>What is drawn beside those compared: a line's mothers; of queens with several records what is a queen's own and was not handed down to her.</summary>
    public RandomEffect[] Beside => _by switch
    {
        ComparedBy.Line => [Mothers],
        ComparedBy.Queen when _pedigree is not null && Records.Count > Lines.Count => [Compared with { Name = "queen, not inherited" }],
        _ => [],
    };

    /// <summary>
    /// What is compared, queens as the pedigree relates them; of mothers their daughters, two of one mother as sisters are, the rest of a queen's own genes being part of the error. One
    /// that the pedigree does not know is related to nobody.
    /// </summary>
    public RandomEffect Related()
    {
        if (_pedigree is null || _by is not (ComparedBy.Mother or ComparedBy.Queen)) return Compared;
        var ids = Records.DistinctBy(record => record.Line).ToDictionary(record => record.Line, record => _by == ComparedBy.Mother ? record.MotherId : record.QueenId);
        var known = Lines.Select(level => ids[level]?.Value is { } id && _pedigree.NumberOf(id) is { } number ? (Id: id, Number: number) : ((Guid Id, int Number)?)null).ToList();
        return _by == ComparedBy.Mother
            ? Compared.RelatedBy(PedigreePrecision.OfBroods(_pedigree.Pedigree, [.. known.Select(one => one is { } mother ? _pedigree.MatingOf(mother.Id) : (int?)null)]))
            : Compared.RelatedBy(PedigreePrecision.Of(_pedigree.Pedigree, [.. known.Select(one => one?.Number)]));
    }
}
