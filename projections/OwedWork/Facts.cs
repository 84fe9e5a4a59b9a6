using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.MiteWatch;
using ColonyLineage.Projections.QueensByAge;
using ColonyLineage.Projections.Register;
using ColonyLineage.Projections.SpotStory;

namespace ColonyLineage.Projections.OwedWork;

/// <summary>What owed work is reckoned from: the rows of other questions, all of the outfit, by the same clocks.</summary>
/// <param name="Today">The day for which it is asked.</param>
/// <param name="Yards">The cards of all yards.</param>
public sealed record Facts(
    DateOnly Today,
    OutfitCard Outfit,
    IReadOnlyList<YardCard> Yards,
    IReadOnlyList<OpenWorkRow> Open,
    IReadOnlyList<DoseRow> Doses,
    IReadOnlyList<WashRow> Washes,
    IReadOnlyList<QueenRow> Living,
    IReadOnlyList<RegisterRow> Register,
    IReadOnlyList<BandRow> Bands)
{
    /// <summary>The season that today is in.</summary>
    public int ThisSeason => Season.Of(Today, Outfit.SeasonStartMonth);

    /// <summary>The doses of living colonies in this season, every begun yard made whole.</summary>
    public IReadOnlyList<DoseRow> WholeYards()
    {
        var register = Register.Where(row => row.Kind == SubjectKind.Colony).ToDictionary(row => row.Id);
        return DoseCompletenessQuestion.WholeYards([.. Doses.Where(row => row.Ended is null && row.Season == ThisSeason)], Living, register, ThisSeason, Outfit.SeasonStartMonth);
    }
}
