namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>How the levels of an effect are related, by the inverse of their kinship: it has few entries where the kinship itself has none that is nothing.</summary>
/// <param name="Entries">Rows, columns and values, each pair once, either way round; the diagonal among them.</param>
/// <param name="LogDeterminant">ln of the determinant of the inverse.</param>
/// <param name="Kinship">The diagonal of the kinship: the variance of each level before the records, in units of the effect's.</param>
public sealed record Precision(IReadOnlyList<(int Row, int Column, double Value)> Entries, double LogDeterminant, IReadOnlyList<double> Kinship)
{
    /// <summary>Levels that are not related.</summary>
    public static Precision None(int levels) => new([.. Enumerable.Range(0, levels).Select(level => (level, level, 1.0))], 0, [.. Enumerable.Repeat(1.0, levels)]);
}
