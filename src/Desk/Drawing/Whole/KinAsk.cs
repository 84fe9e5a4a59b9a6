namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>Which way a genealogy is followed.</summary>
public enum KinWay
{
    /// <summary>What came of the one.</summary>
    Down,

    /// <summary>What the one came of.</summary>
    Up,

    /// <summary>Both.</summary>
    Both,
}

/// <summary>What a box of the drawing can stand for, where several are put together.</summary>
public enum KinGrouping
{
    /// <summary>A generation, and in it a season and a mother.</summary>
    Generation,

    /// <summary>A line in a generation.</summary>
    Line,

    /// <summary>A yard in a generation.</summary>
    Yard,

    /// <summary>A batch in a generation.</summary>
    Batch,
}

/// <summary>What is asked of a genealogy.</summary>
/// <param name="OfQueens">Of queens through mothers and drones; else of colonies through splits and combinations.</param>
/// <param name="Way">Which way it is followed.</param>
/// <param name="All">Descendants that no longer live, too; else only those that lead to living ones.</param>
/// <param name="Also">The weaker links too: drones among descendants; frames between colonies.</param>
/// <param name="Seasons">A column for every season; else for every generation.</param>
public sealed record KinAsk(bool OfQueens, KinWay Way = KinWay.Down, bool All = false, bool Also = false, bool Seasons = false);
