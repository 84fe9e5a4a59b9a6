using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.SpotStory;

/// <summary>See question.md. Rows are worked out colony by colony, since a colony's history goes with it from spot to spot.</summary>
public sealed class SpotStoryQuestion : Question<BandRow>
{
    public override string Name => "spot-story";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    public override IEnumerable<BandRow> RowsFor(Books books, Subject subject)
    {
        var colony = books.Colony(new ColonyId(subject.Id));
        for (var i = 0; i < colony.Stays.Count; i++)
            yield return Row(books, colony, i);
    }

    private static BandRow Row(Books books, ColonyCard colony, int index)
    {
        var stay = colony.Stays[index];
        var from = Place.Of(stay.CameBy);
        var to = stay.WentBy is { } went ? Place.Of(went) : (Place?)null;
        var makers = index == 0 ? Makers(colony) : [];
        // What made it belongs to its first spot, even where it stands a step before it in the order of the day.
        var done = colony.Counted.Where(entry => (Place.Of(entry) >= from && (to is null || Place.Of(entry) <= to)) || makers.Contains(entry)).ToList();
        return new BandRow
        {
            YardId = stay.Spot.Yard,
            Yard = Names.Of(books.Yard(stay.Spot.Yard)),
            Spot = stay.Spot.Number,
            ColonyId = colony.Colony,
            Colony = Names.Of(colony),
            Above = stay.Above,
            From = stay.From.Earliest,
            GoneFrom = stay.To?.Earliest,
            GoneTo = stay.To?.Day,
            Came = Came(books, colony, index, makers),
            Up = index == 0 ? [.. makers.Select(maker => Names.Of(books.Colony(maker.Colony)))] : [SpotName(books, colony.Stays[index - 1].Spot)],
            Went = Went(books, colony, index),
            Down = [.. Down(books, colony, index, done)],
            Queens = [.. Queens(books, colony, from, to)],
            Done = done.Count,
            Entries = Evidence.Of(done),
        };
    }

    private static List<SplitFrom> Makers(ColonyCard colony) => colony.Counted.OfType<SplitFrom>().Where(split => split.Into == colony.Colony).ToList();

    private static string Came(Books books, ColonyCard colony, int index, List<SplitFrom> makers)
    {
        if (index > 0) return $"moved from {SpotName(books, colony.Stays[index - 1].Spot)}";
        if (makers.Count > 0) return $"made from {string.Join(", ", makers.Select(maker => Names.Of(books.Colony(maker.Colony))))}";
        return colony.Began?.How switch
        {
            HowEstablished.Split => "made, by whom is not recorded",
            HowEstablished.Nuc => "came as a nuc",
            HowEstablished.Package => "came as a package",
            HowEstablished.Swarm => "taken as a swarm",
            HowEstablished.Bought => "bought",
            HowEstablished.OpeningCount => "was there when the books were opened",
            _ => "set here",
        };
    }

    private static string? Went(Books books, ColonyCard colony, int index)
    {
        if (index + 1 < colony.Stays.Count) return $"moved to {SpotName(books, colony.Stays[index + 1].Spot)}";
        return colony.End?.How switch
        {
            EndKind.Dead => "found dead",
            EndKind.Combined => $"combined into {Names.Of(books.Colony(colony.End.Into!.Value))}",
            EndKind.GivenUp => $"given up: {colony.End.Why}",
            EndKind.Sold => "sold",
            _ => null,
        };
    }

    private static IEnumerable<string> Down(Books books, ColonyCard colony, int index, List<Entry> done)
    {
        foreach (var split in done.OfType<SplitFrom>().Where(split => split.Colony == colony.Colony)) yield return Names.Of(books.Colony(split.Into));
        if (index + 1 < colony.Stays.Count) yield return SpotName(books, colony.Stays[index + 1].Spot);
        else if (colony.End?.Into is { } into) yield return Names.Of(books.Colony(into));
    }

    private static IEnumerable<string> Queens(Books books, ColonyCard colony, Place start, Place? end) =>
        from reign in colony.Reigns
        where (end is null || Place.Of(reign.CameBy) <= end) && (reign.WentBy is null || Place.Of(reign.WentBy) >= start)
        select reign.Queen is { } queen ? Names.Of(books.Queen(queen)) : "unnamed queen";

    private static string SpotName(Books books, Spot spot) => $"{Names.Of(books.Yard(spot.Yard))} {spot.Number}";
}
