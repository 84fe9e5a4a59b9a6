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
        ("queens", "/queens-by-age"),
        ("queens-old", "/queens-by-age?back=2&sure=possible&sort=-bees"),
        ("doses", "/dose-completeness?ended=yes"),
        ("owed", "/owed-work"),
        ("load", "/load-list"),
        ("stores", "/stores-and-feed?mix=20&mix-sugar=2.5"),
        ("mites", "/mite-watch"),
        ("mites-yard", "/mite-watch?yard=Alder%20Bottom&sort=-per100"),
        ("mites-none", "/mite-watch?season=2019"),
        ("losses", "/losses"),
        ("losses-yards", "/losses?by=yard&counted=books"),
        ("lines", "/line-comparison"),
        ("lines-mothers", "/line-comparison?trait=mitesFirst&by=mother"),
        ("line-records", "/line-comparison?trait=strength&line=Alder"),
        ("treatments", "/treatment-record?yard=Alder%20Bottom"),
        ("winter", "/winter-readiness?truth=yes"),
        ("courses", "/courses"),
        ("rounds", "/rounds"),
        ("define", "/record?act=course-defined&example=amitraz%20strips"),
        ("story", "/spot-story?yard=Alder%20Bottom&spot=5"),
        ("conflicts", "/conflicts"),
        ("why", "/why/dose-completeness?colony=4&season=2026"),
        ("spot", $"/yards/{Alder}/spots/5"),
        ("spot-two", $"/yards/{Alder}/spots/1"),
        ("colony", $"/colonies/{SmallOutfit.ColonyNamed("4").Value}"),
        ("colony-nuc", $"/colonies/{SmallOutfit.ColonyNamed("N25-1").Value}"),
        ("colony-voided", $"/colonies/{SmallOutfit.ColonyNamed("3").Value}"),
        ("queen", $"/queens/{SmallOutfit.QueenNamed("25-01").Value}"),
        ("breeder", $"/queens/{SmallOutfit.QueenNamed("B1").Value}?down=4"),
        ("many", $"/queens/{SmallOutfit.QueenNamed("M0").Value}?down=3"),
        ("lineage", "/lineage"),
        ("descendants", "/lineage?queen=B1&all=yes"),
        ("drawing", "/lineage/drawing?queen=B1&all=yes"),
        ("drawing-many", "/lineage/drawing?queen=M0&all=yes&group=batch"),
        ("drawing-up", "/lineage/drawing?queen=26-01&way=both&also=yes&columns=season"),
        ("drawing-colony", "/lineage/drawing?colony=4&all=yes&also=yes"),
        ("contacts", "/lineage?colony=4&since=2026-03-01"),
        ("matings", "/planned-mating?queen=25-01&drones=B1"),
        ("yard-empty", $"/yards/{Riverside}"),
    ];
}
