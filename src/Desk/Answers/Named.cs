using ColonyLineage.Entries;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk;

/// <summary>Finds what a person names.</summary>
internal static class Named
{
    /// <summary>The rows of a kind with that name or id, the oldest first; several where several bear the name.</summary>
    public static IReadOnlyList<RegisterRow> Among(IEnumerable<RegisterRow> rows, SubjectKind kind, string asked) =>
    [
        .. rows.Where(row => row.Kind == kind && (Guid.TryParse(asked, out var id) ? row.Id == id : string.Equals(row.Name, asked, StringComparison.OrdinalIgnoreCase)))
            .OrderBy(row => row.Began).ThenBy(row => row.Id),
    ];
}
