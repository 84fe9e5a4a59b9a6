namespace ColonyLineage.Entries;

/// <summary>A colony is given a dose of a treatment. What the dose was is the person's word; the label binds.</summary>
[Kind("treated", 1)]
public sealed record Treated : ColonyEntry
{
    /// <summary>The course that the dose belongs to, by the outfit's name for it; 1 to 60 characters.</summary>
    public required string Course { get; init; }

    /// <summary>The dose as a share of a full one: 1 full, 0.5 half; above 0, at most 4.</summary>
    public required decimal Doses { get; init; }

    /// <summary>The active substance, at most 200 characters.</summary>
    public string? Substance { get; init; }

    /// <summary>The product in the owner's words, at most 200 characters.</summary>
    public string? Product { get; init; }

    /// <summary>Lot number, at most 60 characters.</summary>
    public string? Lot { get; init; }

    /// <summary>How much was used.</summary>
    public Quantity? Amount { get; init; }

    /// <summary>Honey supers were on.</summary>
    public bool? SupersOn { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Course, 60);
        faults.Within(Doses, 0.01m, 4);
        faults.Fits(Substance, 200);
        faults.Fits(Product, 200);
        faults.Fits(Lot, 60);
        faults.Fits(Amount);
    }
}
