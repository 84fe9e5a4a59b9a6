using ColonyLineage.Projections;
using ColonyLineage.Projections.LineComparison;

namespace ColonyLineage.Desk;

/// <summary>What lines are compared from: the traits of all colonies, lives and reigns.</summary>
public sealed record Compared(Measured Measured)
{
    /// <summary>Reads them by the clocks asked for.</summary>
    public static async Task<Compared> OfAsync(IRows rows, Ask ask, CancellationToken cancel)
    {
        var clocks = Gather.Clocks(ask);
        return new Compared(new Measured(
            await rows.RowsAsync(Questions.Traits, clocks, cancel),
            await rows.RowsAsync(Questions.Losses, clocks, cancel),
            await rows.RowsAsync(Questions.Reigns, clocks, cancel),
            (await rows.HouseholdAsync(clocks, cancel)).Outfit,
            Gather.Day(rows, ask)));
    }

    /// <summary>Lines compared by a trait.</summary>
    public Comparison By(Trait trait, ComparedBy by = ComparedBy.Line, int? season = null) => Comparing.Of(Records.Of(Measured, trait, by, season), trait, by);

    /// <summary>A row over many colonies names <see cref="Lived.MostEntries"/> entries at most where it is handed out as data; the records have them all.</summary>
    public static LineRow Short(LineRow row) => row with { Entries = [.. row.Entries.Take(Lived.MostEntries)] };

    /// <inheritdoc cref="Short(LineRow)"/>
    public static LinePairRow Short(LinePairRow row) => row with { Entries = [.. row.Entries.Take(Lived.MostEntries)] };
}
