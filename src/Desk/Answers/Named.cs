using ColonyLineage.Entries;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk;

/// <summary>Finds what a person names.</summary>
public static class Named
{
    /// <summary>The rows of some kinds with that name or id, the oldest first; several where several bear the name.</summary>
    public static IReadOnlyList<RegisterRow> Among(IEnumerable<RegisterRow> rows, string asked, params IReadOnlyList<SubjectKind> kinds)
    {
        Guid? id = Guid.TryParse(asked, out var known) ? known : null;
        return [.. rows.Where(row => (id is null ? string.Equals(row.Name, asked, StringComparison.OrdinalIgnoreCase) : row.Id == id) && kinds.Contains(row.Kind)).OrderBy(row => row.Began).ThenBy(row => row.Id)];
    }
}
