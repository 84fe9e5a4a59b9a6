using System.Collections.Concurrent;
using System.Linq.Expressions;
using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// Whether two rows are kept as the same bytes. A visit compares many thousand values, nearly all of them equal: none is put into a box for it.
/// </summary>
internal static class RowEquality
{
    private static readonly ConcurrentDictionary<Type, Func<IRow, IRow, bool>> Known = [];

    /// <summary>The comparison of rows that have these columns.</summary>
    public static Func<IRow, IRow, bool> Of(IReadOnlyList<Column> columns) => Known.GetOrAdd(columns[0].Property.ReflectedType!, row => Make(row, columns));

    private static Func<IRow, IRow, bool> Make(Type row, IReadOnlyList<Column> columns)
    {
        var (one, other) = (Expression.Parameter(typeof(IRow)), Expression.Parameter(typeof(IRow)));
        var (left, right) = (Expression.Convert(one, row), Expression.Convert(other, row));
        var same = columns.Select(column => column.Property).Select(Expression (property) => Expression.Call(
            typeof(RowEquality), nameof(Same), [property.PropertyType], Expression.Property(left, property), Expression.Property(right, property)));
        return Expression.Lambda<Func<IRow, IRow, bool>>(same.Aggregate(Expression.AndAlso), one, other).Compile();
    }

    private static bool Same<T>(T one, T other) => (one, other) switch
    {
        (string left, string right) => left == right,
        // 1.5 and 1.50 are equal numbers, and not the same bytes.
        (decimal left, decimal right) => left == right && left.Scale == right.Scale,
        (IReadOnlyList<EntryId> left, IReadOnlyList<EntryId> right) => left.SequenceEqual(right),
        (IReadOnlyList<string> left, IReadOnlyList<string> right) => left.SequenceEqual(right),
        _ => EqualityComparer<T>.Default.Equals(one, other),
    };
}
