namespace ColonyLineage.Entries;

/// <summary>Owed work is put off: it is not due before a later day.</summary>
[Kind("work-put-off", 1)]
public sealed record WorkPutOff : OwedEntry
{
    /// <summary>The day from which it is due again; it may be to come. After the day of this entry, at most two years later.</summary>
    public required DateOnly Until { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        if (Until <= On.Day || Until > On.Day.AddYears(2)) faults.Add(Refusals.DayImpossible, nameof(Until), "A day after today, at most two years on.");
    }
}
