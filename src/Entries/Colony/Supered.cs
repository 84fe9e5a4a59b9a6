namespace ColonyLineage.Entries;

/// <summary>Honey supers are put on.</summary>
[Kind("supered", 1)]
public sealed record Supered : ColonyEntry
{
    /// <summary>How many were put on, 1 to 12.</summary>
    public required int Supers { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Within(Supers, 1, 12);
}
