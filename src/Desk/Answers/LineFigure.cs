using ColonyLineage.Projections.LineComparison;

namespace ColonyLineage.Desk;

/// <summary>A line with the figure that is drawn of it, and its 95 % interval: how far it lies from the mean of the lines compared.</summary>
public sealed record LineFigure(LineRow Row, decimal Value, decimal Lower, decimal Upper)
{
    /// <summary>Of the standard normal distribution: 95 % lie within so many standard errors.</summary>
    private const decimal Within = 1.959964m;

    /// <summary>
    /// Those that stand beside each other: of lines the adjusted difference; of mothers and makers, of which nothing is claimed, the prediction with its error. Lines of one mother are apart.
    /// </summary>
    public static IReadOnlyList<LineFigure> Of(Comparison comparison) =>
    [
        .. comparison.Lines.Where(row => WhyApart(comparison, row) is null).Select(row => comparison.By == ComparedBy.Line
            ? new LineFigure(row, row.Difference!.Value, row.Lower ?? row.Difference.Value, row.Upper ?? row.Difference.Value)
            : new LineFigure(row, row.Blup!.Value, row.Blup.Value - (Within * (row.BlupError ?? 0)), row.Blup.Value + (Within * (row.BlupError ?? 0)))),
    ];

    /// <summary>Why a line stands apart from those beside each other; null where it does not.</summary>
    public static string? WhyApart(Comparison comparison, LineRow row)
    {
        if (row.Blup is null) return comparison.Lines.Any(other => other.Blup is not null) ? "shares no yard and season with those compared, nor is it held together with them by others" : "nothing could be compared";
        if (comparison.By != ComparedBy.Line) return null;
        if (row.Difference is null) return "cannot be told from yard, season, age or treatment";
        return row.Mothers < 2 ? "has one mother only: what is hers and what is the line's cannot be told apart" : null;
    }
}
