namespace ColonyLineage.Entries;

/// <summary>Bees and brood of this colony went into a new one. One entry for each maker of the new colony.</summary>
[Kind("split-from", 1)]
public sealed record SplitFrom : ColonyEntry
{
    /// <summary>The new colony that was made.</summary>
    public required ColonyId Into { get; init; }

    /// <summary>Frames of bees that went, 0 to 60.</summary>
    public decimal? FramesOfBees { get; init; }

    /// <summary>Frames of brood that went, 0 to 40.</summary>
    public decimal? FramesOfBrood { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => [Into];

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Into);
        faults.Differ(Colony, (ColonyId?)Into, "A colony cannot be made out of itself.", nameof(Into));
        faults.Within(FramesOfBees, 0, 60);
        faults.Within(FramesOfBrood, 0, 40);
    }
}
