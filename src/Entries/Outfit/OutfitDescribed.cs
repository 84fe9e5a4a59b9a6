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

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Subject.Outfit;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        if (Name is null && SeasonStartMonth is null && FewFramesOfBees is null)
            faults.Add(Refusals.SaysNothing, "", "Say a name or a setting.");
        faults.Fits(Name, 200);
        faults.Within(SeasonStartMonth, 1, 12);
        faults.Within(FewFramesOfBees, 0, 60);
    }
}
