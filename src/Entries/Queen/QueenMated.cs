namespace ColonyLineage.Entries;

/// <summary>A queen is mated.</summary>
[Kind("queen-mated", 1)]
public sealed record QueenMated : QueenEntry
{
    /// <summary>Where, in the outfit's words, at most 200 characters.</summary>
    public string? Where { get; init; }

    /// <summary>The queens whose drones were provided; empty where she flew in the open. At most 100.</summary>
    public IReadOnlyList<QueenId> Drones { get; init; } = [];

    /// <summary>Effective number of drones, 1 to 60, where somebody has an opinion.</summary>
    public decimal? EffectiveDrones { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Drones.Select(drone => (Subject)drone);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Fits(Where, 200);
        faults.Within(Drones?.Count, 0, 100, nameof(Drones));
        foreach (var drone in Drones ?? []) faults.Needs(drone, nameof(Drones));
        faults.Within(EffectiveDrones, 1, 60);
    }
}
