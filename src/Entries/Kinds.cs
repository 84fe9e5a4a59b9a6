using System.Reflection;
using System.Text.Json.Serialization.Metadata;

namespace ColonyLineage.Entries;

/// <summary>All kinds of entry, by type and by stored name.</summary>
public static class Kinds
{
    /// <summary>Every kind, in the order of the stored names.</summary>
    public static readonly IReadOnlyList<(Type Type, KindAttribute Kind)> All =
    [
        .. typeof(Entry).Assembly.GetTypes()
            .Where(type => type is { IsAbstract: false } && type.IsSubclassOf(typeof(Entry)))
            .Select(type => (type, type.GetCustomAttribute<KindAttribute>()!))
            .OrderBy(kind => kind.Item2.Stored, StringComparer.Ordinal),
    ];

    private static readonly Dictionary<Type, KindAttribute> ByType = All.ToDictionary(kind => kind.Type, kind => kind.Kind);

    /// <summary>The kind of an entry.</summary>
    public static KindAttribute Of(Entry entry) => ByType[entry.GetType()];

    /// <summary>The kind of a type of entry.</summary>
    public static KindAttribute Of(Type type) => ByType[type];

    internal static JsonTypeInfo? TypeInfo(string stored) => ByStored.GetValueOrDefault(stored);

    private static readonly Dictionary<string, JsonTypeInfo> ByStored =
        All.ToDictionary(kind => kind.Kind.Stored, kind => EntryJsonContext.Default.GetTypeInfo(kind.Type)!, StringComparer.Ordinal);
}
