namespace ColonyLineage.Entries;

/// <summary>Makes lists of subjects out of ids that may be missing.</summary>
internal static class Subjects
{
    public static IEnumerable<Subject> Of(YardId? yard, QueenId? queen = null, QueenId? second = null, ColonyId? colony = null)
    {
        if (colony is { } c) yield return c;
        if (queen is { } q) yield return q;
        if (second is { } s) yield return s;
        if (yard is { } y) yield return y;
    }
}
