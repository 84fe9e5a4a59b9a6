namespace ColonyLineage.Entries;

/// <summary>The highest temperature of a day at a yard, read off there or taken from a weather station. Of two for one day the later entry counts.</summary>
[Kind("daily-maximum", 1)]
public sealed record DailyMaximum : Entry
{
    /// <summary>The yard.</summary>
    public required YardId Yard { get; init; }

    /// <summary>How warm it was at most, -60 to 60 °C.</summary>
    public required Temperature Maximum { get; init; }

    /// <summary>Where it was read, at most 100 characters.</summary>
    public string? Station { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Yard;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Needs(Yard);
        if (Maximum is null) faults.Add(Refusals.Missing, nameof(Maximum), "Say how warm it was.");
        faults.Fits(Maximum);
        faults.Fits(Station, 100);
    }
}
