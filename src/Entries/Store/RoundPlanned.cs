namespace ColonyLineage.Entries;

/// <summary>The owner sets in which order the yards are visited on a round. The latest plan of a name counts, as a whole.</summary>
[Kind("round-planned", 1)]
public sealed record RoundPlanned : Entry
{
    /// <summary>The owner's name for the round, 1 to 60 characters.</summary>
    public required string Round { get; init; }

    /// <summary>The yards in order, 0 to 500; none takes the plan back.</summary>
    public required IReadOnlyList<RoundStop> Stops { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Subject.Store;

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => (Stops ?? []).SelectMany(stop => Subjects.Of(stop.Yard)).Distinct();

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Needs(Round, 60);
        faults.Within(Stops?.Count, 0, 500, nameof(Stops));
        foreach (var stop in Stops ?? [])
        {
            faults.Needs(stop.Yard, "stops");
            faults.Fits(stop.Truck, 60, "stops");
            faults.Fits(stop.Why, 500, "stops");
        }
    }
}

/// <summary>One yard of a round.</summary>
/// <param name="Yard">The yard.</param>
/// <param name="On">The day it is planned for; it may be to come.</param>
/// <param name="Truck">Which truck or crew goes, at most 60 characters.</param>
/// <param name="Why">Why this yard before the next one, at most 500 characters.</param>
public sealed record RoundStop(YardId Yard, DateOnly? On = null, string? Truck = null, string? Why = null);
