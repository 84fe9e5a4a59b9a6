using ColonyLineage.Projections.DoseCompleteness;

namespace ColonyLineage.Desk;

/// <summary>The further filters of 'dose completeness', the same for its page, its CSV and its JSON.</summary>
/// <param name="Course">One course by its name; null for all.</param>
/// <param name="State"><c>owed</c>, <c>complete</c> or <c>too-many</c>; null for all.</param>
/// <param name="Ended">Colonies that have ended are shown as well.</param>
public sealed record DoseFilter(string? Course, string? State, bool Ended)
{
    /// <summary>The filter that an address asks for.</summary>
    public static DoseFilter From(Func<string, string?> query) => new(query("course"), query("state") is "owed" or "complete" or "too-many" ? query("state") : null, query("ended") == "yes");

    /// <summary>The rows that answer.</summary>
    public IEnumerable<DoseRow> Apply(IEnumerable<DoseRow> rows) => rows.Where(row =>
        (Course is null || row.Course == Course)
        && (Ended || row.Ended is null)
        && State switch
        {
            "owed" => row.Owed > 0,
            "complete" => row.Owed == 0,
            "too-many" => row.TooMany > 0,
            _ => true,
        });
}
