namespace ColonyLineage.Entries;

/// <summary>A colony begins, or comes to the outfit. Where its bees came from stands in a <see cref="SplitFrom"/> for each maker.</summary>
[Kind("colony-established", 1)]
public sealed record ColonyEstablished : ColonyEntry
{
    /// <summary>The outfit's number or name for it, 1 to 40 characters.</summary>
    public required string Number { get; init; }

    /// <summary>How it came to be.</summary>
    public required HowEstablished How { get; init; }

    /// <summary>The spot it was set on, where it was set on one.</summary>
    public Spot? At { get; init; }

    /// <summary>It stands above another colony over a screen board.</summary>
    public bool Above { get; init; }

    /// <summary>What it is housed in.</summary>
    public Housing? Housing { get; init; }

    /// <summary>The queen in it, where she is known as an individual.</summary>
    public QueenId? Queen { get; init; }

    /// <summary>Frames of bees, 0 to 60.</summary>
    public decimal? FramesOfBees { get; init; }

    /// <summary>Frames of brood, 0 to 40.</summary>
    public decimal? FramesOfBrood { get; init; }

    /// <summary>Seller or finder, at most 200 characters.</summary>
    public string? Source { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(At?.Yard, Queen);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(Number, 40);
        faults.Known<HowEstablished>(How);
        if (At is { } at) faults.Needs(at);
        faults.Known(Housing);
        faults.Fits(Queen);
        faults.Within(FramesOfBees, 0, 60);
        faults.Within(FramesOfBrood, 0, 40);
        faults.Fits(Source, 200);
    }
}
