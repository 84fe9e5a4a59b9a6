using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Relationship;

/// <summary>Answers out of the pedigree that the books hold. See question.md.</summary>
public static class Relations
{
    /// <summary>Empty cells of a hundred that make a pattern look spotty (genetics of the check values; a bound of ours).</summary>
    public const int Spotty = 16;

    /// <summary>Effective number of sex alleles where nobody says another: few outfits have the 18.9 that Adams et al. 1977, Genetics 86:583, found in one population (a choice of ours).</summary>
    public const decimal UsualAlleles = 10;

    /// <summary>Every queen of some.</summary>
    public static IReadOnlyList<InbreedingRow> Inbreeding(BooksPedigree books, IEnumerable<Guid> queens) =>
    [
        .. queens.Where(queen => books.NumberOf(queen) is not null).Select(queen =>
        {
            var (mother, mating, drones) = (books.MotherOf(queen), books.MatingOf(queen), books.DronesOf(queen));
            return new InbreedingRow
            {
                QueenId = new QueenId(queen),
                Queen = books.NameOf(queen),
                MotherId = mother is null ? null : new QueenId(mother.FromId),
                Mother = mother?.From,
                MotherIs = mother?.Sure,
                Drones = [.. drones.Select(link => link.From)],
                Inbreeding = Rounded(books.Pedigree.Inbreeding(books.NumberOf(queen)!.Value)),
                BroodInbreeding = Rounded(books.Pedigree.BroodInbreeding(mating)),
                BetweenWorkers = Rounded(2 * books.Pedigree.BetweenBrood(mating)),
                Generations = Upwards(books, queen).Count(),
                Entries = Evidence(books, [queen]),
            };
        }),
    ];

    /// <summary>A queen to each of some others.</summary>
    public static IReadOnlyList<RelationshipRow> To(BooksPedigree books, Guid queen, IEnumerable<Guid> others) =>
    [
        .. others.Where(other => other != queen && books.NumberOf(other) is not null).Select(other =>
        {
            var coancestry = books.Pedigree.Coancestry(books.NumberOf(queen)!.Value, books.NumberOf(other)!.Value);
            return new RelationshipRow
            {
                QueenId = new QueenId(queen),
                Queen = books.NameOf(queen),
                OtherId = new QueenId(other),
                Other = books.NameOf(other),
                Are = Named(books, queen, other),
                Coancestry = Rounded(coancestry),
                Additive = Rounded(Relatedness.Additive(coancestry)),
                BetweenColonies = Rounded(2 * books.Pedigree.BetweenBroods(books.MatingOf(queen), books.MatingOf(other))),
                Entries = Evidence(books, [queen, other]),
            };
        }),
    ];

    /// <summary>A mating that is planned.</summary>
    /// <param name="effective">1 to 60.</param>
    /// <param name="alleles">2 or more.</param>
    public static PlannedRow Planned(BooksPedigree books, Guid queen, IReadOnlyList<Guid> drones, decimal effective, decimal alleles)
    {
        var mating = books.Plan(queen, drones, (double)effective);
        var brood = books.Pedigree.BroodInbreeding(mating);
        var diploid = SexAlleles.Related(brood, (double)alleles);
        return new PlannedRow
        {
            QueenId = new QueenId(queen),
            Queen = books.NameOf(queen),
            Drones = [.. drones.Select(books.NameOf)],
            EffectiveDrones = effective,
            BroodInbreeding = Rounded(brood),
            BetweenWorkers = Rounded(2 * books.Pedigree.BetweenBrood(mating)),
            Alleles = alleles,
            DiploidDrones = Rounded(diploid),
            DiploidDeviation = Rounded(SexAlleles.RelatedDeviation(brood, (double)alleles, (int)Math.Max(1, Math.Round(effective)))),
            EmptyCells = Rounded(SexAlleles.Empty(diploid)),
            SpottyChance = Rounded(SexAlleles.ChanceOfEmpty(Spotty, 100, diploid)),
            SpottyChanceWithout = Rounded(SexAlleles.ChanceOfEmpty(Spotty, 100, 0)),
            Entries = Evidence(books, [queen, .. drones]),
        };
    }

    /// <summary>Her mothers, one after the other.</summary>
    private static IEnumerable<Lineage.LinkRow> Upwards(BooksPedigree books, Guid queen)
    {
        while (books.MotherOf(queen) is { } link)
        {
            yield return link;
            queen = link.FromId;
        }
    }

    private static string? Named(BooksPedigree books, Guid queen, Guid other)
    {
        var (mother, otherMother) = (books.MotherOf(queen)?.FromId, books.MotherOf(other)?.FromId);
        if (mother == other) return "daughter and mother";
        if (otherMother == queen) return "mother and daughter";
        // A queen's daughters are of one mating: which of them share a drone nobody knows.
        if (mother is not null && mother == otherMother) return "full sisters, super or half by the drone";
        var (drones, otherDrones) = (mother is { } one ? books.DronesOf(one).Select(link => link.FromId).ToHashSet() : [], otherMother is { } two ? books.DronesOf(two).Select(link => link.FromId).ToHashSet() : []);
        return drones.Overlaps(otherDrones) ? "half sisters by drones of one queen, perhaps" : null;
    }

    /// <summary>The entries that the mothers and matings of some queens rest on, up to their first known ancestors, mothers first.</summary>
    private static IReadOnlyList<EntryId> Evidence(BooksPedigree books, IEnumerable<Guid> queens) =>
        [.. queens.SelectMany(queen => books.DronesOf(queen).Concat(Upwards(books, queen).SelectMany(link => books.DronesOf(link.FromId).Prepend(link)))).SelectMany(link => link.Entries).Distinct()];

    private static decimal Rounded(double value) => Math.Round((decimal)value, 6);
}
