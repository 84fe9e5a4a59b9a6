namespace ColonyLineage.Entries;

/// <summary>A look into a colony. Every field may be missing; at least one is there.</summary>
[Kind("inspected", 1)]
public sealed record Inspected : ColonyEntry
{
    /// <summary>Frames of bees, 0 to 60.</summary>
    public decimal? FramesOfBees { get; init; }

    /// <summary>Frames of brood, 0 to 40.</summary>
    public decimal? FramesOfBrood { get; init; }

    /// <summary>Brood pattern, 1 (spotty) to 5 (solid).</summary>
    public int? BroodPattern { get; init; }

    /// <summary>Eggs were seen, or looked for and not seen.</summary>
    public bool? EggsSeen { get; init; }

    /// <summary>The oldest brood that was seen, in the outfit's words, at most 40 characters.</summary>
    public string? OldestBrood { get; init; }

    /// <summary>What was found of the queen.</summary>
    public QueenFinding? Queen { get; init; }

    /// <summary>The mark that was seen on her, or that she was seen unmarked.</summary>
    public QueenMark? MarkSeen { get; init; }

    /// <summary>Temper, 1 (hot) to 5 (gentle).</summary>
    public int? Temper { get; init; }

    /// <summary>Stores judged by lifting.</summary>
    public Heft? Heft { get; init; }

    /// <summary>Signs of disease in the person's own words: a suspicion, never a diagnosis. At most 20, of 200 characters.</summary>
    public IReadOnlyList<string>? Signs { get; init; }

    /// <summary>Honey supers on, 0 to 12.</summary>
    public int? SupersOn { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        if (FramesOfBees is null && FramesOfBrood is null && BroodPattern is null && EggsSeen is null && OldestBrood is null && Queen is null
            && MarkSeen is null && Temper is null && Heft is null && Signs is null && SupersOn is null && Note is null)
            faults.Add(Refusals.SaysNothing, "", "Say at least one thing that was seen.");
        faults.Within(FramesOfBees, 0, 60);
        faults.Within(FramesOfBrood, 0, 40);
        faults.Within(BroodPattern, 1, 5);
        faults.Fits(OldestBrood, 40);
        faults.Known(Queen);
        faults.Fits(MarkSeen);
        faults.Within(Temper, 1, 5);
        faults.Known(Heft);
        faults.Within(Signs?.Count, 0, 20, nameof(Signs));
        foreach (var sign in Signs ?? []) faults.Needs(sign, 200, nameof(Signs));
        faults.Within(SupersOn, 0, 12);
    }
}
