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

    /// <summary>Courses by name; the last definition counts.</summary>
    public IReadOnlyDictionary<string, CourseDefined> Courses { get; init; } = new Dictionary<string, CourseDefined>();

    /// <summary>Lines by the breeder they start at; the last name counts.</summary>
    public IReadOnlyDictionary<QueenId, LineStarted> Lines { get; init; } = new Dictionary<QueenId, LineStarted>();

    public static OutfitCard Fold(IEnumerable<Entry> entries)
    {
        var courses = new Dictionary<string, CourseDefined>(StringComparer.Ordinal);
        var lines = new Dictionary<QueenId, LineStarted>();
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
                    };
                    break;
                case CourseDefined course:
                    courses[course.Course] = course;
                    break;
                case LineStarted line:
                    lines[line.Breeder] = line;
                    break;
            }

        return card with { Courses = courses, Lines = lines };
    }
}
