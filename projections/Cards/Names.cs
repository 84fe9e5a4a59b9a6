using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>How things are called where nobody named them.</summary>
public static class Names
{
    public static string Of(ColonyCard colony) => colony.Number ?? $"colony {Short(colony.Colony.Value)}";

    public static string Of(QueenCard queen) => queen.Name ?? $"queen {Short(queen.Queen.Value)}";

    public static string Of(YardCard yard) => yard.Name ?? $"yard {Short(yard.Yard.Value)}";

    public static string Short(Guid id) => id.ToString("N")[^6..];
}
