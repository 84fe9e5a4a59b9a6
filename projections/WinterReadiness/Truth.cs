using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Losses;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Projections.WinterReadiness;

/// <summary>After the winter: the criteria of the autumn against what came through. Few colonies make wide intervals, and they are shown.</summary>
public static class Truth
{
    private static readonly string[] Order = ["queen", "brood", "bees", "stores", "mites", "course", "owed"];

    /// <param name="autumn">The criteria as they stood on a day before the winter, by what is known now.</param>
    /// <param name="lives">What became of the colonies.</param>
    /// <param name="day">The day of the autumn.</param>
    /// <param name="until">The last day of the winter.</param>
    public static IReadOnlyList<TruthRow> Of(IEnumerable<ReadinessRow> autumn, IEnumerable<LifeRow> lives, DateOnly day, DateOnly until)
    {
        var ends = lives.ToDictionary(row => row.ColonyId);
        var judged = autumn.Where(row => ends.TryGetValue(row.ColonyId, out var life) && !LeftUnlost(life, day, until)).ToList();
        return
        [
            .. judged.GroupBy(row => (row.Criterion, row.Of, row.Met)).Select(alike =>
            {
                var lost = alike.Where(row => ends[row.ColonyId] is { Lost: true } life && life.EndTaken() <= until).ToList();
                var (lower, upper) = Proportion.Wilson(lost.Count, alike.Count());
                return new TruthRow
                {
                    Criterion = alike.Key.Criterion,
                    Of = alike.Key.Of,
                    Met = alike.Key.Met,
                    Colonies = alike.Count(),
                    Lost = lost.Count,
                    Rate = Math.Round((decimal)lost.Count / alike.Count(), 4),
                    Lower = Math.Round((decimal)lower, 4),
                    Upper = Math.Round((decimal)upper, 4),
                    Entries = [.. lost.SelectMany(row => ends[row.ColonyId].Entries).Distinct()],
                };
            }).OrderBy(row => Array.IndexOf(Order, row.Criterion)).ThenBy(row => row.Of, StringComparer.Ordinal).ThenBy(row => row.Met),
        ];
    }

    /// <summary>Sold, or combined away, before the winter was over: nobody can say whether it would have come through.</summary>
    private static bool LeftUnlost(LifeRow life, DateOnly day, DateOnly until) =>
        life.End is EndKind.Sold or EndKind.Combined && life.EndTaken() is { } end && end > day && end <= until;
}
