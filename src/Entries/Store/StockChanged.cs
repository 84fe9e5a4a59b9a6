namespace ColonyLineage.Entries;

/// <summary>Something was bought, made, used up or lost: it is added to what was counted last, or taken from it.</summary>
[Kind("stock-changed", 1)]
public sealed record StockChanged : Entry
{
    /// <summary>Of what.</summary>
    public required StockOf Of { get; init; }

    /// <summary>Which of them, as it was counted, at most 100 characters.</summary>
    public string? Which { get; init; }

    /// <summary>How much, in the unit in which it was counted.</summary>
    public required Quantity Amount { get; init; }

    /// <summary>It is gone; else it came in.</summary>
    public bool Out { get; init; }

    /// <summary>Why, at most 200 characters.</summary>
    public string? Why { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Subject.Store;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Known<StockOf>(Of);
        faults.Fits(Which, 100);
        if (Amount is null) faults.Add(Refusals.Missing, nameof(Amount), "Say how much.");
        faults.Fits(Amount);
        faults.Fits(Why, 200);
    }
}
