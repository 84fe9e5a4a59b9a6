using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections.DoseCompleteness;

namespace ColonyLineage.Projections.OwedWork;

/// <summary>All that is owed on a day: what entries at the colonies left open, their courses, and what whole yards owe.</summary>
public static class Owed
{
    /// <summary>In the order of yards by name, spots, and <see cref="Works.All"/>; what is over by itself is left out.</summary>
    /// <param name="facts">What it is reckoned from.</param>
    /// <param name="ahead">What is to come within so many days; null for all that is to come.</param>
    public static IReadOnlyList<OwedRow> Of(Facts facts, int? ahead = null)
    {
        var whole = facts.WholeYards();
        var said = facts.Open.Where(row => row.Work is Works.Course or Works.StripsOut).ToLookup(row => (row.ColonyId, row.Work, row.OpenedBy));
        var order = Works.All.Select((work, i) => (work, i)).ToDictionary(pair => pair.work, pair => pair.i);
        return
        [
            .. AtColonies(facts).Concat(Courses(facts, whole, said)).Concat(Strips(facts, said)).Concat(new YardWork(facts, whole).Rows())
                .Where(row => row.State != Due.Coming || ahead is not { } days || row.From <= facts.Today.AddDays(days))
                .OrderBy(row => row.Yard, ByNumber.Order).ThenBy(row => row.YardId?.Value).ThenBy(row => row.Spot is not null).ThenBy(row => row.Spot, ByNumber.Order)
                .ThenBy(row => row.Colony, ByNumber.Order).ThenBy(row => row.ColonyId?.Value).ThenBy(row => order.GetValueOrDefault(row.Work, 99)).ThenBy(row => row.What, StringComparer.Ordinal),
        ];
    }

    /// <summary>How work that is due between two days stands to a day.</summary>
    internal static Due State(DateOnly today, DateOnly from, DateOnly? by, DateOnly? putOff, bool passedBy = false) =>
        putOff > today ? Due.PutOff : today < from ? Due.Coming : by < today || (by is null && passedBy) ? Due.Late : Due.Now;

    private static IEnumerable<OwedRow> AtColonies(Facts facts)
    {
        foreach (var row in facts.Open)
        {
            if (row.Work is Works.Course or Works.StripsOut || row.Until < facts.Today) continue;
            var load = row.Work switch { Works.Transfer => StockOf.Boxes, Works.Queenless => StockOf.MatedQueens, Works.Supplement => StockOf.Supplement, _ => (StockOf?)null };
            yield return new OwedRow
            {
                YardId = row.YardId,
                Yard = row.Yard,
                Spot = row.Spot,
                ColonyId = row.ColonyId,
                Colony = row.Colony,
                Work = row.Work,
                What = row.What,
                Of = 1,
                OpenedBy = row.OpenedBy,
                Opened = row.Opened,
                From = row.From,
                By = row.By,
                State = State(facts.Today, row.From, row.By, row.PutOffUntil, row.Work == Works.Transfer && row.Visits > 0),
                Visits = row.Visits,
                PutOffUntil = row.PutOffUntil,
                Load = load,
                LoadAmount = load is null ? null : 1,
                Entries = row.Entries,
            };
        }
    }

    private static IEnumerable<OwedRow> Courses(Facts facts, IReadOnlyList<DoseRow> whole, ILookup<(ColonyId, string, Guid), OpenWorkRow> said)
    {
        // A colony that had nothing owes the course from the yard's first dose on.
        var begun = whole.Where(row => row.LastDoseId is not null).GroupBy(row => (row.YardId, row.Course)).ToDictionary(yard => yard.Key, yard => yard.MinBy(row => (row.LastDose, row.LastDoseId))!);
        foreach (var row in whole)
        {
            if (row.Owed is not > 0) continue;
            var by = row.LastDoseId is not null ? row : begun.GetValueOrDefault((row.YardId, row.Course));
            if (by is not { LastDoseId: { } opened, LastDose: { } day } || Closed(said, row.ColonyId, Works.Course, opened, out var putOff)) continue;
            var from = row.NextFrom ?? day;
            yield return new OwedRow
            {
                YardId = row.YardId,
                Yard = row.Yard,
                Spot = row.Spot,
                ColonyId = row.ColonyId,
                Colony = row.Colony,
                Work = Works.Course,
                What = $"{Number(row.Owed.Value)} of {Number(row.FullDoses!.Value)} full doses of {row.Course} missing{(row.Had == 0 && row.LastDoseId is null ? $"; others in the yard had theirs" : "")}{(row.Story is { } story ? $": {story}" : "")}",
                Of = 1,
                OpenedBy = opened,
                Opened = day,
                From = from,
                By = row.NextBy,
                State = State(facts.Today, from, row.NextBy, putOff),
                Visits = 0,
                PutOffUntil = putOff,
                Load = StockOf.Doses,
                LoadWhich = row.Course,
                LoadAmount = row.Owed,
                Entries = row.LastDoseId is null ? [.. row.Entries.Concat(by.Entries).Distinct()] : row.Entries,
            };
        }
    }

    /// <summary>Strips do not come out by themselves when a season begins: those of the season before count too.</summary>
    private static IEnumerable<OwedRow> Strips(Facts facts, ILookup<(ColonyId, string, Guid), OpenWorkRow> said)
    {
        foreach (var row in facts.Doses)
        {
            if (row is not { Ended: null, OutFrom: { } from, OutOn: null, OwnDoseId: { } opened } || row.Season < facts.ThisSeason - 1) continue;
            if (Closed(said, row.ColonyId, Works.StripsOut, opened, out var putOff)) continue;
            yield return new OwedRow
            {
                YardId = row.YardId,
                Yard = row.Yard,
                Spot = row.Spot,
                ColonyId = row.ColonyId,
                Colony = row.Colony,
                Work = Works.StripsOut,
                What = $"what is left of {row.Course} is to come out",
                Of = 1,
                OpenedBy = opened,
                Opened = row.LastDose ?? from,
                From = from,
                By = row.OutBy,
                State = State(facts.Today, from, row.OutBy, putOff),
                Visits = 0,
                PutOffUntil = putOff,
                Entries = row.Entries,
            };
        }
    }

    private static bool Closed(ILookup<(ColonyId, string, Guid), OpenWorkRow> said, ColonyId colony, string work, Guid opened, out DateOnly? putOff)
    {
        var about = said[(colony, work, opened)].FirstOrDefault();
        putOff = about?.PutOffUntil;
        return about?.Closed == true;
    }

    private static string Number(decimal number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
