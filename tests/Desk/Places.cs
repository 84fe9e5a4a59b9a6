namespace ColonyLineage.Desk.Tests;

/// <summary>The pages to visit, by a name for a picture.</summary>
internal static class Places
{
    private static readonly Guid Alder = SmallOutfit.YardNamed("Alder Bottom").Value;
    private static readonly Guid Quarry = SmallOutfit.YardNamed("The Old Quarry above Tarrant's Lane").Value;
    private static readonly Guid Riverside = SmallOutfit.YardNamed("Riverside").Value;

    public static IReadOnlyList<(string Name, string Path)> All =>
    [
        ("yards", "/"),
        ("yards-back", "/?as-of=2025-07-01&known-at=2026-01-01"),
        ("yard", $"/yards/{Alder}"),
        ("yard-undrawn", $"/yards/{Quarry}"),
        ("yard-empty", $"/yards/{Riverside}"),
    ];
}
