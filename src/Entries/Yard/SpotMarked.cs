namespace ColonyLineage.Entries;

/// <summary>A numbered place is marked in a yard, with where it stands in the drawing of the yard.</summary>
[Kind("spot-marked", 1)]
public sealed record SpotMarked : Entry
{
    /// <summary>The spot.</summary>
    public required Spot Spot { get; init; }

    /// <summary>Which row of the yard it stands in, counted from the gate, 1 to 100.</summary>
    public int? Row { get; init; }

    /// <summary>Its place in that row from the left, 1 to 100.</summary>
    public int? Place { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Spot.Yard;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Needs(Spot);
        faults.Within(Row, 1, 100);
        faults.Within(Place, 1, 100);
    }
}
