using ColonyLineage.Projections;

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

    /// <summary>The same with one more column before the evidence.</summary>
    public static Answer Of<TRow>(IEnumerable<(TRow Row, object? Value)> rows, AnswerColumn added) where TRow : class, IRow
    {
        var columns = Column.Of<TRow>();
        var at = columns.Count - 1;
        return new Answer(
            [.. columns.Take(at).Select(column => new AnswerColumn(column.Name, column.Type)), added, new AnswerColumn(columns[at].Name, columns[at].Type)],
            [.. rows.Select(row => (object?[])[.. Values(columns, row.Row)[..at], row.Value, columns[at].Value(row.Row)])]);
    }

    private static object?[] Values(IReadOnlyList<Column> columns, IRow row)
    {
        var values = new object?[columns.Count];
        for (var i = 0; i < values.Length; i++) values[i] = columns[i].Value(row);
        return values;
    }
}
