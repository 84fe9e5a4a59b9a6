namespace ColonyLineage.Entries;

/// <summary>Something the outfit has at hand was counted. What goes in and out afterwards is added to it.</summary>
[Kind("stock-counted", 1)]
public sealed record StockCounted : Entry
{
    /// <summary>What was counted.</summary>
    public required StockOf Of { get; init; }

    /// <summary>Which of them, in the outfit's words, at most 100 characters: a size, a course.</summary>
    public string? Which { get; init; }

    /// <summary>How much there was.</summary>
    public required Quantity Amount { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Subject.Store;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Known<StockOf>(Of);
        faults.Fits(Which, 100);
        if (Amount is null) faults.Add(Refusals.Missing, nameof(Amount), "Say how much there was.");
        faults.Fits(Amount);
    }
}
