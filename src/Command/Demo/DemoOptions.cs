namespace ColonyLineage.Command.Demo;

/// <summary>How large an invented outfit is to be. The same options give the same entries, to the byte.</summary>
public sealed record DemoOptions
{
    /// <summary>Colonies that it goes into the winter with, about; 40 to 20,000.</summary>
    public int Colonies { get; init; } = 480;

    /// <summary>Yards, 4 to 1,000; null for one to every 30 colonies.</summary>
    public int? Yards { get; init; } = 16;

    /// <summary>Seasons, the running one included; 1 to 20.</summary>
    public int Seasons { get; init; } = 4;

    /// <summary>What all chance grows from.</summary>
    public int Seed { get; init; } = 20260301;

    /// <summary>Today. Nothing occurs, and nothing is recorded, later than the evening before.</summary>
    public required DateOnly Today { get; init; }
}
