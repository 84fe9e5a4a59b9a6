using ColonyLineage.Entries;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk.Forms;

/// <summary>Finds what a person calls by its name or number.</summary>
public sealed class Namer(IReadOnlyList<RegisterRow> register)
{
    private readonly ILookup<(SubjectKind, string), RegisterRow> _byName = register.ToLookup(row => (row.Kind, row.Name.ToUpperInvariant()));
    private readonly Dictionary<Guid, RegisterRow> _byId = register.DistinctBy(row => row.Id).ToDictionary(row => row.Id);

    /// <summary>All rows.</summary>
    public IReadOnlyList<RegisterRow> Register => register;

    /// <summary>The row of an id.</summary>
    public RegisterRow? Of(Guid id) => _byId.GetValueOrDefault(id);

    /// <summary>
    /// Those that bear a name, or have the id. Where several do, those that live come before those that ended, and those of the
    /// yard at hand before others: numbers are used again.
    /// </summary>
    public IReadOnlyList<RegisterRow> Find(SubjectKind kind, string name, string? yard = null)
    {
        if (Guid.TryParse(name, out var id) && _byId.TryGetValue(id, out var known) && known.Kind == kind) return [known];
        IReadOnlyList<RegisterRow> found = [.. _byName[(kind, name.ToUpperInvariant())]];
        found = Narrow(found, row => row.Ended is null);
        return yard is null ? found : Narrow(found, row => row.YardId?.Value.ToString() == yard || row.Yard == yard);
    }

    /// <summary>The one thing of a name or id; null where there is none or more than one.</summary>
    public RegisterRow? One(SubjectKind kind, string? name) => name is not null && Find(kind, name) is { Count: 1 } found ? found[0] : null;

    /// <summary>What to write in a blank for it: its name, or its id where the name does not tell.</summary>
    public string Write(RegisterRow row) => Find(row.Kind, row.Name) is { Count: 1 } found && found[0].Id == row.Id ? row.Name : row.Id.ToString();

    private static IReadOnlyList<RegisterRow> Narrow(IReadOnlyList<RegisterRow> found, Func<RegisterRow, bool> better) =>
        found.Count > 1 && found.Any(better) ? [.. found.Where(better)] : found;
}
