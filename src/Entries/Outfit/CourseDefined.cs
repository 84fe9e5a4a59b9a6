namespace ColonyLineage.Entries;

/// <summary>
/// A course of treatment as the outfit reckons it: what makes it complete. It is the owner's data; the label and the
/// law of the place bind, and nothing here computes or proposes a dose.
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
    }
}
