using System.Text.Json.Serialization;

namespace ColonyLineage.Entries;

/// <summary>How a queen that is not in a colony, or not only there, came to her end.</summary>
[JsonConverter(typeof(WordJson<QueenEnd>))]
public enum QueenEnd
{
    /// <summary>Lost: flown, failed to return, not found again.</summary>
    Lost,

    /// <summary>Culled: killed on purpose because she was not wanted.</summary>
    Culled,

    /// <summary>Found dead.</summary>
    Died,

    /// <summary>Sold or given away.</summary>
    Sold,
}

/// <summary>A queen is lost, culled, dead or sold. (Killed in her colony: <see cref="QueenKilled"/>; replaced: <see cref="SupersedureSeen"/>.)</summary>
[Kind("queen-ended", 1)]
public sealed record QueenEnded : QueenEntry
{
    /// <summary>How.</summary>
    public required QueenEnd How { get; init; }

    /// <summary>The colony she was in, where she was in one.</summary>
    public ColonyId? Colony { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override IEnumerable<Subject> AlsoConcerns => Subjects.Of(null, colony: Colony);

    /// <inheritdoc/>
    protected override void CheckOwn(Faults faults)
    {
        faults.Known<QueenEnd>(How);
        faults.Fits(Colony);
    }
}
