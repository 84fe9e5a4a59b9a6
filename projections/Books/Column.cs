using System.Reflection;
using System.Text.Json;
using ColonyLineage.Entries;

namespace ColonyLineage.Projections;

/// <summary>What a column holds.</summary>
public enum ColumnType
{
    /// <summary>Text.</summary>
    Text,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>A decimal number.</summary>
    Number,

    /// <summary>A day.</summary>
    Day,

    /// <summary>Yes or no.</summary>
    Flag,

    /// <summary>The id of a colony, queen or yard.</summary>
    Id,

    /// <summary>Ids of entries.</summary>
    Entries,

    /// <summary>Several texts.</summary>
    Texts,
}

/// <summary>One column of a question's rows: a public property of the row, under its name in lower case with underscores.</summary>
public sealed class Column
{
    private static readonly Dictionary<Type, IReadOnlyList<Column>> Known = [];
    private readonly PropertyInfo _property;

    private Column(PropertyInfo property)
    {
        _property = property;
        Name = JsonNamingPolicy.SnakeCaseLower.ConvertName(property.Name);
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        Type = type switch
        {
            _ when type == typeof(string) || type.IsEnum => ColumnType.Text,
            _ when type == typeof(int) => ColumnType.Whole,
            _ when type == typeof(decimal) => ColumnType.Number,
            _ when type == typeof(DateOnly) => ColumnType.Day,
            _ when type == typeof(bool) => ColumnType.Flag,
            _ when type == typeof(IReadOnlyList<EntryId>) => ColumnType.Entries,
            _ when type == typeof(IReadOnlyList<string>) => ColumnType.Texts,
            _ when type == typeof(ColonyId) || type == typeof(QueenId) || type == typeof(YardId) || type == typeof(Guid) => ColumnType.Id,
            _ => throw new NotSupportedException($"A row cannot hold a {type.Name}: {property.DeclaringType!.Name}.{property.Name}."),
        };
    }

    /// <summary>The name in SQL, CSV and JSON.</summary>
    public string Name { get; }

    /// <summary>What it holds.</summary>
    public ColumnType Type { get; }

    /// <summary>The property of the row.</summary>
    public PropertyInfo Property => _property;

    /// <summary>The value in a row, as the plain type that SQL takes: text, int, decimal, DateOnly, bool, Guid, Guid[], string[] or null.</summary>
    public object? Value(IRow row) => _property.GetValue(row) switch
    {
        null => null,
        ColonyId id => id.Value,
        QueenId id => id.Value,
        YardId id => id.Value,
        IReadOnlyList<EntryId> ids => ids.Select(id => id.Value).ToArray(),
        IReadOnlyList<string> texts => texts.ToArray(),
        Enum word => JsonNamingPolicy.CamelCase.ConvertName(word.ToString()),
        var plain => plain,
    };

    /// <summary>The columns of a type of row, in the order of its properties.</summary>
    public static IReadOnlyList<Column> Of<TRow>() where TRow : IRow
    {
        lock (Known)
        {
            if (!Known.TryGetValue(typeof(TRow), out var columns))
                Known.Add(typeof(TRow), columns = [.. typeof(TRow).GetProperties(BindingFlags.Public | BindingFlags.Instance)
                    .Where(property => property.GetMethod is not null && property.SetMethod is not null)
                    .Select(property => new Column(property))]);
            return columns;
        }
    }
}
