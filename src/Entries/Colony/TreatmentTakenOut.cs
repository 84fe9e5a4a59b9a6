namespace ColonyLineage.Entries;

/// <summary>Strips, trays or pads of a treatment are taken out.</summary>
[Kind("treatment-taken-out", 1)]
public sealed record TreatmentTakenOut : ColonyEntry
{
    /// <summary>The course, by the outfit's name for it; 1 to 60 characters.</summary>
    public required string Course { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Needs(Course, 60);
}
