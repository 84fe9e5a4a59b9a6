namespace ColonyLineage.Entries;

/// <summary>An entry that is appended to a queen's stream.</summary>
public abstract record QueenEntry : Entry
{
    /// <summary>The queen.</summary>
    public required QueenId Queen { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public sealed override Subject Stream => Queen;

    /// <inheritdoc/>
    protected sealed override void CheckFields(Faults faults)
    {
        faults.Needs(Queen);
        CheckOwn(faults);
    }

    /// <summary>Checks what this kind adds.</summary>
    protected virtual void CheckOwn(Faults faults)
    {
    }
}
