namespace ColonyLineage.Entries;

/// <summary>A queen is bought, with what the seller says of her.</summary>
[Kind("queen-bought", 1)]
public sealed record QueenBought : QueenEntry
{
    /// <summary>The outfit's number or name for her, at most 40 characters.</summary>
    public string? Name { get; init; }

    /// <summary>The seller, at most 200 characters.</summary>
    public string? Seller { get; init; }

    /// <summary>Her mother, where she is in the books.</summary>
    public QueenId? Mother { get; init; }

    /// <summary>When she emerged, by the seller's word.</summary>
    public Occurred? Born { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, Mother);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Fits(Name, 40);
        faults.Fits(Seller, 200);
        faults.Fits(Mother);
        faults.Differ(Queen, Mother, "A queen cannot be her own mother.");
        faults.Possible(Born);
    }
}
