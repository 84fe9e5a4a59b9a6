using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.MiteWatch;

/// <summary>See question.md.</summary>
public sealed class MiteWatchQuestion : Question<WashRow>
{
    public override string Name => "mite-watch";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    public override IEnumerable<WashRow> RowsFor(Books books, Subject subject)
    {
        var colony = books.Colony(new ColonyId(subject.Id));
        var nth = 0;
        Treated? last = null;
        foreach (var entry in colony.Counted)
        {
            last = entry as Treated ?? last;
            if (entry is not Washed wash) continue;
            var stay = colony.Stays.LastOrDefault(stay => Place.Of(stay.CameBy) <= Place.Of(wash));
            yield return new WashRow
            {
                YardId = stay?.Spot.Yard,
                Yard = stay is null ? null : Names.Of(books.Yard(stay.Spot.Yard)),
                Spot = stay?.Spot.Number,
                ColonyId = colony.Colony,
                Colony = Names.Of(colony),
                On = wash.On.Day,
                WashId = wash.Id.Value,
                Nth = ++nth,
                Mites = wash.Mites,
                Bees = wash.Bees,
                BeesEstimated = wash.BeesEstimated,
                Per100Bees = Math.Round(100m * wash.Mites / wash.Bees, 4),
                DaysSinceDose = last is null ? null : wash.On.Day.DayNumber - last.On.Day.DayNumber,
                Entries = Evidence.Of([stay?.CameBy, wash, last]),
            };
        }
    }

    /// <summary>The washes pooled by yard, and within it by first, second, third … wash.</summary>
    public static IReadOnlyList<Pool> Pooled(IEnumerable<WashRow> rows) =>
    [
        .. rows.GroupBy(row => (row.Yard, row.Nth))
            .OrderBy(pool => pool.Key.Yard, StringComparer.Ordinal).ThenBy(pool => pool.Key.Nth)
            .Select(pool => new Pool(pool.Key.Yard, pool.Key.Nth, pool.Count(), pool.Sum(row => row.Mites), pool.Sum(row => row.Bees),
                pool.Sum(row => row.Bees) is > 0 and var bees ? Math.Round(100m * pool.Sum(row => row.Mites) / bees, 4) : null)),
    ];
}
