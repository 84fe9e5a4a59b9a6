namespace ColonyLineage.Entries;

/// <summary>A colony is fed.</summary>
[Kind("fed", 1)]
public sealed record Fed : ColonyEntry
{
    /// <summary>What it was given, in the outfit's words, 1 to 100 characters.</summary>
    public required string Feed { get; init; }

    /// <summary>How much.</summary>
    public Quantity? Amount { get; init; }

    /// <summary>Parts of sugar in a syrup, above 0, at most 100.</summary>
    public decimal? SugarParts { get; init; }

    /// <summary>Parts of water in a syrup, above 0, at most 100; none for dry sugar or fondant, where the amount is a weight.</summary>
    public decimal? WaterParts { get; init; }

    /// <summary>By what the parts were measured.</summary>
    public PartsBy? PartsBy { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Feed, 100);
        faults.Within(SugarParts, 0.01m, 100);
        faults.Within(WaterParts, 0.01m, 100);
        faults.Known(PartsBy);
        if (WaterParts is not null && SugarParts is null) faults.Add(Refusals.Missing, nameof(SugarParts), "Say how many parts of sugar to those of water.");
        if (SugarParts is not null && WaterParts is not null && PartsBy is null)
            faults.Add(Refusals.Missing, nameof(PartsBy), "Say whether the parts were weighed or measured by volume: a ratio by volume is not a ratio by weight.");
        faults.Fits(Amount);
    }
}
