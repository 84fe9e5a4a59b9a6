namespace ColonyLineage.Entries;

/// <summary>A nuc is transferred from its nuc box into a full one. It stays the same colony.</summary>
[Kind("nuc-transferred", 1)]
public sealed record NucTransferred : ColonyEntry
{
    /// <summary>What it is housed in now.</summary>
    public Housing Into { get; init; } = Housing.Single;

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults) => faults.Known<Housing>(Into);
}
