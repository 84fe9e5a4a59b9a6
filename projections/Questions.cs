using ColonyLineage.Projections.Conflicts;
using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Projections.Losses;
using ColonyLineage.Projections.MiteWatch;
using ColonyLineage.Projections.OwedWork;
using ColonyLineage.Projections.QueensByAge;
using ColonyLineage.Projections.Register;
using ColonyLineage.Projections.SpotStory;
using ColonyLineage.Projections.StoresAndFeed;

namespace ColonyLineage.Projections;

/// <summary>All the questions that the books answer. A new one is a folder of its own and a line here.</summary>
public static class Questions
{
    public static readonly QueensByAgeQuestion QueensByAge = new();
    public static readonly DoseCompletenessQuestion DoseCompleteness = new();
    public static readonly SpotStoryQuestion SpotStory = new();
    public static readonly LineageQuestion Lineage = new();
    public static readonly MiteWatchQuestion MiteWatch = new();
    public static readonly ConflictsQuestion Conflicts = new();
    public static readonly RegisterQuestion Register = new();
    public static readonly OpenWorkQuestion OpenWork = new();
    public static readonly StoresAndFeedQuestion StoresAndFeed = new();
    public static readonly LossesQuestion Losses = new();
    public static readonly ReignsQuestion Reigns = new();
    public static readonly TraitsQuestion Traits = new();

    public static readonly IReadOnlyList<IQuestion> All = [QueensByAge, DoseCompleteness, SpotStory, Lineage, MiteWatch, Conflicts, Register, OpenWork, StoresAndFeed, Losses, Reigns, Traits];
}
