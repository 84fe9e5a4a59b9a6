using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>A yard, as it is in truth.</summary>
internal sealed class DemoYard
{
    private readonly Dictionary<string, int> _walk;

    public DemoYard(YardId id, int index, IReadOnlyList<string> spots, IReadOnlyList<string> nucSpots)
    {
        (Id, Index, Name, Spots, NucSpots) = (id, index, Places.Yard(index), spots, nucSpots);
        _walk = spots.Concat(nucSpots).Index().ToDictionary(spot => spot.Item, spot => spot.Index, StringComparer.Ordinal);
    }

    public YardId Id { get; }

    public string Name { get; }

    /// <summary>Its number among the yards, from 0: what happens where hangs on it.</summary>
    public int Index { get; }

    /// <summary>Spots for full colonies, by number.</summary>
    public IReadOnlyList<string> Spots { get; }

    /// <summary>Spots for mating nucs.</summary>
    public IReadOnlyList<string> NucSpots { get; }

    /// <summary>What stands on a spot, below and above; the books may say otherwise.</summary>
    public Dictionary<string, DemoColony> On { get; } = new(StringComparer.Ordinal);

    /// <summary>The colonies that stand here, in the order in which the crew walks past them.</summary>
    public List<DemoColony> Colonies { get; } = [];

    /// <summary>Queens are mated here.</summary>
    public bool MatesQueens => NucSpots.Count > 0;

    /// <summary>Brood nests are kept in two boxes here.</summary>
    public bool InDoubles => Index % 4 == 1;

    /// <summary>The colonies in the order of their spots, one above another after the one below.</summary>
    public List<DemoColony> Walk() => [.. Colonies.OrderBy(colony => _walk[colony.Spot]).ThenBy(colony => colony.Above)];

    /// <summary>Mites in a hundred bees at midsummer, this season.</summary>
    public double Mites { get; set; } = 2;
}

/// <summary>A colony, as it is in truth.</summary>
internal sealed class DemoColony
{
    public required ColonyId Id { get; init; }

    public required string Number { get; init; }

    public required DemoYard Yard { get; set; }

    public required string Spot { get; set; }

    public bool Above { get; set; }

    public Housing Housing { get; set; }

    public DemoQueen? Queen { get; set; }

    /// <summary>The queen in a cell that was given and not looked after yet.</summary>
    public DemoQueen? Cell { get; set; }

    /// <summary>How many cells have failed in it.</summary>
    public int Failed { get; set; }

    /// <summary>1 as colonies go; less is weaker.</summary>
    public double Vigour { get; set; } = 1;

    public int Supers { get; set; }

    public bool Gone { get; set; }

    /// <summary>The day on which it dies in the winter, unknown to the crew.</summary>
    public DateOnly? Dies { get; set; }

    /// <summary>The bees replace the queen this winter.</summary>
    public bool Supersedes { get; set; }

    /// <summary>A story is told of it, so nothing else befalls it by chance.</summary>
    public bool Told { get; set; }

    /// <summary>The day on which it was given its cell.</summary>
    public DateOnly CellGiven { get; set; }

    public bool Mating => Housing == Housing.MatingNuc;

    public bool Full => Housing is Housing.Single or Housing.Double;
}

/// <summary>A queen, as she is in truth.</summary>
internal sealed class DemoQueen
{
    public required QueenId Id { get; init; }

    /// <summary>Null for one that nobody has named: the books do not know her as an individual.</summary>
    public string? Name { get; init; }

    public required DateOnly Born { get; init; }

    public DemoQueen? Mother { get; init; }

    /// <summary>Which line she is of, from 0; -1 for none.</summary>
    public int Line { get; init; } = -1;

    public QueenMark? Mark { get; set; }

    public DateOnly LastSeen { get; set; }

    public bool Known => Name is not null;
}
