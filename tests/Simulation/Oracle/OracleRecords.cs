using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>Records made of traits, as lines of text in no order: who is compared, as what, with which value.</summary>
public sealed partial class OracleBooks
{
    public List<string> FirstMites() => Of(row => row.FirstWash is { } first ? Ln(first) : null);

    /// <summary>A month's growth, where nothing was given in between.</summary>
    public List<string> MiteGrowth() => Of(row => row is { FirstWash: { } first, LastWash: { } last, DosedBetween: false } && last.On.Day > first.On.Day
        ? (Ln(last) - Ln(first)) * 30 / (last.On.Day.DayNumber - first.On.Day.DayNumber) : null);

    private static double Ln(Washed wash) => Math.Log((double)Math.Round(100m * wash.Mites / wash.Bees, 4) + 0.5);

    private List<string> Of(Func<OracleTraitRow, double?> value)
    {
        var lines = new List<string>();
        foreach (var row in Traits())
            if (value(row) is { } said)
                AddRecord(lines, row, said);
        return lines;
    }

    private void AddRecord(List<string> lines, OracleTraitRow row, double value)
    {
        if (row.At is { } at && !row.TakenOut) lines.Add($"{row.Colony} {row.Queen} {row.Line ?? "no line"} {NameOf(at.Yard)} {row.Season} {value:0.000000}");
    }

    /// <summary>Of the colonies that had been looked at in the season, and were there when its winter began: lost in it, or not.</summary>
    public List<string> WinterLosses(DateOnly today)
    {
        var (from, to) = (new MonthDay(10, 1), new MonthDay(4, 15));
        foreach (var entry in _standing)
            if (entry is OutfitDescribed said)
                (from, to) = (said.WinterFrom ?? from, said.WinterTo ?? to);
        var (lines, rows) = (new List<string>(), Traits());
        foreach (var row in rows)
        {
            // The queen who was there last, of those looked at before the winter began, stands for it.
            var begins = Next(from, new DateOnly(row.Season, SeasonStart(), 1));
            if (row.Seen[0].On.Day >= begins || rows.Exists(other => other.Colony == row.Colony && other.Season == row.Season && other.Seen[0].On.Day < begins && Before(row.Seen[^1], other.Seen[^1]))) continue;
            var colony = Colony(row.Colony);
            var ends = Next(to, begins);
            if (ends > today || MatingNuc(colony) || (colony.Began ?? colony.Counted[0]).On.Day > begins) continue;
            var end = colony.End is null ? (DateOnly?)null : colony.EndFrom.AddDays((colony.End.On.Day.DayNumber - colony.EndFrom.DayNumber) / 2);
            var within = end <= ends;
            if (end < begins || (within && colony.End is Sold or Combined)) continue;
            AddRecord(lines, row, within ? 1 : 0);
        }

        return lines;
    }

    private static DateOnly Next(MonthDay day, DateOnly from)
    {
        for (var at = from; ; at = at.AddDays(1))
            if (at.Month == day.Month && (at.Day == day.Day || (day.Day == 29 && at.Day == 28 && at.AddDays(1).Day == 1)))
                return at;
    }

    private static bool MatingNuc(OracleColony colony)
    {
        Housing? housing = null;
        foreach (var entry in colony.Counted)
            housing = entry switch { ColonyEstablished e => e.Housing ?? housing, NucTransferred e => e.Into, BoxesChanged e => e.Housing, _ => housing };
        return housing == Housing.MatingNuc;
    }

    /// <summary>Of the queens that came, those superseded or lost within a year, and those that stayed for it. Who was set elsewhere in that time was taken out, with a word or without.</summary>
    public List<string> QueensGone(DateOnly today)
    {
        var (lines, rows) = (new List<string>(), Traits());
        foreach (var row in rows)
        {
            if (row.Queen is null || rows.Exists(other => other.Colony == row.Colony && other.Queen == row.Queen && Before(other.Seen[0], row.Seen[0]))) continue;
            OracleReign? first = null;
            foreach (var reign in Colony(row.Colony).Reigns)
                if (first is null && reign.Queen == row.Queen)
                    first = reign;
            var year = first!.To.AddYears(1);
            if (year > today) continue;
            var gone = first.Gone?.On.Day <= year;
            var until = gone ? first.Gone!.On.Day : year;
            if (AllColonies().Any(colony => colony != row.Colony && Colony(colony).Reigns.Any(reign => reign.Queen == row.Queen && reign.To > first.To && reign.To <= until))) continue;
            if (!gone || first.Gone is SupersedureSeen or FoundQueenless or QueenAccepted { Accepted: false } or QueenEnded { How: QueenEnd.Lost or QueenEnd.Died } or Requeened { OldQueen: not (OldQueen.Killed or OldQueen.TakenOut) })
                AddRecord(lines, row, gone ? 1 : 0);
        }

        return lines;
    }
}
