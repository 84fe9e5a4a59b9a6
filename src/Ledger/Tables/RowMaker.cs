using System.Linq.Expressions;
using System.Runtime.CompilerServices;
using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>Makes typed rows out of what the database reads, one setter a column.</summary>
internal static class RowMaker<TRow> where TRow : class, IRow
{
    private static readonly Action<TRow, NpgsqlDataReader, int>[] Setters = [.. Column.Of<TRow>().Select(Setter)];

    /// <summary>The row that the reader stands on; its columns begin at <paramref name="first"/>.</summary>
    public static TRow Make(NpgsqlDataReader reader, int first = 0)
    {
        // Required properties are set just below: every column is read.
        var row = (TRow)RuntimeHelpers.GetUninitializedObject(typeof(TRow));
        for (var i = 0; i < Setters.Length; i++)
            if (!reader.IsDBNull(first + i))
                Setters[i](row, reader, first + i);
        return row;
    }

    private static Action<TRow, NpgsqlDataReader, int> Setter(Column column)
    {
        var row = Expression.Parameter(typeof(TRow));
        var reader = Expression.Parameter(typeof(NpgsqlDataReader));
        var at = Expression.Parameter(typeof(int));
        var type = Nullable.GetUnderlyingType(column.Property.PropertyType) ?? column.Property.PropertyType;
        var read = Expression.Call(typeof(RowMaker<TRow>), nameof(Read), [type], reader, at);
        var set = Expression.Assign(Expression.Property(row, column.Property), Expression.Convert(read, column.Property.PropertyType));
        return Expression.Lambda<Action<TRow, NpgsqlDataReader, int>>(set, row, reader, at).Compile();
    }

    private static T Read<T>(NpgsqlDataReader reader, int at)
    {
        if (typeof(T) == typeof(ColonyId)) return (T)(object)new ColonyId(reader.GetGuid(at));
        if (typeof(T) == typeof(QueenId)) return (T)(object)new QueenId(reader.GetGuid(at));
        if (typeof(T) == typeof(YardId)) return (T)(object)new YardId(reader.GetGuid(at));
        if (typeof(T) == typeof(IReadOnlyList<EntryId>)) return (T)(object)Array.ConvertAll(reader.GetFieldValue<Guid[]>(at), id => new EntryId(id));
        if (typeof(T) == typeof(IReadOnlyList<string>)) return (T)(object)reader.GetFieldValue<string[]>(at);
        if (typeof(T).IsEnum) return Words<T>.Of[reader.GetString(at)];
        return reader.GetFieldValue<T>(at);
    }

    /// <summary>The words of an enum as <see cref="Column.Value"/> writes them.</summary>
    private static class Words<T>
    {
        public static readonly Dictionary<string, T> Of =
            Enum.GetValues(typeof(T)).Cast<T>().ToDictionary(word => JsonNamingPolicy.CamelCase.ConvertName(word!.ToString()!), StringComparer.Ordinal);
    }
}
