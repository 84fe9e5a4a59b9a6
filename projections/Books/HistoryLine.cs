using ColonyLineage.Entries;

namespace ColonyLineage.Projections;

/// <summary>An entry as the history shows it: with when it was recorded and, where it was voided, by which entry and when.</summary>
public sealed record HistoryLine(Recorded Recorded, Recorded? Void)
{
    public Entry Entry => Recorded.Entry;

    /// <summary>Struck through, never gone.</summary>
    public bool IsVoided => Void is not null;

    /// <summary>Why it was voided.</summary>
    public string? VoidedWhy => (Void?.Entry as Voided)?.Why;
}
