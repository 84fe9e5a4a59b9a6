using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Relationship;

/// <summary>How inbred a queen is, and her brood.</summary>
public sealed record InbreedingRow : IRow
{
    public required QueenId QueenId { get; init; }

    public required string Queen { get; init; }

    public QueenId? MotherId { get; init; }

    public string? Mother { get; init; }

    /// <summary>Known or supposed; null for a founder.</summary>
    public Certainty? MotherIs { get; init; }

    /// <summary>The queens whose drones she is recorded to have met.</summary>
    public required IReadOnlyList<string> Drones { get; init; }

    /// <summary>F, 0 to 1: by what the books know. Unknown ancestors count as unrelated.</summary>
    public required decimal Inbreeding { get; init; }

    /// <summary>F of her brood, workers and daughters alike.</summary>
    public required decimal BroodInbreeding { get; init; }

    /// <summary>How related two of her workers are: additive, 2θ.</summary>
    public required decimal BetweenWorkers { get; init; }

    /// <summary>Generations of mothers that are known.</summary>
    public required int Generations { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>How two queens are related.</summary>
public sealed record RelationshipRow : IRow
{
    public required QueenId QueenId { get; init; }

    public required string Queen { get; init; }

    public required QueenId OtherId { get; init; }

    public required string Other { get; init; }

    /// <summary>Sisters by name, mother and daughter, or nothing that has a name.</summary>
    public string? Are { get; init; }

    /// <summary>Coancestry θ.</summary>
    public required decimal Coancestry { get; init; }

    /// <summary>Additive relationship, 2θ.</summary>
    public required decimal Additive { get; init; }

    /// <summary>Of a worker of the one's colony to a worker of the other's, 2θ.</summary>
    public required decimal BetweenColonies { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>What a planned mating is to be expected to give.</summary>
public sealed record PlannedRow : IRow
{
    public required QueenId QueenId { get; init; }

    public required string Queen { get; init; }

    /// <summary>The queens whose drones she is to meet; none: in the open.</summary>
    public required IReadOnlyList<string> Drones { get; init; }

    /// <summary>Effective number of drones.</summary>
    public required decimal EffectiveDrones { get; init; }

    /// <summary>F of her brood.</summary>
    public required decimal BroodInbreeding { get; init; }

    /// <summary>Of two of her workers, 2θ.</summary>
    public required decimal BetweenWorkers { get; init; }

    /// <summary>Effective number of sex alleles that is reckoned with.</summary>
    public required decimal Alleles { get; init; }

    /// <summary>Share of fertilised eggs that become diploid drones, expected, and its standard deviation between such queens, at least.</summary>
    public required decimal DiploidDrones { get; init; }

    public required decimal DiploidDeviation { get; init; }

    /// <summary>Share of the cells of a comb of brood that would be empty, with a tenth that other causes empty.</summary>
    public required decimal EmptyCells { get; init; }

    /// <summary>How often 16 or more of 100 cells would be empty; and how often of a queen without any diploid drones.</summary>
    public required decimal SpottyChance { get; init; }

    public required decimal SpottyChanceWithout { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}
