using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json.Serialization;
using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>A field of a kind of entry that a mapping can fill.</summary>
/// <param name="Name">As in the entry's JSON.</param>
/// <param name="Type">Without the question mark, and of one element where it is a list.</param>
/// <param name="IsList">It takes several values.</param>
/// <param name="Required">The entry cannot be without it.</param>
/// <param name="IsAbout">It names what the entry is about, or who reports it: that alone is nothing to record.</param>
internal sealed record KindField(string Name, Type Type, bool IsList, bool Required, bool IsAbout)
{
    private static readonly HashSet<string> NotForMappings = ["id", "on", "act", "order"];
    private static readonly HashSet<Type> WithParts = [typeof(Spot), typeof(Quantity), typeof(QueenMark), typeof(Temperature)];

    /// <summary>The parts of a spot, a quantity, a mark or a temperature; empty for all else.</summary>
    public IReadOnlyList<KindField> Parts => !WithParts.Contains(Type) ? [] :
        [.. Type.GetConstructors()[0].GetParameters().Select(part => new KindField(Camel(part.Name!), part.ParameterType, false, !part.HasDefaultValue, false))];

    /// <summary>The fields of a kind, in the order in which it lists them.</summary>
    public static IReadOnlyList<KindField> Of(Type kind)
    {
        var stream = typeof(ColonyEntry).IsAssignableFrom(kind) ? "colony" : typeof(QueenEntry).IsAssignableFrom(kind) ? "queen" : null;
        return
        [
            .. kind.GetProperties().Where(property => property.SetMethod is { IsPublic: true }
                    && property.GetCustomAttribute<JsonIgnoreAttribute>()?.Condition != JsonIgnoreCondition.Always)
                .Where(property => !NotForMappings.Contains(Camel(property.Name)))
                .Select(property => Of(property, stream)),
        ];
    }

    private static KindField Of(PropertyInfo property, string? stream)
    {
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        var isList = type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>);
        var name = Camel(property.Name);
        return new KindField(
            name, isList ? type.GetGenericArguments()[0] : type, isList, property.IsDefined(typeof(RequiredMemberAttribute)),
            name is "by" or "visit" || name == stream || (stream is null && name is "yard" or "spot"));
    }

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
