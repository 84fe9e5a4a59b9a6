namespace ColonyLineage.Desk;

/// <summary>The fixed names of conflicts, as people write them.</summary>
public static class ConflictWords
{
    /// <summary>All of them, in the order of the menu.</summary>
    public static readonly IReadOnlyList<(string Name, string Said)> All =
    [
        ("after-end", "after its end"), ("before-beginning", "before it began"), ("two-on-a-spot", "two on a spot"), ("moved-from-elsewhere", "moved from elsewhere"),
        ("queen-in-two-places", "queen in two places"), ("mark-against-record", "mark against the record"), ("too-many-mites", "more mites than bees"),
        ("daughter-older", "daughter older than her mother"), ("two-queens", "two queens in a colony"), ("out-of-nothing", "taken out, never given"),
    ];

    /// <summary>One of them.</summary>
    public static string Of(string name) => All.FirstOrDefault(conflict => conflict.Name == name).Said ?? Text.Word(name);
}
