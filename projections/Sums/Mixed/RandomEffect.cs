using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>An effect whose levels are drawn from a population of such levels: lines, mothers, batches.</summary>
/// <param name="Levels">Their names, in the order in which they are reported.</param>
/// <param name="LevelOf">The level of every record; -1 where it has none.</param>
/// <param name="Kinship">How the levels are related, the relationship matrix A for queens; null where they are not.</param>
public sealed record RandomEffect(string Name, IReadOnlyList<string> Levels, IReadOnlyList<int> LevelOf, Matrix<double>? Kinship = null)
{
    /// <summary>The same by its inverse, for the sparse model: see <see cref="SparseModel"/>.</summary>
    public Precision? Precision { get; init; }

    /// <summary>Its variance where that is given; null where it is estimated.</summary>
    public double? GivenVariance { get; init; }

    /// <summary>So many of the levels, the first ones, are reported; null for all. Behind them stand those that only tie them together: ancestors, broods.</summary>
    public int? Reported { get; init; }

    /// <summary>The effect of a column of names, its levels in the order of their names; null stands for none.</summary>
    public static RandomEffect Of(string name, IReadOnlyList<string?> column)
    {
        var levels = column.OfType<string>().Distinct().Order(StringComparer.Ordinal).ToList();
        var at = levels.Select((level, i) => (level, i)).ToDictionary(pair => pair.level, pair => pair.i);
        return new RandomEffect(name, levels, [.. column.Select(level => level is null ? -1 : at[level])]);
    }

    /// <summary>The same with its levels related; the precision may know of further ones, of which there is no record.</summary>
    public RandomEffect RelatedBy(Precision precision) => this with
    {
        Levels = [.. Levels, .. Enumerable.Range(Levels.Count, precision.Kinship.Count - Levels.Count).Select(level => FormattableString.Invariant($"level {level}"))],
        Precision = precision,
        Reported = Levels.Count,
    };
}
