using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.QueensByAge;

namespace ColonyLineage.Projections.OwedWork;

/// <summary>Something left open at a colony.</summary>
/// <param name="More">Further entries that it rests on.</param>
internal sealed record Item(string Work, Entry By, string What, DateOnly From, DateOnly? DueBy = null, DateOnly? Until = null, IReadOnlyList<Entry>? More = null);

/// <summary>Walks through a colony's entries in the order of things, and notes what each leaves open and what closes it.</summary>
internal sealed class ColonyWork(Books books)
{
    private readonly Dictionary<string, Item> _open = [];
    private DateOnly? _laid;

    public IReadOnlyList<Item> Of(ColonyCard colony)
    {
        foreach (var entry in colony.Counted) Take(colony, entry);
        if (Old(colony) is { } old) _open[old.Work] = old;
        if (Supplement(colony) is { } supplement) _open[supplement.Work] = supplement;
        return [.. Works.All.Where(_open.ContainsKey).Select(work => _open[work])];
    }

    private void Take(ColonyCard colony, Entry entry)
    {
        switch (entry)
        {
            case ColonyEstablished { Housing: Housing.NucBox } established when established.Colony == colony.Colony:
                Open(Works.Transfer, entry, "set in its nuc box", 1);
                break;
            case BoxesChanged { Housing: Housing.NucBox }:
                Open(Works.Transfer, entry, "set into a nuc box", 1);
                break;
            case NucTransferred or BoxesChanged:
                Close(Works.Transfer, Works.Combined);
                break;
            case Requeened or QueenIntroduced:
                Close(Works.Queenless, Works.Cell, Works.QueenAgain);
                Open(Works.Laying, entry, "a queen was given", Habits.LayingFrom, Habits.LayingBy);
                break;
            case QueenCellGiven:
                Close(Works.Queenless, Works.QueenAgain);
                Open(Works.Cell, entry, "a queen cell was given", Habits.CellFrom, Habits.CellBy);
                break;
            case QueenAccepted { Accepted: true }:
                Close(Works.Laying, Works.Cell, Works.Queenless, Works.QueenAgain);
                _laid = entry.On.Day;
                break;
            case QueenAccepted or FoundQueenless or QueenKilled:
                Close(Works.Laying, Works.Cell, Works.QueenAgain);
                Open(Works.Queenless, entry, entry switch { QueenAccepted => "the queen was not accepted", FoundQueenless => "found without a queen", _ => "its queen was killed" }, 0, Habits.QueenlessBy);
                break;
            case SupersedureSeen:
                Close(Works.Laying, Works.Cell, Works.Queenless, Works.QueenAgain);
                _laid = entry.On.Day;
                break;
            case Combined combined when combined.Into == colony.Colony:
                if (combined.QueenKept is not null) Close(Works.Queenless);
                Open(Works.Combined, entry, $"{Names.Of(books.Colony(combined.Colony))} was combined into it", Habits.CombinedFrom, Habits.CombinedBy);
                break;
            case FeederPutOn when !_open.ContainsKey(Works.FeederOff):
                Open(Works.FeederOff, entry, "a feeder was put on", Habits.FeederFrom, Habits.FeederBy);
                break;
            case FeederTakenOff:
                Close(Works.FeederOff);
                break;
            case Inspected look:
                Look(colony, look);
                break;
        }
    }

    private void Look(ColonyCard colony, Inspected look)
    {
        Close(Works.Combined);
        var lays = look.EggsSeen == true || look.Queen is QueenFinding.Seen or QueenFinding.Queenright;
        if (lays) Close(Works.Laying, Works.Cell, Works.Queenless);
        else if (look.Queen is QueenFinding.VirginSeen) Close(Works.Cell);
        if (Doubt(look) is { } doubt)
        {
            if (look.BroodPattern <= 2 && LayingStopped.By(books.Outfit, colony, look) is { } dose && LayingStopped.Until(books.Outfit, dose) is { } until)
                _open[Works.QueenAgain] = new Item(Works.QueenAgain, look, $"{doubt} on {Day(look)}: too soon after {dose.Course} to judge", until.AddDays(1), until.AddDays(1 + Habits.DoubtBy), More: [dose]);
            else Open(Works.QueenAgain, look, doubt, Habits.DoubtFrom, Habits.DoubtBy);
        }
        else if (lays || look.BroodPattern is not null)
        {
            Close(Works.QueenAgain);
            _laid = look.On.Day;
        }
    }

    /// <summary>What is doubtful about the queen by a look; null where nothing is.</summary>
    private static string? Doubt(Inspected look) => look switch
    {
        { Queen: QueenFinding.DroneLayer } => "a drone layer was seen",
        { Queen: QueenFinding.LayingWorkers } => "workers lay",
        { Queen: QueenFinding.Queenless } => "no queen by a look",
        { Queen: QueenFinding.NotSeen, EggsSeen: not true } => "queen not seen, and no eggs",
        { BroodPattern: <= 2 } => $"brood pattern {look.BroodPattern} of 5",
        { EggsSeen: false, Queen: null } => "no eggs",
        _ => null,
    };

    /// <summary>The queen was born so many seasons ago as the outfit calls old. Another look is owed before each winter.</summary>
    private Item? Old(ColonyCard colony)
    {
        if (QueensByAgeQuestion.Reigning(books, colony) is not { Queen: { } queen } reign || Pedigree.BirthOf(books, queen) is not { } birth) return null;
        var (outfit, season) = (books.Outfit, Season.Of(birth.When.Day, books.Outfit.SeasonStartMonth));
        var winter = outfit.WinterFrom.From(Season.FirstDay(season + outfit.OldQueenSeasons, outfit.SeasonStartMonth));
        if (_laid is { } laid && laid >= winter.AddDays(-Habits.OldBefore)) winter = outfit.WinterFrom.From(laid.AddDays(Habits.OldBefore + 1));
        var by = birth.By[^1];
        return new Item(Works.OldQueen, by, $"{Names.Of(books.Queen(queen))} was born in season {season}", winter.AddDays(-Habits.OldBefore), winter.AddDays(Habits.OldAfter), More: [.. birth.By, reign.CameBy]);
    }

    private static Item? Supplement(ColonyCard colony)
    {
        if (colony.Counted.OfType<SupplementGiven>().LastOrDefault() is not { } last) return null;
        // Every other round: the round after it passes without, the next one is owed.
        var next = Visits(colony, last).FirstOrDefault();
        return next == default ? null : new Item(Works.Supplement, last, $"{last.Supplement} was given on {Day(last)}, and none on the round after", next.AddDays(1), Until: last.On.Day.AddDays(Habits.SupplementFor));
    }

    /// <summary>The days after an entry on which something was recorded at the colony.</summary>
    public static IEnumerable<DateOnly> Visits(ColonyCard colony, Entry since) =>
        colony.Counted.Where(entry => entry is not OwedEntry && entry.On.Day > since.On.Day).Select(entry => entry.On.Day).Distinct();

    private void Open(string work, Entry by, string what, int from, int? dueBy = null) =>
        _open[work] = new Item(work, by, $"{what} on {Day(by)}", by.On.Day.AddDays(from), dueBy is { } days ? by.On.Day.AddDays(days) : null);

    private void Close(params ReadOnlySpan<string> works)
    {
        foreach (var work in works) _open.Remove(work);
    }

    private static string Day(Entry entry) => entry.On.Day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
