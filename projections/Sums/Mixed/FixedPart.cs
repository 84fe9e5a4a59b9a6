namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>
/// What a mixed model takes as given. One grouping gets a mean of its own for each of its groups, and is swept out of everything else at once
/// (yards × seasons may be a thousand); what else there is stands in columns.
/// </summary>
/// <param name="Groups">The names of the groups; one, 'mean', where there is no grouping.</param>
/// <param name="GroupOf">The group of every record.</param>
/// <param name="Columns">Names of the further columns.</param>
/// <param name="Values">Their values, record by record.</param>
public sealed record FixedPart(IReadOnlyList<string> Groups, IReadOnlyList<int> GroupOf, IReadOnlyList<string> Columns, IReadOnlyList<double[]> Values)
{
    /// <summary>One mean for all.</summary>
    public static FixedPart Mean(int records) => new(["mean"], new int[records], [], [.. Enumerable.Repeat(Array.Empty<double>(), records)]);

    /// <summary>A mean for each group of a column of names.</summary>
    public static FixedPart By(IReadOnlyList<string> column)
    {
        var groups = column.Distinct().Order(StringComparer.Ordinal).ToList();
        var at = groups.Select((group, i) => (group, i)).ToDictionary(pair => pair.group, pair => pair.i);
        return new FixedPart(groups, [.. column.Select(group => at[group])], [], [.. Enumerable.Repeat(Array.Empty<double>(), column.Count)]);
    }

    /// <summary>With one further column: a covariate.</summary>
    public FixedPart With(string name, IReadOnlyList<double> values) =>
        this with { Columns = [.. Columns, name], Values = [.. Values.Select((row, i) => (double[])[.. row, values[i]])] };

    /// <summary>With a column for each of its levels but the first, which the others are held against.</summary>
    public FixedPart With(string name, IReadOnlyList<string> levels)
    {
        var part = this;
        foreach (var level in levels.Distinct().Order(StringComparer.Ordinal).Skip(1))
            part = part.With($"{name} {level}", [.. levels.Select(one => one == level ? 1.0 : 0)]);
        return part;
    }
}
