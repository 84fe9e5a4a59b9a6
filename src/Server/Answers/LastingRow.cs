using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Losses;

namespace ColonyLineage.Server.Answers;

/// <summary>A step of one of the curves of how long colonies last.</summary>
internal sealed record LastingRow : IRow
{
    /// <summary><c>notLost</c>: the share not lost, if nothing but loss ended colonies (Kaplan and Meier); <c>ended</c>: the share ended in one of the ways that exclude each other (Aalen and Johansen).</summary>
    public required string Curve { get; init; }

    /// <summary>Days.</summary>
    public required decimal Days { get; init; }

    /// <summary>Of <c>ended</c>: dead, givenUp or combined.</summary>
    public string? How { get; init; }

    /// <summary>Of <c>notLost</c>: colonies watched just before, and lost at this step.</summary>
    public int? AtRisk { get; init; }

    public int? Lost { get; init; }

    /// <summary>0 to 1.</summary>
    public required decimal Share { get; init; }

    /// <summary>Of <c>notLost</c>: its 95 % interval.</summary>
    public decimal? Lower { get; init; }

    public decimal? Upper { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }

    /// <summary>Both curves, one after the other.</summary>
    public static IEnumerable<LastingRow> Of(Lasting lasting) =>
    [
        .. lasting.Curve.Select(step => new LastingRow { Curve = "notLost", Days = step.Days, AtRisk = step.AtRisk, Lost = step.Lost, Share = step.Share, Lower = step.Lower, Upper = step.Upper, Entries = step.Entries }),
        .. lasting.Ends.Select(step => new LastingRow { Curve = "ended", Days = step.Days, How = step.How, Share = step.Share, Entries = step.Entries }),
    ];
}
