namespace ColonyLineage.Entries;

/// <summary>A feeder is put on.</summary>
[Kind("feeder-put-on", 1)]
public sealed record FeederPutOn : ColonyEntry
{
    /// <summary>Which feeder, in the outfit's words, at most 100 characters.</summary>
    public string? Feeder { get; init; }

    /// <summary>How much it holds.</summary>
    public Quantity? Holds { get; init; }

    /// <summary>Where it sits.</summary>
    public FeederPlace? Place { get; init; }

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Fits(Feeder, 100);
        faults.Fits(Holds);
        if (Holds is { Unit: not null } && Units.IsKnown(Holds.Unit) && Holds.InLitres() is null)
            faults.Add(Refusals.UnknownUnit, nameof(Holds), $"Holds: a volume, so in L, mL, gal-us, qt-us or gal-imp; this is in {Holds.Unit}.");
        faults.Known(Place);
    }
}
