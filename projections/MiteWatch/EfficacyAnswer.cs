using ColonyLineage.Entries;

namespace ColonyLineage.Projections.MiteWatch;

/// <summary>How much of the mites a yard's treatment took, by the washes before and after it. No mites afterwards is never 'free of mites'.</summary>
public sealed record EfficacyRow : IRow
{
    public required YardId YardId { get; init; }

    public required string Yard { get; init; }

    /// <summary>The days of the washes before.</summary>
    public required DateOnly BeforeFrom { get; init; }

    public required DateOnly BeforeTo { get; init; }

    /// <summary>The first and the last day on which the colonies that were washed afterwards had their last dose.</summary>
    public required DateOnly DosedFrom { get; init; }

    public required DateOnly DosedTo { get; init; }

    /// <summary>The days of the washes after.</summary>
    public required DateOnly AfterFrom { get; init; }

    public required DateOnly AfterTo { get; init; }

    public required int WashesBefore { get; init; }

    public required int MitesBefore { get; init; }

    /// <summary>Mites per 100 bees, pooled, rounded to four decimals.</summary>
    public required decimal Per100Before { get; init; }

    public required int WashesAfter { get; init; }

    public required int MitesAfter { get; init; }

    /// <summary>Mites per 100 bees, pooled, rounded to four decimals.</summary>
    public required decimal Per100After { get; init; }

    /// <summary>Yards that had no dose between and were washed at the same times; empty where there are none.</summary>
    public required IReadOnlyList<string> ControlYards { get; init; }

    /// <summary>Of the controls, before; null without controls.</summary>
    public decimal? ControlPer100Before { get; init; }

    /// <summary>Of the controls, after; null without controls.</summary>
    public decimal? ControlPer100After { get; init; }

    /// <summary>
    /// Percent of the mites that were gone, with what the season did to the controls taken off (Henderson and Tilton 1955), rounded to one decimal; below 0 where
    /// there were more. Null without controls, or where these had no mites.
    /// </summary>
    public decimal? Percent { get; init; }

    /// <summary>The same without controls: what the season did is counted as the treatment's. Null where there were no mites before.</summary>
    public decimal? NaivePercent { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
