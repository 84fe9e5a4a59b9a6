using System.Text.Json.Serialization;

namespace ColonyLineage.Entries;

/// <summary>
/// One fact that somebody reports: at this colony, on this day, this was done or seen. Immutable. When it was
/// <em>recorded</em> is not part of it: the server says that (<see cref="Recorded"/>).
/// </summary>
public abstract record Entry
{
    /// <summary>The id made on the device that wrote the entry. Sending it twice changes nothing.</summary>
    public required EntryId Id { get; init; }

    /// <summary>When it happened in the yard, never when it was written down.</summary>
    public required Occurred On { get; init; }

    /// <summary>The act that this entry is part of.</summary>
    public required ActId Act { get; init; }

    /// <summary>Its place among the entries of the same day, 0 to 1,000,000; the person's order, not the order of arrival.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public int Order { get; init; }

    /// <summary>The visit, where there was one.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public VisitId? Visit { get; init; }

    /// <summary>Who reports it, in the outfit's own words; at most 100 characters.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? By { get; init; }

    /// <summary>Anything else worth keeping; at most 4,000 characters.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Note { get; init; }

    /// <summary>The stream it is appended to.</summary>
    [JsonIgnore]
    public abstract Subject Stream { get; }

    /// <summary>The other subjects that it changes something for.</summary>
    [JsonIgnore]
    public virtual IEnumerable<Subject> AlsoConcerns => [];

    /// <summary>Everything that it concerns, its own stream first.</summary>
    [JsonIgnore]
    public IEnumerable<Subject> Concerns => AlsoConcerns.Prepend(Stream).Distinct();

    /// <summary>What is wrong with it taken by itself: bounds, units, ids. Empty where it may be recorded.</summary>
    public IReadOnlyList<Refusal> Check()
    {
        var faults = new Faults();
        faults.Needs(Id);
        faults.Needs(Act);
        faults.Possible(On);
        faults.Within(Order, 0, 1_000_000);
        faults.Fits(Visit);
        faults.Fits(By, 100);
        faults.Fits(Note, 4000);
        CheckFields(faults);
        return faults.Found;
    }

    /// <summary>Checks the fields of this kind.</summary>
    protected abstract void CheckFields(Faults faults);
}

/// <summary>An entry with the instant at which the server recorded it.</summary>
/// <param name="Entry">The fact.</param>
/// <param name="At">When the books took it in (UTC).</param>
public readonly record struct Recorded(Entry Entry, DateTimeOffset At);
