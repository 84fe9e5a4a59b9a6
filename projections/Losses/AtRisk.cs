using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.SpotStory;

namespace ColonyLineage.Projections.Losses;

/// <summary>A colony in a period: what it belonged to when the period began (or when it did), and what became of it.</summary>
internal sealed record ColonyInPeriod(LifeRow Life, string Yard, string Line, string QueenAge, string Treatment, bool Lost, bool LostUnsure, bool Combined, bool Sold)
{
    public string Of(LossBy by) => by switch
    {
        LossBy.Yard => Yard,
        LossBy.Line => Line,
        LossBy.QueenAge => QueenAge,
        LossBy.Treatment => Treatment,
        _ => "all",
    };
}

/// <summary>Which colonies could be lost in a period.</summary>
internal sealed class AtRisk(IEnumerable<LifeRow> rows, OutfitCard outfit, DateOnly asked, Winter winter, Beside beside)
{
    public const string Unknown = "unknown";
    public const string NoYard = "no yard";

    private readonly List<LifeRow> _lives = [.. rows.Where(row => row.KnownFrom <= asked && !row.MatingNuc)];
    private readonly ILookup<ColonyId, ReignRow> _reigns = beside.Reigns.ToLookup(row => row.ColonyId);
    private readonly ILookup<ColonyId, BandRow> _stays = beside.Stays.ToLookup(row => row.ColonyId);
    private readonly ILookup<(ColonyId, int), DoseRow> _doses = (beside.Doses ?? []).ToLookup(row => (row.ColonyId, row.Season));

    public bool KnowsTreatment => beside.Doses is not null;

    /// <summary>The calendar years in which winters start that the books can tell of.</summary>
    public IEnumerable<int> Winters => _lives.Count == 0 ? [] : Enumerable.Range(_lives.Min(life => life.KnownFrom).Year - 1, asked.Year - _lives.Min(life => life.KnownFrom).Year + 2).Where(year => winter.From(year) <= asked);

    /// <summary>Those at risk, and those that would have been but were sold.</summary>
    public IReadOnlyList<ColonyInPeriod> In(LossPeriod period, int year)
    {
        var (from, to) = winter.Of(period, year);
        return [.. _lives.Where(life => IsThere(life, period, from, to)).Select(life => Row(life, from, to))];
    }

    private bool IsThere(LifeRow life, LossPeriod period, DateOnly from, DateOnly to) =>
        from <= asked
        && (life.KnownFrom <= from || (period != LossPeriod.Winter && life.KnownFrom <= to))
        && !(End(life) < from);

    private ColonyInPeriod Row(LifeRow life, DateOnly from, DateOnly to)
    {
        var day = life.KnownFrom > from ? life.KnownFrom : from;
        var ended = End(life) <= to;
        var queen = _reigns[life.ColonyId].LastOrDefault(reign => reign.SinceFrom <= day && (reign.GoneTo is null || reign.GoneTo >= day));
        var known = _reigns.Count > 0;
        var season = Season.Of(day, outfit.SeasonStartMonth);
        return new ColonyInPeriod(
            life,
            _stays[life.ColonyId].LastOrDefault(stay => stay.From <= day && (stay.GoneTo is null || stay.GoneTo >= day))?.Yard ?? life.Yard ?? NoYard,
            (known ? queen?.Line : life.QueenSeasonFrom <= season ? life.Line : null) ?? Unknown,
            known ? Age(season, queen?.SeasonFrom, queen?.SeasonTo) : Age(season, life.QueenSeasonFrom, life.QueenSeasonTo),
            Treatment(life.ColonyId, Season.Of(from, outfit.SeasonStartMonth)),
            Lost: ended && life.Lost,
            LostUnsure: ended && life.Lost && (life.EndedFrom < from || life.Ended > to),
            Combined: ended && life.End == EndKind.Combined,
            Sold: ended && life.End == EndKind.Sold);
    }

    private DateOnly? End(LifeRow life) => life.EndTaken() is { } end && end <= asked ? end : null;

    private static string Age(int season, int? from, int? to) =>
        from is not { } first || to is not { } last || first > season ? Unknown
        : first >= last ? FormattableString.Invariant($"{season - first}")
        : FormattableString.Invariant($"{Math.Max(0, season - last)} to {season - first}");

    private string Treatment(ColonyId colony, int season)
    {
        var rows = _doses[(colony, season)].ToList();
        return rows.Count == 0 ? "none recorded"
            : rows.Any(row => row.Owed > 0) ? "incomplete"
            : rows.All(row => row.Owed is null) ? Unknown
            : "complete";
    }
}
