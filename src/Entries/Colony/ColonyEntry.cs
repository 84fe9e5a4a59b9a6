namespace ColonyLineage.Entries;

/// <summary>An entry that is appended to a colony's stream.</summary>
public abstract record ColonyEntry : Entry
{
    /// <summary>The colony.</summary>
    public required ColonyId Colony { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public sealed override Subject Stream => Colony;

    /// <inheritdoc/>
    protected sealed override void CheckFields(Faults faults)
    {
        faults.Needs(Colony);
        CheckOwn(faults);
    }

    /// <summary>Checks what this kind adds.</summary>
    protected virtual void CheckOwn(Faults faults)
    {
    }
}
