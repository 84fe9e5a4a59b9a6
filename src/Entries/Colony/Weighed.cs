namespace ColonyLineage.Entries;

/// <summary>
/// A colony is weighed, hive and all. Version 1 knew pounds only; this one keeps the unit that was read off the scale
/// (see <see cref="Upcasts"/>).
/// </summary>
[Kind("weighed", 2)]
public sealed record Weighed : ColonyEntry
{
    /// <summary>What the scale said.</summary>
    public required Quantity Gross { get; init; }

    /// <summary>Weight of the empty hive as it stood, where it is known.</summary>
    public Quantity? Tare { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        if (Gross is null) faults.Add(Refusals.Missing, nameof(Gross), "Say what the scale said.");
        faults.FitsMass(Gross);
        faults.FitsMass(Tare);
    }
}
