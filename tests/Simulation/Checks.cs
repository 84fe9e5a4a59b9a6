using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Simulation.Oracle;

namespace ColonyLineage.Simulation;

/// <summary>What failed, and in which words.</summary>
/// <param name="Law">The name of the law that does not hold.</param>
/// <param name="What">What was found.</param>
public sealed record Failure(string Law, string What);

/// <summary>
/// The laws that hold on every history. What they draw by chance (an order of arrival, batches, days to look back to) is drawn
/// entry by entry from the seed, so that it stays as it is when other entries are dropped.
/// </summary>
public sealed class Checks(Folds folds, ulong seed)
{
    private static readonly IReadOnlyList<(string Law, Func<Checks, IReadOnlyList<Recorded>, string?> Breach)> Laws =
    [
        ("every entry can be recorded", (_, history) => Recordable(history)),
        ("the law of order", (checks, history) => checks.Order(history)),
        ("read tables equal a full fold", (checks, history) => checks.Tables(history)),
        ("the law of evidence", (checks, history) => checks.Evidence(history)),
        ("the oracle agrees", (checks, history) => checks.Oracle(history, null, null)),
        ("the oracle agrees as of a day", (checks, history) => checks.Oracle(history, checks.Day(history), null)),
        ("the oracle agrees as known at an instant", (checks, history) => checks.Oracle(history, null, checks.Instant(history))),
        ("the oracle agrees by both clocks", (checks, history) => checks.Oracle(history, checks.Day(history), checks.Instant(history))),
    ];

    /// <summary>The first law that a history breaks; null where all hold.</summary>
    public Failure? Find(IReadOnlyList<Recorded> history)
    {
        foreach (var (law, breach) in Laws)
            if (Try(law, breach, history) is { } failure)
                return failure;
        return null;
    }

    /// <summary>Makes a failing history smaller while the same law is broken.</summary>
    public IReadOnlyList<Recorded> Shrink(IReadOnlyList<Recorded> history, Failure failure)
    {
        var breach = Laws.First(law => law.Law == failure.Law).Breach;
        return Shrinker.Shrink(history, smaller => Try(failure.Law, breach, smaller) is not null);
    }

    private Failure? Try(string law, Func<Checks, IReadOnlyList<Recorded>, string?> breach, IReadOnlyList<Recorded> history)
    {
        try
        {
            return breach(this, history) is { } what ? new Failure(law, what) : null;
        }
        catch (Exception problem)
        {
            return new Failure(law, problem.ToString());
        }
    }

    private static string? Recordable(IReadOnlyList<Recorded> history)
    {
        foreach (var (entry, _) in history)
            if (entry.Check() is [var refusal, ..])
                return $"{entry}: {refusal.Message}";
        return null;
    }

    private string? Order(IReadOnlyList<Recorded> history)
    {
        var arrived = history.Concat(history.Where(recorded => Fixed(recorded, 1) % 3 == 0)).OrderBy(recorded => Fixed(recorded, 2)).ThenBy(recorded => recorded.Entry.Id).ToList();
        return Whole(arrived).DifferenceFrom(Whole(history));
    }

    private string? Tables(IReadOnlyList<Recorded> history)
    {
        var arrived = history.OrderBy(recorded => Fixed(recorded, 3) % 4 == 0 ? DateTimeOffset.MinValue.AddSeconds(Fixed(recorded, 4)) : recorded.At).ThenBy(recorded => recorded.Entry.Id).ToList();
        var tables = new ReadTables(folds.Questions);
        var looked = false;
        for (var start = 0; start < arrived.Count;)
        {
            var end = start + 1;
            while (end < arrived.Count && Fixed(arrived[end], 5) % 4 != 0) end++;
            // Some of what was sent before is sent again.
            tables.Take(arrived.Take(end).Where((recorded, i) => i >= start || Fixed(recorded, 6) % 8 == 0).Select(recorded => recorded.Entry));
            start = end;
            if (!looked && start > arrived.Count / 2)
            {
                looked = true;
                if (tables.Answers.DifferenceFrom(Whole([.. arrived.Take(start)])) is { } early) return $"after {start} of {arrived.Count} entries: {early}";
            }
        }

        return tables.Answers.DifferenceFrom(Whole(history));
    }

    private string? Evidence(IReadOnlyList<Recorded> history)
    {
        var books = folds.Open(history);
        var places = new OracleBooks(history, null, null).Standing.Select((entry, place) => (entry.Id, place)).ToDictionary();
        foreach (var question in folds.Questions)
            foreach (var row in Folds.Rows(books, question))
            {
                var before = -1;
                foreach (var id in row.Entries)
                {
                    if (!places.TryGetValue(id, out var place)) return $"{question.Name}: a row rests on {id}, which does not stand: {row}";
                    if (place <= before) return $"{question.Name}: entries out of order, or twice: {row}";
                    before = place;
                }
            }

        return null;
    }

    private string? Oracle(IReadOnlyList<Recorded> history, DateOnly? asOf, DateTimeOffset? knownAt) =>
        Agreement.Difference(folds.Open(history, asOf, knownAt), folds.Questions, new OracleBooks(history, asOf, knownAt)) is { } difference
            ? $"{(asOf is { } day ? $"as of {day:yyyy-MM-dd}, " : "")}{(knownAt is { } instant ? $"as known at {instant:O}, " : "")}{difference}"
            : null;

    private DateOnly? Day(IReadOnlyList<Recorded> history) => history.Count == 0 ? null : history.MinBy(recorded => Fixed(recorded, 7)).Entry.On.Day;

    private DateTimeOffset? Instant(IReadOnlyList<Recorded> history) => history.Count == 0 ? null : history.MinBy(recorded => Fixed(recorded, 8)).At;

    private Answers Whole(IReadOnlyList<Recorded> recorded) => Answers.Of(folds.Open(recorded), folds.Questions);

    private uint Fixed(Recorded recorded, uint what) => Chance.Fixed(recorded.Entry.Id.Value, unchecked(seed * 31 + what));
}
