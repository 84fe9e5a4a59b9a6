namespace ColonyLineage.Desk;

/// <summary>Sorts rows by the name of an order in the address; a stable sort over the order they come in.</summary>
internal static class Sorting
{
    /// <summary>Rows in the order asked for: a name, or a name with '-' before it for downwards. An unknown name leaves them as they are.</summary>
    public static IEnumerable<TRow> By<TRow>(IReadOnlyList<TRow> rows, string? sort, IReadOnlyDictionary<string, Comparison<TRow>> orders)
    {
        if (sort is null || !orders.TryGetValue(sort.TrimStart('-'), out var order)) return rows;
        var down = sort.StartsWith('-');
        if (down && rows.All(row => order(row, rows[0]) == 0)) return rows.Reverse();
        var comparer = Comparer<TRow>.Create(order);
        return down ? rows.OrderByDescending(row => row, comparer) : rows.OrderBy(row => row, comparer);
    }

    /// <summary>What is not known comes last.</summary>
    public static int NullsLast<T>(T? left, T? right) where T : struct, IComparable<T> =>
        left is { } one ? right is { } other ? one.CompareTo(other) : -1 : right is null ? 0 : 1;

    /// <summary>What is not known comes last.</summary>
    public static int NullsLast(string? left, string? right, Comparison<string?> order) =>
        left is null || right is null ? (left is null ? 1 : 0) - (right is null ? 1 : 0) : order(left, right);
}
