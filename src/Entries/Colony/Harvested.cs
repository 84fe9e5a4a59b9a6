namespace ColonyLineage.Entries;

/// <summary>Honey is taken off.</summary>
[Kind("harvested", 1)]
public sealed record Harvested : ColonyEntry
{
    /// <summary>Supers taken off, 0 to 12.</summary>
    public int? Supers { get; init; }

    /// <summary>Weight of the honey.</summary>
    public Quantity? Honey { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        if (Supers is null && Honey is null) faults.Add(Refusals.SaysNothing, "", "Say how many supers or how much honey.");
        faults.Within(Supers, 0, 12);
        faults.FitsMass(Honey);
    }
}
