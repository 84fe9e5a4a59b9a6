using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.SpotStory;

namespace ColonyLineage.Projections.Losses;

/// <summary>Rows of other questions that tell more of the colonies. What is missing is taken from the lives: the last yard and the last queen.</summary>
public sealed record Beside
{
    public static readonly Beside Nothing = new();

    /// <summary>Which queen reigned when.</summary>
    public IReadOnlyList<ReignRow> Reigns { get; init; } = [];

    /// <summary>Which colony stood where, when.</summary>
    public IReadOnlyList<BandRow> Stays { get; init; } = [];

    /// <summary>What the colonies had of the courses; of any seasons. Null where nothing is to be said of treatment.</summary>
    public IReadOnlyList<DoseRow>? Doses { get; init; }
}
