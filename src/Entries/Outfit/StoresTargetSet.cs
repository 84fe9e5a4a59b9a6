namespace ColonyLineage.Entries;

/// <summary>How much food a colony is to have on for the winter, by what it is housed in. The latest one of a housing counts.</summary>
[Kind("stores-target-set", 1)]
public sealed record StoresTargetSet : Entry
{
    /// <summary>For colonies in this housing.</summary>
    public required Housing Housing { get; init; }

    /// <summary>The weight of the stores, without hive and bees.</summary>
    public required Quantity Stores { get; init; }

    /// <summary>The weight of the hive with its combs and bees and without stores, for colonies that are weighed without a tare.</summary>
    public Quantity? Tare { get; init; }

    /// <summary>The region that the target is for, at most 100 characters.</summary>
    public string? Region { get; init; }

    /// <summary>Where it stands, or whose word it is, at most 500 characters.</summary>
    public string? Source { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Subject.Outfit;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Known<Housing>(Housing);
        if (Stores is null) faults.Add(Refusals.Missing, nameof(Stores), "Say how much.");
        faults.FitsMass(Stores);
        faults.FitsMass(Tare);
        faults.Fits(Region, 100);
        faults.Fits(Source, 500);
    }
}
