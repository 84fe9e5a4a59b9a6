using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.MiteWatch;

namespace ColonyLineage.Server.Answers;

/// <summary>A column of an answer.</summary>
public readonly record struct AnswerColumn(string Name, ColumnType Type);

/// <summary>An answer as plain columns and rows: the same in JSON, CSV and on a terminal.</summary>
/// <param name="Columns">The columns, in order.</param>
/// <param name="Rows">The values, in the order of the columns: text, int, decimal, DateOnly, bool, Guid, Guid[], string[], DateTimeOffset or null.</param>
public sealed record Answer(IReadOnlyList<AnswerColumn> Columns, IReadOnlyList<object?[]> Rows)
{
    /// <summary>An answer of typed rows.</summary>
    public static Answer Of<TRow>(IEnumerable<TRow> rows) where TRow : class, IRow
    {
        var columns = Column.Of<TRow>();
        return new Answer([.. columns.Select(column => new AnswerColumn(column.Name, column.Type))], [.. rows.Select(row => Values(columns, row))]);
    }

    /// <summary>The same with one more column after the question's own.</summary>
    public static Answer Of<TRow>(IEnumerable<(TRow Row, object? Value)> rows, AnswerColumn added) where TRow : class, IRow
    {
        var columns = Column.Of<TRow>();
        return new Answer(
            [.. columns.Select(column => new AnswerColumn(column.Name, column.Type)), added],
            [.. rows.Select(row => (object?[])[.. Values(columns, row.Row), row.Value])]);
    }

    /// <summary>Washes pooled.</summary>
    public static Answer OfPools(IReadOnlyList<Pool> pools) => new(
        [new("yard", ColumnType.Text), new("nth", ColumnType.Whole), new("washes", ColumnType.Whole), new("mites", ColumnType.Whole), new("bees", ColumnType.Whole), new("per100_bees", ColumnType.Number)],
        [.. pools.Select(pool => (object?[])[pool.Yard, pool.Nth, pool.Washes, pool.Mites, pool.Bees, pool.Per100Bees])]);

    /// <summary>Washes by what the colonies were given.</summary>
    public static Answer OfGroups(IReadOnlyList<GroupRow> groups) => new(
        [
            new("treatments", ColumnType.Text), new("round", ColumnType.Whole), new("from", ColumnType.Day), new("to", ColumnType.Day), new("washes", ColumnType.Whole), new("mites", ColumnType.Whole), new("bees", ColumnType.Whole),
            new("mean_per100_bees", ColumnType.Number), new("pooled_per100_bees", ColumnType.Number), new("taken_out", ColumnType.Whole),
        ],
        [.. groups.Select(group => (object?[])[group.Treatments ?? "none", group.Round, group.From, group.To, group.Washes, group.Mites, group.Bees, group.MeanPer100Bees, group.PooledPer100Bees, group.TakenOut])]);

    /// <summary>How many rows there are of each combination of some columns, in the order of their values.</summary>
    /// <exception cref="RefusedException">The answer has no such column.</exception>
    public Answer CountBy(string columns)
    {
        var at = columns.Split(',', StringSplitOptions.TrimEntries).Select(Index).ToArray();
        var counts = Rows.GroupBy(row => string.Join('\u001f', at.Select(i => Key(row[i]))))
            .OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => (object?[])[.. at.Select(i => group.First()[i]), group.Count()]);
        return new Answer([.. at.Select(i => Columns[i]), new AnswerColumn("count", ColumnType.Whole)], [.. counts]);

        int Index(string name)
        {
            for (var i = 0; i < Columns.Count; i++)
                if (Columns[i].Name == name) return i;
            throw Answering.Refuse(Refusals.NotFound, "count-by", $"There is no column '{name}'. Take of {string.Join(", ", Columns.Select(column => column.Name))}.");
        }

        static string Key(object? value) => value switch
        {
            null => "",
            DateOnly day => AnswerJson.Text(day),
            int whole => whole.ToString("D10", System.Globalization.CultureInfo.InvariantCulture),
            Guid[] ids => string.Join(' ', ids),
            string[] texts => string.Join(' ', texts),
            _ => Convert.ToString(value, System.Globalization.CultureInfo.InvariantCulture)!,
        };
    }

    private static object?[] Values(IReadOnlyList<Column> columns, IRow row)
    {
        var values = new object?[columns.Count];
        for (var i = 0; i < values.Length; i++) values[i] = columns[i].Value(row);
        return values;
    }
}
