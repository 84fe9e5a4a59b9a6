using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>What was seen in a colony. Every field may be missing.</summary>
public sealed record Look
{
    internal static readonly Look Blank = new();

    /// <summary>Frames of bees, 0 to 60.</summary>
    public decimal? FramesOfBees { get; init; }

    /// <summary>Frames of brood, 0 to 40.</summary>
    public decimal? FramesOfBrood { get; init; }

    /// <summary>Brood pattern, 1 (spotty) to 5 (solid).</summary>
    public int? BroodPattern { get; init; }

    /// <summary>Eggs were seen, or looked for and not seen.</summary>
    public bool? EggsSeen { get; init; }

    /// <summary>The oldest brood that was seen, at most 40 characters.</summary>
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

    internal void AddTo(Draft draft, ActRequest request, ColonyId colony, string at) => draft.Add(
        new Inspected
        {
            // The look itself is on the day, also where what it found happened in an interval before.
            Id = request.IdOf("inspected", colony), On = request.On.Day, Act = request.Act, Colony = colony,
            FramesOfBees = FramesOfBees, FramesOfBrood = FramesOfBrood, BroodPattern = BroodPattern, EggsSeen = EggsSeen, OldestBrood = OldestBrood,
            Queen = Queen, MarkSeen = MarkSeen, Temper = Temper, Heft = Heft, Signs = Signs, SupersOn = SupersOn,
        },
        at);
}
