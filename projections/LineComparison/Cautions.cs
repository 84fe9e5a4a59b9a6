namespace ColonyLineage.Projections.LineComparison;

/// <summary>What stands in the way of taking a line's figure at its word, in words; the bounds are common practice, no source.</summary>
internal static class Cautions
{
    private const int FewColonies = 10;
    private const double Many = .25;

    public static IReadOnlyList<string> Of(IReadOnlyList<LineRecord> records, Trait trait, ComparedBy by)
    {
        // Of one queen there is hardly more than one colony: her reliability says how much that tells.
        if (by == ComparedBy.Queen) return [.. OfQueen(records)];
        var cautions = new List<string>();
        var colonies = records.Select(record => record.ColonyId).Distinct().Count();
        if (colonies < FewColonies) cautions.Add(FormattableString.Invariant($"{colonies} colonies only"));
        if (Share(records, record => record.Made) is > Many and var made) cautions.Add(FormattableString.Invariant($"{made:P0} were made in the season itself: nucs lag behind and start with fewer mites"));
        if (Share(records, record => record.Supposed) is > 0 and var supposed) cautions.Add(FormattableString.Invariant($"of {Math.Max(.01, supposed):P0} the mother is supposed, by supersedure: the line drifts with unknown drones"));
        if (trait is Trait.MitesFirst or Trait.MitesLast or Trait.MiteGrowth or Trait.WinterLosses && records.Select(record => record.Treatments).Distinct().Count() > 1)
            cautions.Add("treated unlike each other: who gets treated more may be who has more mites");
        return cautions;
    }

    private static IEnumerable<string> OfQueen(IReadOnlyList<LineRecord> records)
    {
        if (records.Count(record => record.Made) is > 0 and var made)
            yield return FormattableString.Invariant($"{(made == records.Count ? made == 1 ? "her record is" : "all her records are" : $"{made} of her {records.Count} records {(made == 1 ? "is" : "are")}")} of a nuc in the season that it was made: nucs lag behind and start with fewer mites");
        if (records.Any(record => record.Supposed)) yield return "her mother is supposed, by supersedure";
    }

    private static double Share(IReadOnlyList<LineRecord> records, Func<LineRecord, bool> of) => (double)records.Count(of) / records.Count;
}
