namespace ColonyLineage.Entries;

/// <summary>Frames go from this colony to another.</summary>
[Kind("frames-moved", 1)]
public sealed record FramesMoved : ColonyEntry
{
    /// <summary>The colony that gets them.</summary>
    public required ColonyId To { get; init; }

    /// <summary>How many, above 0, at most 40.</summary>
    public required decimal Frames { get; init; }

    /// <summary>Frames of what.</summary>
    public required FramesOf Of { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => [To];

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(To);
        faults.Differ(Colony, (ColonyId?)To, "Frames cannot go from a colony to itself.", nameof(To));
        faults.Within(Frames, 0.1m, 40);
        faults.Known<FramesOf>(Of);
    }
}
