namespace ColonyLineage.Entries;

/// <summary>An entry about work that another entry left open, at a colony or at a yard.</summary>
public abstract record OwedEntry : Entry
{
    /// <summary>What is owed, by its fixed name, 1 to 60 characters.</summary>
    public required string Work { get; init; }

    /// <summary>The entry that left it open.</summary>
    public required EntryId Opened { get; init; }

    /// <summary>The colony at which it is owed; null for work of a whole yard.</summary>
    public ColonyId? Colony { get; init; }

    /// <summary>The yard at which it is owed; null for work at a colony.</summary>
    public YardId? Yard { get; init; }

    /// <summary>Why, 1 to 500 characters.</summary>
    public required string Why { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public sealed override Subject Stream => Colony is { } colony ? colony : Yard is { } yard ? yard : Subject.Outfit;

    /// <inheritdoc/>
    protected sealed override void CheckFields(Faults faults)
    {
        faults.Needs(Work, 60);
        faults.Needs(Opened);
        faults.Fits(Colony);
        faults.Fits(Yard);
        if (Colony is null == Yard is null) faults.Add(Refusals.Missing, nameof(Colony), "Say at which colony, or at which yard; one of the two.");
        faults.Needs(Why, 500);
        CheckOwn(faults);
    }

    /// <summary>Checks what this kind adds.</summary>
    protected virtual void CheckOwn(Faults faults)
    {
    }
}
