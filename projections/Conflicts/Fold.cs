using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.Conflicts;

/// <summary>See question.md.</summary>
public sealed class ConflictsQuestion : Question<ConflictRow>
{
    public override string Name => "conflicts";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    public override IEnumerable<ConflictRow> RowsFor(Books books, Subject subject)
    {
        var colony = books.Colony(new ColonyId(subject.Id));
        var found = new List<(string Name, string What, IReadOnlyList<Entry> Entries)>();
        found.AddRange(OutOfLife(books, colony));
        found.AddRange(TwoOnASpot(books, colony));
        found.AddRange(MovedFromElsewhere(books, colony));
        found.AddRange(Queens(books, colony));
        found.AddRange(TwoQueens(books, colony));
        found.AddRange(Washes(colony));
        found.AddRange(TakenOutOfNothing(colony));
        var settled = colony.Settled;
        foreach (var (name, what, entries) in found.OrderBy(conflict => Place.Of(Last(conflict.Entries))).ThenBy(conflict => conflict.Name, StringComparer.Ordinal))
        {
            var ids = Evidence.Of(entries);
            var by = settled.LastOrDefault(settle => settle.Conflict == name && ids.All(id => settle.Between.Contains(id)));
            yield return new ConflictRow
            {
                Conflict = name,
                ColonyId = colony.Colony,
                Colony = Names.Of(colony),
                YardId = colony.Stays.LastOrDefault()?.Spot.Yard,
                Yard = colony.Stays.LastOrDefault() is { } stay ? Names.Of(books.Yard(stay.Spot.Yard)) : null,
                Spot = colony.Stays.LastOrDefault()?.Spot.Number,
                On = Last(entries).On.Day,
                What = what,
                SettledBy = Acts.For(name),
                Settled = by is not null,
                SettledWhy = by?.Why,
                Entries = by is null ? ids : Evidence.Of([.. entries, by]),
            };
        }
    }

    private static Entry Last(IReadOnlyList<Entry> entries) => entries.MaxBy(Place.Of)!;

    private static IEnumerable<(string, string, IReadOnlyList<Entry>)> OutOfLife(Books books, ColonyCard colony)
    {
        foreach (var entry in colony.OutOfLife)
            if (colony.End is { } end && Place.Of(entry) > Place.Of(end.By))
                yield return ("after-end", $"{Kind(entry)} on {entry.On}, after {Names.Of(colony)} {HowItEnded(books, end)} on {end.On}", [end.By, entry]);
            else
                yield return ("before-beginning", $"{Kind(entry)} on {entry.On}, before {Names.Of(colony)} began on {colony.Began!.On}", [colony.Began, entry]);

        // The colony that another was combined into is concerned as well: what was done to the other may have been meant for it.
        foreach (var combined in colony.Counted.OfType<Combined>().Where(combined => combined.Into == colony.Colony))
        {
            var other = books.Colony(combined.Colony);
            foreach (var entry in other.OutOfLife.Where(entry => other.End?.By == combined && Place.Of(entry) > Place.Of(combined)))
                yield return ("after-end", $"{Kind(entry)} on {Names.Of(other)} on {entry.On}, after it was combined into {Names.Of(colony)} on {combined.On}", [combined, entry]);
        }
    }

    private static IEnumerable<(string, string, IReadOnlyList<Entry>)> TwoOnASpot(Books books, ColonyCard colony)
    {
        foreach (var stay in colony.Stays.Where(stay => !stay.Above))
            foreach (var other in books.Yard(stay.Spot.Yard).Tenants.GetValueOrDefault(stay.Spot.Number, []).Where(other => other != colony.Colony))
                foreach (var theirs in books.Colony(other).Stays.Where(theirs => theirs.Spot == stay.Spot && !theirs.Above))
                    if (Overlap(stay, theirs))
                        yield return ("two-on-a-spot", $"{Names.Of(colony)} and {Names.Of(books.Colony(other))} both on {Names.Of(books.Yard(stay.Spot.Yard))} {stay.Spot.Number} {Together(stay, theirs)}, and none above the other", [stay.CameBy, theirs.CameBy]);
    }

    /// <summary>Two stays overlap where each began before the other certainly ended, in the order of things.</summary>
    private static bool Overlap(Stay one, Stay other) => Begins(one) < Ends(other) && Begins(other) < Ends(one);

    private static string Together(Stay one, Stay other)
    {
        var from = one.From.Day > other.From.Day ? one.From : other.From;
        var ends = new[] { one.To, other.To }.OfType<Occurred>().OrderBy(end => end.Day).ToList();
        return ends.Count == 0 ? $"since {from}" : $"from {from} to {ends[0]}";
    }

    private static Place Begins(Stay stay) => Place.Of(stay.CameBy);

    /// <summary>A dead-out that was found late stood empty for a while: its spot was free from the first day on which it can have died.</summary>
    private static Place Ends(Stay stay) => stay.To is { } to && stay.WentBy is { } by
        ? to.IsExact ? Place.Of(by) : new Place(to.Earliest, 0, default)
        : new Place(DateOnly.MaxValue, int.MaxValue, default);

    private static IEnumerable<(string, string, IReadOnlyList<Entry>)> MovedFromElsewhere(Books books, ColonyCard colony)
    {
        for (var i = 0; i < colony.Stays.Count; i++)
            if (colony.Stays[i].CameBy is Moved { From: { } from } moved && (i == 0 || colony.Stays[i - 1].Spot != from))
                yield return ("moved-from-elsewhere",
                    $"{Names.Of(colony)} was moved on {moved.On} from {Names.Of(books.Yard(from.Yard))} {from.Number}, where the books do not have it",
                    i == 0 ? [moved] : [colony.Stays[i - 1].CameBy, moved]);
    }

