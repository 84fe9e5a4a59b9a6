namespace ColonyLineage.Entries;

/// <summary>
/// A course of treatment as the outfit reckons it: what makes it complete, and within which limits. It is the owner's data; the
/// label and the law of the place bind, and nothing here computes or proposes a dose.
/// </summary>
[Kind("course-defined", 1)]
public sealed record CourseDefined : Entry
{
    /// <summary>The outfit's name for the course, 1 to 60 characters; treatments name it.</summary>
    public required string Course { get; init; }

    /// <summary>Full doses that make it complete, above 0, at most 20. A half dose counts 0.5.</summary>
    public required decimal FullDoses { get; init; }

    /// <summary>The active substance, at most 200 characters.</summary>
    public string? Substance { get; init; }

    /// <summary>The country whose rules it follows, at most 100 characters.</summary>
    public string? Country { get; init; }

    /// <summary>Where the rules stand: label or leaflet with its date, at most 500 characters.</summary>
    public string? Source { get; init; }

    /// <summary>The fewest days from one dose to the next, 0 to 365.</summary>
    public int? DaysBetweenAtLeast { get; init; }

    /// <summary>The most days from one dose to the next, 0 to 365.</summary>
    public int? DaysBetweenAtMost { get; init; }

    /// <summary>The fewest days that a dose stays in, 0 to 365.</summary>
    public int? DaysInAtLeast { get; init; }

    /// <summary>The most days that a dose stays in, 0 to 365.</summary>
    public int? DaysInAtMost { get; init; }

    /// <summary>What is left of a dose must be taken out: strips, trays.</summary>
    public bool? TakenOut { get; init; }

    /// <summary>The lowest daily maximum, degrees Celsius, -40 to 60.</summary>
    public decimal? CoolestMaximum { get; init; }

    /// <summary>The highest daily maximum, degrees Celsius, -40 to 60.</summary>
    public decimal? WarmestMaximum { get; init; }

    /// <summary>For how many days the daily maximum matters, the day of the dose included, 1 to 60; the day of the dose alone where it is missing.</summary>
    public int? MaximumMattersDays { get; init; }

    /// <summary>Honey supers must be off.</summary>
    public bool? SupersOff { get; init; }

    /// <summary>All colonies of a yard are treated together.</summary>
    public bool? WholeYard { get; init; }

    /// <summary>It takes full effect only without brood.</summary>
    public bool? BroodlessWanted { get; init; }

    /// <summary>Days after the last dose, or after it was taken out, before supers go on, 0 to 365.</summary>
    public int? WithholdingDays { get; init; }

    /// <summary>The most full doses that a colony may get in a season, above 0, at most 40.</summary>
    public decimal? MostPerSeason { get; init; }

    /// <summary>What a dose is reckoned by.</summary>
    public DosedBy? DoseBy { get; init; }

    /// <summary>It stops the queen's laying: brood seen within so many days after a dose is too soon to judge, 0 to 120.</summary>
    public int? BroodTooSoonDays { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override Subject Stream => Subject.Outfit;

    /// <inheritdoc/>
    protected override void CheckFields(Faults faults)
    {
        faults.Needs(Course, 60);
        faults.Within(FullDoses, 0.01m, 20);
        faults.Fits(Substance, 200);
        faults.Fits(Country, 100);
        faults.Fits(Source, 500);
        faults.Within(DaysBetweenAtLeast, 0, 365);
        faults.Within(DaysBetweenAtMost, 0, 365);
        faults.Within(DaysInAtLeast, 0, 365);
        faults.Within(DaysInAtMost, 0, 365);
        faults.Within(CoolestMaximum, -40, 60);
        faults.Within(WarmestMaximum, -40, 60);
        faults.Within(MaximumMattersDays, 1, 60);
        faults.Within(WithholdingDays, 0, 365);
        faults.Within(MostPerSeason, 0.01m, 40);
        faults.Known(DoseBy);
        faults.Within(BroodTooSoonDays, 0, 120);
        faults.Agree(DaysBetweenAtLeast, DaysBetweenAtMost);
        faults.Agree(DaysInAtLeast, DaysInAtMost);
        faults.Agree(CoolestMaximum, WarmestMaximum);
        if (MostPerSeason < FullDoses)
            faults.Add(Refusals.LimitsContradict, nameof(MostPerSeason), $"The course takes {FullDoses:0.##} full doses, and at most {MostPerSeason:0.##} are allowed in a season: one of the two is wrong.");
        if (TakenOut == false && (DaysInAtLeast ?? DaysInAtMost) is not null)
            faults.Add(Refusals.LimitsContradict, nameof(TakenOut), "Days that a dose stays in mean nothing where nothing is taken out: leave them away, or say that it is taken out.");
    }
}
