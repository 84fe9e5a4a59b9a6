using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>In which entries somebody saw a queen.</summary>
internal static class Sights
{
    /// <summary>
    /// All of a named queen, colony by colony as she went through them: what was seen of her in her nuc is still known of her
    /// when she reigns elsewhere.
    /// </summary>
    public static IReadOnlyList<Entry> Of(Books books, QueenId queen)
    {
        var seen = new List<Entry>();
        foreach (var placing in books.Queen(queen).Placings)
        {
            var colony = books.Colony(placing.Colony);
            foreach (var reign in colony.Reigns.Where(reign => reign.Queen == queen))
                seen.AddRange(In(colony, reign).Where(entry => Place.During(entry, placing.By, placing.Until)));
        }

        return seen;
    }

    /// <summary>All of one reign, in order.</summary>
    public static IEnumerable<Entry> In(ColonyCard colony, Reign reign) => colony.Counted.Where(entry =>
        SeesQueen(entry) && Place.During(entry, reign.CameBy, reign.WentBy));

    private static bool SeesQueen(Entry entry) => entry is Inspected { Queen: QueenFinding.Seen } or Inspected { MarkSeen: not null }
        or Requeened or QueenIntroduced or SupersedureSeen or QueenAccepted { Accepted: true } or ColonyEstablished { Queen: not null }
        or Combined { QueenKept: not null } or QueenCaged or QueenReleased;
}
