namespace ColonyLineage.Entries;

/// <summary>A lot of a medicine came into the outfit: what an inspector asks to see of its purchase. Treatments name the lot.</summary>
[Kind("medicine-acquired", 1)]
public sealed record MedicineAcquired : Entry
{
    /// <summary>The product in the owner's words, 1 to 200 characters.</summary>
    public required string Product { get; init; }

    /// <summary>The active substance, at most 200 characters.</summary>
    public string? Substance { get; init; }

    /// <summary>Lot number, 1 to 60 characters.</summary>
    public required string Lot { get; init; }

    /// <summary>How much came.</summary>
    public Quantity? Amount { get; init; }

    /// <summary>Name and address of the supplier, at most 500 characters.</summary>
    public string? Supplier { get; init; }

    /// <summary>Where the proof of purchase is kept, at most 200 characters.</summary>
    public string? Proof { get; init; }

    /// <summary>The prescribing veterinarian, where there was one, at most 200 characters.</summary>
    public string? Prescriber { get; init; }

    /// <summary>Last day of use by the packet.</summary>
    public DateOnly? UseBy { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Subject.Store;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Needs(Product, 200);
        faults.Fits(Substance, 200);
        faults.Needs(Lot, 60);
        faults.Fits(Amount);
        faults.Fits(Supplier, 500);
        faults.Fits(Proof, 200);
        faults.Fits(Prescriber, 200);
    }
}
