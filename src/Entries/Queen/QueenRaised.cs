namespace ColonyLineage.Entries;

/// <summary>A queen is raised. <see cref="Entry.On"/> is the day it was done or seen; <see cref="Born"/> when she emerged.</summary>
[Kind("queen-raised", 1)]
public sealed record QueenRaised : QueenEntry
{
    /// <summary>The outfit's number or name for her, at most 40 characters.</summary>
    public string? Name { get; init; }

    /// <summary>Her mother.</summary>
    public QueenId? Mother { get; init; }

    /// <summary>How surely the mother is known.</summary>
    public Certainty MotherIs { get; init; } = Certainty.Known;

    /// <summary>How she was raised.</summary>
    public RaisedFrom From { get; init; } = RaisedFrom.Unknown;

    /// <summary>When she emerged, where it is known.</summary>
    public Occurred? Born { get; init; }

    /// <summary>The day of grafting.</summary>
    public DateOnly? Grafted { get; init; }

    /// <summary>Batch, in the outfit's words, at most 60 characters.</summary>
    public string? Batch { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, Mother);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Fits(Name, 40);
        faults.Fits(Mother);
        faults.Differ(Queen, Mother, "A queen cannot be her own mother.");
        faults.Known<Certainty>(MotherIs);
        faults.Known<RaisedFrom>(From);
        faults.Possible(Born);
        faults.Possible(Grafted is { } day ? new Occurred(day) : null, nameof(Grafted));
        faults.Fits(Batch, 60);
    }
}
