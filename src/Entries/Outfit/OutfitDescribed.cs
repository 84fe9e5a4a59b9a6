namespace ColonyLineage.Entries;

/// <summary>The outfit's name and the settings that answers depend on. The latest one counts, field by field.</summary>
[Kind("outfit-described", 1)]
public sealed record OutfitDescribed : Entry
{
    /// <summary>The outfit's name, at most 200 characters.</summary>
    public string? Name { get; init; }

    /// <summary>The month in which a season starts, 1 to 12. A season is named by the calendar year in which it starts. Default 3.</summary>
    public int? SeasonStartMonth { get; init; }

    /// <summary>At or below this many frames of bees 'the bees are few', 0 to 60. Default 4.</summary>
    public decimal? FewFramesOfBees { get; init; }

    /// <summary>The mites per 100 bees that a yard is to be shown to be below, 0.1 to 20. Default 3 (USDA-ARS, as quoted by extension guides).</summary>
    public decimal? MiteThreshold { get; init; }

    /// <summary>How mites are spread over the colonies of a yard: k of the negative binomial, 0.05 to 50. Default 1 (Aurell et al. 2024, J. Insect Sci.).</summary>
    public decimal? MiteSpread { get; init; }

    /// <summary>The same for a yard that was treated within the last 90 days, 0.05 to 50. Default 0.5 (the same source).</summary>
    public decimal? MiteSpreadTreated { get; init; }

    /// <summary>The first day of winter: colonies alive then are at risk. Default 10-01.</summary>
    public MonthDay? WinterFrom { get; init; }

    /// <summary>The last day of winter: what is found dead up to then was lost over winter. Default 04-15.</summary>
    public MonthDay? WinterTo { get; init; }

    /// <summary>The first day of the weeks in which colonies have no brood. Default 12-01.</summary>
    public MonthDay? BroodlessFrom { get; init; }

    /// <summary>The last day of the weeks in which colonies have no brood. Default 01-15.</summary>
    public MonthDay? BroodlessTo { get; init; }

    /// <summary>A queen of so many seasons back is to be looked at again in autumn, 1 to 10. Default 2.</summary>
    public int? OldQueenSeasons { get; init; }

    /// <summary>How mites grow with brood, a day, 0 to 0.2. Default 0.021 (Fries et al. 1994, Martin 1998; from memory).</summary>
    public decimal? MiteGrowth { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Subject.Outfit;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        if (Name is null && SeasonStartMonth is null && FewFramesOfBees is null && MiteThreshold is null && MiteSpread is null && MiteSpreadTreated is null
            && WinterFrom is null && WinterTo is null && BroodlessFrom is null && BroodlessTo is null && OldQueenSeasons is null && MiteGrowth is null)
            faults.Add(Refusals.SaysNothing, "", "Say a name or a setting.");
        faults.Fits(Name, 200);
        faults.Within(SeasonStartMonth, 1, 12);
        faults.Within(FewFramesOfBees, 0, 60);
        faults.Within(MiteThreshold, 0.1m, 20);
        faults.Within(MiteSpread, 0.05m, 50);
        faults.Within(MiteSpreadTreated, 0.05m, 50);
        faults.Fits(WinterFrom);
        faults.Fits(WinterTo);
        faults.Fits(BroodlessFrom);
        faults.Fits(BroodlessTo);
        faults.Within(OldQueenSeasons, 1, 10);
        faults.Within(MiteGrowth, 0, 0.2m);
    }
}
