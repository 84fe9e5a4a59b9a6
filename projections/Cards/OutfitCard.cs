using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>The outfit's settings, courses and lines, as they stand.</summary>
public sealed record OutfitCard
{
    public string? Name { get; init; }

    /// <summary>1 to 12; March unless the outfit says otherwise.</summary>
    public int SeasonStartMonth { get; init; } = 3;

    /// <summary>At or below this many frames 'the bees are few'.</summary>
    public decimal FewFramesOfBees { get; init; } = 4;

    /// <summary>Mites per 100 bees that a yard is to be shown to be below.</summary>
    public decimal MiteThreshold { get; init; } = 3;

    /// <summary>The spread of mites over colonies, k of the negative binomial.</summary>
    public decimal MiteSpread { get; init; } = 1;

    /// <summary>The same after a treatment.</summary>
    public decimal MiteSpreadTreated { get; init; } = 0.5m;

    /// <summary>The winter: from this day to that.</summary>
    public MonthDay WinterFrom { get; init; } = new(10, 1);

    public MonthDay WinterTo { get; init; } = new(4, 15);

    /// <summary>The weeks without brood.</summary>
    public MonthDay BroodlessFrom { get; init; } = new(12, 1);

    public MonthDay BroodlessTo { get; init; } = new(1, 15);

    /// <summary>A queen of so many seasons back is to be looked at again.</summary>
    public int OldQueenSeasons { get; init; } = 2;

    /// <summary>How mites grow with brood, a day.</summary>
    public decimal MiteGrowth { get; init; } = 0.021m;

    /// <summary>What colonies are to have on for the winter, by housing; the last target counts.</summary>
    public IReadOnlyDictionary<Housing, StoresTargetSet> StoresTargets { get; init; } = new Dictionary<Housing, StoresTargetSet>();

    /// <summary>What is asked of a colony that is to be wintered; the last word counts. Null where nothing was asked.</summary>
    public ReadinessSet? Readiness { get; init; }

    /// <summary>Courses by name; the last definition counts.</summary>
    public IReadOnlyDictionary<string, CourseDefined> Courses { get; init; } = new Dictionary<string, CourseDefined>();

    /// <summary>Lines by the breeder they start at; the last name counts.</summary>
    public IReadOnlyDictionary<QueenId, LineStarted> Lines { get; init; } = new Dictionary<QueenId, LineStarted>();

    public static OutfitCard Fold(IEnumerable<Entry> entries)
    {
        var courses = new Dictionary<string, CourseDefined>(StringComparer.Ordinal);
        var lines = new Dictionary<QueenId, LineStarted>();
        var targets = new Dictionary<Housing, StoresTargetSet>();
        var card = new OutfitCard();
        foreach (var entry in entries)
            switch (entry)
            {
                case OutfitDescribed described:
                    card = card with
                    {
                        Name = described.Name ?? card.Name,
                        SeasonStartMonth = described.SeasonStartMonth ?? card.SeasonStartMonth,
                        FewFramesOfBees = described.FewFramesOfBees ?? card.FewFramesOfBees,
                        MiteThreshold = described.MiteThreshold ?? card.MiteThreshold,
                        MiteSpread = described.MiteSpread ?? card.MiteSpread,
                        MiteSpreadTreated = described.MiteSpreadTreated ?? card.MiteSpreadTreated,
                        WinterFrom = described.WinterFrom ?? card.WinterFrom,
                        WinterTo = described.WinterTo ?? card.WinterTo,
                        BroodlessFrom = described.BroodlessFrom ?? card.BroodlessFrom,
                        BroodlessTo = described.BroodlessTo ?? card.BroodlessTo,
                        OldQueenSeasons = described.OldQueenSeasons ?? card.OldQueenSeasons,
                        MiteGrowth = described.MiteGrowth ?? card.MiteGrowth,
                    };
                    break;
                case CourseDefined course:
                    courses[course.Course] = course;
                    break;
                case StoresTargetSet target:
                    targets[target.Housing] = target;
                    break;
                case ReadinessSet readiness:
                    card = card with { Readiness = readiness };
                    break;
                case LineStarted line:
                    lines[line.Breeder] = line;
                    break;
            }

        return card with { Courses = courses, Lines = lines, StoresTargets = targets };
    }
}
