using ColonyLineage.Projections;
using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Simulation.Oracle;

namespace ColonyLineage.Simulation;

public static partial class Agreement
{
    /// <summary>What lines are compared by, on the day of the last entry and when all is over.</summary>
    private static string? LineRecords(WholeBooks books, OracleBooks oracle)
    {
        var (traits, lives, reigns) = (books.Rows(Projections.Questions.Traits).ToList(), books.Rows(Projections.Questions.Losses).ToList(), books.Rows(Projections.Questions.Reigns).ToList());
        var last = oracle.Standing[^1].On.Day;
        foreach (var today in (DateOnly[])[last, last.AddYears(3)])
        {
            var measured = new Measured(traits, lives, reigns, books.Books.Outfit, today);
            if (Compared(Trait.WinterLosses, oracle.WinterLosses(today)) is { } winters) return winters;
            if (Compared(Trait.QueenGone, oracle.QueensGone(today)) is { } queens) return queens;
            if (Compared(Trait.MitesFirst, oracle.FirstMites()) is { } mites) return mites;
            if (Compared(Trait.MiteGrowth, oracle.MiteGrowth()) is { } growth) return growth;

            string? Compared(Trait trait, List<string> right) => Differ($"{trait} on {today:yyyy-MM-dd}", Sorted(Records.Of(measured, trait, ComparedBy.Line)
                .Select(record => $"{record.ColonyId} {record.QueenId} {record.Line} {record.YardSeason} {record.Value:0.000000}")), Sorted(right));
        }

        return null;
    }
}
