using ColonyLineage.Projections;
using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Projections.Relationship;

namespace ColonyLineage.Desk;

/// <summary>What lines are compared from: the traits of all colonies, lives and reigns.</summary>
/// <param name="Pedigree">For predictions by mothers that are related as the books have it; null where nobody asked for that.</param>
public sealed record Compared(Measured Measured, BooksPedigree? Pedigree = null)
{
    /// <summary>Reads them by the clocks asked for.</summary>
    public static async Task<Compared> OfAsync(IRows rows, Ask ask, CancellationToken cancel, bool pedigree = false)
    {
        var clocks = Gather.Clocks(ask);
        return new Compared(new Measured(
            await rows.RowsAsync(Questions.Traits, clocks, cancel),
            await rows.RowsAsync(Questions.Losses, clocks, cancel),
            await rows.RowsAsync(Questions.Reigns, clocks, cancel),
            (await rows.HouseholdAsync(clocks, cancel)).Outfit,
            Gather.Day(rows, ask)), pedigree ? (await Kindred.OfAsync(rows, ask, cancel)).Books : null);
    }

    /// <summary>Lines compared by a trait.</summary>
    public Comparison By(Trait trait, ComparedBy by = ComparedBy.Line, int? season = null) => Comparing.Of(Records.Of(Measured, trait, by, season), trait, by, Pedigree);

    /// <summary>A row over many colonies names <see cref="Lived.MostEntries"/> entries at most where it is handed out as data; the records have them all.</summary>
    public static LineRow Short(LineRow row) => row with { Entries = [.. row.Entries.Take(Lived.MostEntries)] };

    /// <inheritdoc cref="Short(LineRow)"/>
    public static LinePairRow Short(LinePairRow row) => row with { Entries = [.. row.Entries.Take(Lived.MostEntries)] };
}
