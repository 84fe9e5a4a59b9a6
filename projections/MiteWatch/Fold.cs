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
        var group = colony.Counted.OfType<Noted>().LastOrDefault(note => note.About == "treatment group");
        var treatments = group?.Text ?? string.Join(" + ", colony.Counted.OfType<Treated>().Select(dose => dose.Course).Distinct().Order(StringComparer.Ordinal));
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
                Treatments = treatments.Length == 0 ? null : treatments,
                TakenOut = colony.TakenOut is not null,
                DaysSinceDose = last is null ? null : wash.On.Day.DayNumber - last.On.Day.DayNumber,
                Entries = Evidence.Of([stay?.CameBy, wash, last, group]),
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

    /// <summary>The washes by what the colonies were given, round by round; all colonies first. Those taken out of comparisons are counted apart.</summary>
    public static IReadOnlyList<GroupRow> Grouped(IEnumerable<WashRow> rows)
    {
        var rounds = Rounds.Split([.. rows.OrderBy(row => row.On)]).Select((washes, i) => (Round: i + 1, Washes: washes)).Where(round => round.Washes.Count > 0).ToList();
        return
        [
            .. rounds.Select(round => Group("all", round.Round, round.Washes, round.Washes)),
            .. rounds.SelectMany(round => round.Washes.GroupBy(wash => wash.Treatments).Select(group => Group(group.Key, round.Round, round.Washes, [.. group])))
                .OrderBy(group => group.Treatments is not null).ThenBy(group => group.Treatments, StringComparer.Ordinal).ThenBy(group => group.Round),
        ];
    }

    private static GroupRow Group(string? treatments, int round, IReadOnlyList<WashRow> all, IReadOnlyList<WashRow> rows)
    {
        var kept = rows.Where(row => !row.TakenOut).ToList();
        var (mites, bees) = (kept.Sum(row => row.Mites), kept.Sum(row => row.Bees));
        return new GroupRow(
            treatments, round, all[0].On, all[^1].On, kept.Count, mites, bees,
            kept.Count == 0 ? null : Math.Round(kept.Average(row => 100m * row.Mites / row.Bees), 6),
            bees == 0 ? null : Math.Round(100m * mites / bees, 6), rows.Count - kept.Count);
    }
}
