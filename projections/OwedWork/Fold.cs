using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.OwedWork;

/// <summary>See question.md.</summary>
public sealed class OpenWorkQuestion : Question<OpenWorkRow>
{
    public override string Name => "open-work";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    public override IEnumerable<OpenWorkRow> RowsFor(Books books, Subject subject)
    {
        var colony = books.Colony(new ColonyId(subject.Id));
        if (colony.End is not null || colony.Counted.Count == 0) yield break;
        var said = colony.Counted.OfType<OwedEntry>().ToList();
        foreach (var item in new ColonyWork(books).Of(colony))
        {
            var about = said.Where(word => word.Work == item.Work && word.Opened == item.By.Id).ToList();
            if (about.OfType<WorkDoneElsewhere>().Any()) continue;
            yield return Row(books, colony, item, about);
        }

        // What is reckoned over a whole yard finds here what somebody said of it.
        foreach (var about in said.Where(word => word.Work is Works.Course or Works.StripsOut).GroupBy(word => (word.Work, word.Opened)))
        {
            var last = about.Last();
            yield return Row(books, colony, new Item(last.Work, last, last.Why, last.On.Day), [.. about]) with { OpenedBy = last.Opened.Value, Closed = about.Any(word => word is WorkDoneElsewhere) };
        }
    }

    private static OpenWorkRow Row(Books books, ColonyCard colony, Item item, IReadOnlyList<OwedEntry> about)
    {
        var stay = colony.Standing;
        return new OpenWorkRow
        {
            YardId = stay?.Spot.Yard,
            Yard = stay is null ? null : Names.Of(books.Yard(stay.Spot.Yard)),
            Spot = stay?.Spot.Number,
            ColonyId = colony.Colony,
            Colony = Names.Of(colony),
            Work = item.Work,
            What = item.What,
            OpenedBy = item.By.Id.Value,
            Opened = item.By.On.Day,
            From = item.From,
            By = item.DueBy,
            Until = item.Until,
            Visits = ColonyWork.Visits(colony, item.By).Count(),
            PutOffUntil = about.OfType<WorkPutOff>().LastOrDefault()?.Until,
            Closed = false,
            Entries = Evidence.Of([item.By, .. item.More ?? [], .. about]),
        };
    }
}
