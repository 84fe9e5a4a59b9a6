using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.Relationship;

/// <summary>A brood pattern that was seen while a queen reigned.</summary>
/// <param name="Score">1 (spotty) to 5 (solid): a judgement, no count of cells.</param>
/// <param name="TooSoonAfter">The dose that stops the queen's laying, where the look came too soon after one.</param>
/// <param name="Early">She had come so lately that brood of the queen before her may have been in it.</param>
public sealed record PatternSeen(ColonyCard Colony, Occurred On, int Score, Treated? TooSoonAfter, bool Early, IReadOnlyList<EntryId> Entries);

/// <summary>A queen's brood pattern as it was seen, and what her mating leads one to expect. Side by side, never the one judged by the other. See question.md.</summary>
public static class BroodPattern
{
    /// <summary>Days from the egg to the worker that emerges (handbooks, several): until then there may be brood of the queen before.</summary>
    private const int WorkerDays = 21;

    /// <summary>The brood patterns recorded at her colonies while she reigned there, in the order of things.</summary>
    public static IReadOnlyList<PatternSeen> Seen(Books books, QueenId queen) =>
    [
        .. from placing in books.Queen(queen).Placings
           let colony = books.Colony(placing.Colony)
           from reign in colony.Reigns
           where reign.Queen == queen
           from look in colony.Counted.OfType<Inspected>()
           // Whoever was set into another colony does not reign here, though nobody said so here.
           where Place.During(look, reign.CameBy, reign.WentBy) && Place.During(look, placing.By, placing.Until)
           let score = look.BroodPattern
           where score is not null
           orderby Place.Of(look)
           let dose = LayingStopped.By(books.Outfit, colony, look)
           let early = reign.Came != HowCame.WithColony && look.On.Day.DayNumber - reign.From.Day.DayNumber < WorkerDays
           select new PatternSeen(colony, look.On, score.Value, dose, early, Evidence.Of([look, dose, early ? reign.CameBy : null])),
    ];

    /// <summary>What is to be expected of her brood: her recorded mating as if it were planned. Drones of nobody known are no kin of hers, by the books.</summary>
    /// <param name="pedigree">One that knows her.</param>
    public static PlannedRow Expected(BooksPedigree pedigree, QueenCard queen)
    {
        var drones = pedigree.DronesOf(queen.Queen.Value).Select(link => link.FromId).ToList();
        var expected = Relations.Planned(pedigree, queen.Queen.Value, drones, queen.Mated?.EffectiveDrones ?? (decimal)QueenPedigree.UsualDrones, Relations.UsualAlleles);
        return queen.Mated is { } mated ? expected with { Entries = [.. expected.Entries.Prepend(mated.Id).Distinct()] } : expected;
    }
}
