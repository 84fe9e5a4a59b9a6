using ColonyLineage.Entries;

namespace ColonyLineage.Simulation;

/// <summary>What the generator believes of a colony while it invents a history; the books may come to know otherwise.</summary>
internal sealed class MadeColony(ColonyId id)
{
    public ColonyId Id { get; } = id;

    public Spot? At { get; set; }

    public MadeQueen? Queen { get; set; }

    public bool Alive { get; set; } = true;

    public MadeColony? Maker { get; set; }
}

/// <summary>What the generator believes of a queen.</summary>
internal sealed class MadeQueen(QueenId id)
{
    public QueenId Id { get; } = id;

    public MadeColony? In { get; set; }
}