    private static IEnumerable<(string, string, IReadOnlyList<Entry>)> Queens(Books books, ColonyCard colony)
    {
        foreach (var reign in colony.Reigns)
        {
            if (reign.Queen is not { } id) continue;
            var queen = books.Queen(id);
            foreach (var (where, by, _) in queen.Placings.Where(placing => placing.Colony != colony.Colony))
                if (Place.Of(by) > Place.Of(reign.CameBy) && (reign.WentBy is null || Place.Of(by) < Place.Of(reign.WentBy)))
                    yield return ("queen-in-two-places", $"{Names.Of(queen)} reigns in {Names.Of(colony)} and was set into {Names.Of(books.Colony(where))} on {by.On}", [reign.CameBy, by]);
            foreach (var conflict in Marks(books, colony, reign, queen)) yield return conflict;
            foreach (var conflict in Mothers(books, queen)) yield return conflict;
        }
    }

    /// <summary>A queen was set into a colony that had one, and nobody said what became of her. (A mother beside her daughter is a supersedure seen.)</summary>
    private static IEnumerable<(string, string, IReadOnlyList<Entry>)> TwoQueens(Books books, ColonyCard colony)
    {
        for (var i = 0; i + 1 < colony.Reigns.Count; i++)
            if (colony.Reigns[i] is { Queen: { } first, Went: HowWent.Replaced, WentBy: QueenIntroduced or QueenAccepted or ColonyEstablished } reign && colony.Reigns[i + 1] is { Queen: { } second } next)
                yield return ("two-queens", $"{Names.Of(books.Queen(second))} was set into {Names.Of(colony)} on {next.CameBy.On}, where {Names.Of(books.Queen(first))} reigned; nothing says what became of her", [reign.CameBy, next.CameBy]);
    }

    /// <summary>A treatment was taken out of which no dose is recorded that could have been in.</summary>
    private static IEnumerable<(string, string, IReadOnlyList<Entry>)> TakenOutOfNothing(ColonyCard colony)
    {
        var inside = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in colony.Counted)
            if (entry is Treated dose) inside.Add(dose.Course);
            else if (entry is TreatmentTakenOut taken && !inside.Contains(taken.Course))
                yield return ("out-of-nothing", $"{taken.Course} was taken out on {taken.On}, and no dose of it is recorded", [taken]);
    }

    private static IEnumerable<(string, string, IReadOnlyList<Entry>)> Marks(Books books, ColonyCard colony, Reign reign, QueenCard queen)
    {
        var born = Pedigree.BirthOf(books, queen.Queen);
        foreach (var look in colony.Counted.OfType<Inspected>())
        {
            if (look.MarkSeen is not { } seen || seen.Colour == MarkColour.Unmarked || !Within(reign, look)) continue;
            if (queen.Marked is { } given && Place.Of(given) <= Place.Of(look))
            {
                if (given.Mark.Colour != seen.Colour)
                    yield return ("mark-against-record", $"{Names.Of(queen)} was marked {Word(given.Mark)} and seen with {Word(seen)} on {look.On}", [given, look]);
            }
            else if (born is { } birth && !Enumerable.Range(birth.When.Earliest.Year, birth.When.Day.Year - birth.When.Earliest.Year + 1).Any(year => QueenMark.DueFor(year) == seen.Colour))
                yield return ("mark-against-record", $"{Names.Of(queen)} was born {birth.When} and seen with {Word(seen)} on {look.On}", [.. birth.By, look]);
        }
    }

    private static IEnumerable<(string, string, IReadOnlyList<Entry>)> Mothers(Books books, QueenCard queen)
    {
        if (Pedigree.MotherOf(books, queen.Queen) is not { } mother) yield break;
        if (Pedigree.BirthOf(books, queen.Queen) is { } birth && Pedigree.BirthOf(books, mother.Mother) is { } hers && hers.When.Earliest > birth.When.Day)
            yield return ("daughter-older", $"{Names.Of(queen)} was born {birth.When}, before her mother {Names.Of(books.Queen(mother.Mother))}, born {hers.When}", [.. mother.By, .. birth.By, .. hers.By]);
        var seen = new HashSet<QueenId>();
        var at = queen.Queen;
        var by = new List<Entry>();
        while (seen.Add(at) && Pedigree.MotherOf(books, at) is { } up)
        {
            by.AddRange(up.By);
            at = up.Mother;
            if (at == queen.Queen)
            {
                yield return ("daughter-older", $"{Names.Of(queen)} is recorded as her own ancestor", by);
                yield break;
            }
        }
    }

    private static IEnumerable<(string, string, IReadOnlyList<Entry>)> Washes(ColonyCard colony)
    {
        foreach (var wash in colony.Counted.OfType<Washed>().Where(wash => wash.Mites > wash.Bees))
            yield return ("too-many-mites", $"{wash.Mites} mites in a wash of {wash.Bees} bees on {wash.On}", [wash]);
    }

    private static bool Within(Reign reign, Entry entry) =>
        Place.Of(entry) >= Place.Of(reign.CameBy) && (reign.WentBy is null || Place.Of(entry) <= Place.Of(reign.WentBy));

    private static string Word(QueenMark mark) => mark.Colour.ToString().ToLowerInvariant();

    private static string Kind(Entry entry) => Kinds.Of(entry).Name.Replace('-', ' ');

    private static string HowItEnded(Books books, ColonyEnd end) => end.How switch
    {
        EndKind.Dead => "was found dead",
        EndKind.Combined => $"was combined into {Names.Of(books.Colony(end.Into!.Value))}",
        EndKind.GivenUp => "was given up",
        _ => "was sold",
    };
}
