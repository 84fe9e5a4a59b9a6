namespace ColonyLineage.Entries;

/// <summary>The owner's own criteria for a colony that is to be wintered, from this day on. A criterion that is left out is not asked for.</summary>
[Kind("readiness-set", 1)]
public sealed record ReadinessSet : Entry
{
    /// <summary>The queen is at most so many seasons back, 0 (this season's) to 10.</summary>
    public int? QueenSeasonsBackAtMost { get; init; }

    /// <summary>Brood, eggs or the queen were seen within so many days, 1 to 365.</summary>
    public int? BroodSeenWithinDays { get; init; }

    /// <summary>Frames of bees at the last look, 0 to 60.</summary>
    public decimal? FramesOfBeesAtLeast { get; init; }

    /// <summary>The stores reach the target of its housing.</summary>
    public bool? StoresAtTarget { get; init; }

    /// <summary>Mites per 100 bees in the colony's own last wash after its last dose, 0 to 100.</summary>
    public decimal? MitesAtMost { get; init; }

    /// <summary>The courses of which its bees must have had all doses in the season, at most 10.</summary>
    public IReadOnlyList<string>? CoursesComplete { get; init; }

    /// <summary>Nothing is owed at the colony.</summary>
    public bool? NothingOwed { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Subject.Outfit;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        if (QueenSeasonsBackAtMost is null && BroodSeenWithinDays is null && FramesOfBeesAtLeast is null && StoresAtTarget is null && MitesAtMost is null && CoursesComplete is null && NothingOwed is null)
            faults.Add(Refusals.SaysNothing, "", "Ask for at least one thing.");
        faults.Within(QueenSeasonsBackAtMost, 0, 10);
        faults.Within(BroodSeenWithinDays, 1, 365);
        faults.Within(FramesOfBeesAtLeast, 0, 60);
        faults.Within(MitesAtMost, 0, 100);
        faults.Within(CoursesComplete?.Count, 0, 10, nameof(CoursesComplete));
        foreach (var course in CoursesComplete ?? []) faults.Needs(course, 60, nameof(CoursesComplete));
    }
}
