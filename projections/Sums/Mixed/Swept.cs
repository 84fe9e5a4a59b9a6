using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>
/// The cross products of columns, levels and records after the groups of the fixed part are swept out: all that a mixed model needs of its
/// data. Records and groups are passed once; what comes after depends on the number of levels only.
/// </summary>
internal sealed class Swept
{
    /// <summary>A column whose sum of squares falls to this part of itself once others are swept out is a combination of them.</summary>
    private const double Combination = 1e-9;

    public int Records { get; }

    /// <summary>Columns that are no combination of the groups and of columns before them.</summary>
    public IReadOnlyList<int> Kept { get; }

    public int[] GroupSizes { get; }

    /// <summary>Means of columns kept, then of levels, in each group.</summary>
    public Matrix<double> GroupMeans { get; }

    public Vector<double> GroupMeanOfY { get; }

    /// <summary>Columns by columns.</summary>
    public Matrix<double> Xx { get; }

    public Matrix<double> Xz { get; }

    public Vector<double> Xy { get; }

    public Matrix<double> Zz { get; }

    public Vector<double> Zy { get; }

    public double Yy { get; }

    public Swept(IReadOnlyList<double> y, FixedPart part, IReadOnlyList<RandomEffect> effects)
    {
        Records = y.Count;
        var (groups, p, q) = (part.Groups.Count, part.Columns.Count, effects.Sum(effect => effect.Levels.Count));
        GroupSizes = new int[groups];
        var meanY = new double[groups];
        var meanX = new double[groups, p];
        var held = Enumerable.Range(0, groups).Select(_ => new SortedDictionary<int, double>()).ToArray();
        for (var i = 0; i < Records; i++)
        {
            var group = part.GroupOf[i];
            GroupSizes[group]++;
            meanY[group] += y[i];
            for (var c = 0; c < p; c++) meanX[group, c] += part.Values[i][c];
            foreach (var level in LevelsOf(effects, i)) held[group][level] = held[group].GetValueOrDefault(level) + 1;
        }

        for (var group = 0; group < groups; group++)
        {
            if (GroupSizes[group] == 0) throw new ArgumentException($"There is no record in group {part.Groups[group]}.", nameof(part));
            meanY[group] /= GroupSizes[group];
            for (var c = 0; c < p; c++) meanX[group, c] /= GroupSizes[group];
        }

        // Deviations from the means of the group, which loses fewer digits than sums of squares do.
        var (xx, xz, xy) = (Matrix<double>.Build.Dense(p, p), Matrix<double>.Build.Dense(p, q), Vector<double>.Build.Dense(p));
        var (zz, zy) = (Matrix<double>.Build.Dense(q, q), Vector<double>.Build.Dense(q));
        for (var i = 0; i < Records; i++)
        {
            var group = part.GroupOf[i];
            var dy = y[i] - meanY[group];
            Yy += dy * dy;
            var dx = new double[p];
            for (var c = 0; c < p; c++) dx[c] = part.Values[i][c] - meanX[group, c];
            for (var c = 0; c < p; c++)
            {
                xy[c] += dx[c] * dy;
                for (var d = 0; d < p; d++) xx[c, d] += dx[c] * dx[d];
            }

            foreach (var level in LevelsOf(effects, i))
            {
                zy[level] += dy;
                for (var c = 0; c < p; c++) xz[c, level] += dx[c];
                foreach (var other in LevelsOf(effects, i)) zz[level, other]++;
            }
        }

        for (var group = 0; group < groups; group++)
            foreach (var (level, times) in held[group])
                foreach (var (other, often) in held[group])
                    zz[level, other] -= times * often / GroupSizes[group];

        Kept = Independent(xx, part);
        Xx = Matrix<double>.Build.Dense(Kept.Count, Kept.Count, (r, c) => xx[Kept[r], Kept[c]]);
        Xz = Matrix<double>.Build.Dense(Kept.Count, q, (r, c) => xz[Kept[r], c]);
        Xy = Vector<double>.Build.Dense(Kept.Count, r => xy[Kept[r]]);
        (Zz, Zy) = (zz, zy);
        GroupMeans = Matrix<double>.Build.Dense(groups, Kept.Count + q);
        for (var group = 0; group < groups; group++)
        {
            for (var c = 0; c < Kept.Count; c++) GroupMeans[group, c] = meanX[group, Kept[c]];
            foreach (var (level, times) in held[group]) GroupMeans[group, Kept.Count + level] = times / GroupSizes[group];
        }

        GroupMeanOfY = Vector<double>.Build.Dense(meanY);
    }

    private static IEnumerable<int> LevelsOf(IReadOnlyList<RandomEffect> effects, int record)
    {
        var before = 0;
        foreach (var effect in effects)
        {
            if (effect.LevelOf[record] >= 0) yield return before + effect.LevelOf[record];
            before += effect.Levels.Count;
        }
    }

    /// <summary>Sweeps column after column; what is left of a combination of earlier ones is nothing.</summary>
    private static List<int> Independent(Matrix<double> xx, FixedPart part)
    {
        var kept = new List<int>();
        var left = xx.Clone();
        for (var c = 0; c < xx.RowCount; c++)
        {
            // Against its size before the groups were swept out: a column that is one value in each group is nothing but dust then.
            double size = 0;
            for (var i = 0; i < part.Values.Count; i++) size += part.Values[i][c] * part.Values[i][c];
            if (left[c, c] <= Combination * Math.Max(size, double.Epsilon)) continue;
            kept.Add(c);
            for (var r = c + 1; r < xx.RowCount; r++)
            {
                var factor = left[r, c] / left[c, c];
                for (var d = c; d < xx.RowCount; d++) left[r, d] -= factor * left[c, d];
            }
        }

        return kept;
    }
}
