namespace ColonyLineage.Entries;

/// <summary>A colony is set on a spot: placed there for the first time, or moved from where it stood. Its history goes with it.</summary>
[Kind("moved", 1)]
public sealed record Moved : ColonyEntry
{
    /// <summary>The spot it was set on.</summary>
    public required Spot To { get; init; }

    /// <summary>The spot it was taken from, as the person believes. Where the books say otherwise, that is a conflict.</summary>
    public Spot? From { get; init; }

    /// <summary>It stands above another colony over a screen board.</summary>
    public bool Above { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(To.Yard).Concat(Subjects.Of(From?.Yard));

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Needs(To);
        if (From is { } from)
        {
            faults.Needs(from, nameof(From));
            if (from == To) faults.Add(Refusals.OfItself, nameof(To), "The colony already stands there: name another spot.");
        }
    }
}
