namespace ColonyLineage.Projections.Sums;

/// <summary>How much of the mites a treatment took.</summary>
public static class Efficacy
{
    /// <summary>
    /// With controls that were not treated: Henderson and Tilton 1955, Journal of Economic Entomology 48:157. As a share, below 0 where there were
    /// more mites than the controls account for. Null where there was nothing before, or the controls had none before or after.
    /// </summary>
    public static double? HendersonTilton(double before, double after, double controlBefore, double controlAfter) =>
        before > 0 && controlBefore > 0 && controlAfter > 0 ? 1 - (after * controlBefore / (before * controlAfter)) : null;

    /// <summary>Without controls: what the season itself did is counted as the treatment's.</summary>
    public static double? Naive(double before, double after) => before > 0 ? 1 - (after / before) : null;
}
