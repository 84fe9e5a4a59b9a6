using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Conflicts;
using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.QueensByAge;
using ColonyLineage.Simulation;

namespace ColonyLineage.Core.Tests.Simulation;

/// <summary>
/// The laws on invented histories. COLONY_LINEAGE_SEED starts elsewhere, COLONY_LINEAGE_HISTORIES tries more; 100,000 of them are for
/// tools/simulate.
/// </summary>
public class LawTests(ITestOutputHelper output)
{
    private static readonly ulong Seed = ulong.TryParse(Environment.GetEnvironmentVariable("COLONY_LINEAGE_SEED"), out var seed) ? seed : 20_260_301;
    private static readonly int Histories = int.TryParse(Environment.GetEnvironmentVariable("COLONY_LINEAGE_HISTORIES"), out var count) ? count : 2_000;

    [Fact]
    public void All_laws_hold_on_two_thousand_histories()
    {
        output.WriteLine($"{Histories} histories from seed {Seed}");
        string? report = null;
        Parallel.For(0, Histories, (i, loop) =>
        {
            var own = Seed + (ulong)i;
            var history = Generator.Make(own);
            if (new Checks(Folds.Real, own).Find(history) is not { } failure) return;
            report ??= Report.Of(Folds.Real, history, own, failure, out _);
            loop.Stop();
        });
        Assert.True(report is null, report);
    }

    [Fact]
    public void A_seed_always_gives_the_same_history_and_its_json_reads_back()
    {
        for (var seed = Seed; seed < Seed + 50; seed++)
        {
            var json = HistoryText.Json(Generator.Make(seed));
            Assert.Equal(json, HistoryText.Json(Generator.Make(seed)));
            Assert.Equal(json, HistoryText.Json(HistoryText.Read(json)));
        }
    }

    /// <summary>A law proves nothing about what is never tried: what the histories must reach, all of them together.</summary>
    [Fact]
    public void The_histories_reach_what_the_laws_are_about()
    {
        var reached = new HashSet<string>();
        for (var seed = Seed; seed < Seed + 1_000; seed++)
        {
            var history = Generator.Make(seed);
            Arrival(history, reached);
            var books = WholeBooks.Of(history);
            foreach (var row in books.Rows(Questions.Conflicts)) reached.Add(row.Settled ? "settled" : row.Conflict);
            foreach (var row in books.Rows(Questions.QueensByAge)) Queen(row, reached);
            foreach (var row in books.Rows(Questions.DoseCompleteness)) Dose(row, reached);
            foreach (var row in books.Rows(Questions.SpotStory))
            {
                if (row.Above) reached.Add("above");
                if (row.GoneFrom != row.GoneTo) reached.Add("dead-out in an interval");
            }

            foreach (var link in books.Rows(Questions.Lineage)) reached.Add($"link {link.Link}");
        }

        string[] must =
        [
            .. Kinds.All.Select(kind => kind.Kind.Name), .. Enum.GetNames<HowCame>().Select(came => $"came {came}"), .. Enum.GetNames<LinkKind>().Select(link => $"link {link}"),
            "after-end", "before-beginning", "two-on-a-spot", "moved-from-elsewhere", "queen-in-two-places", "mark-against-record", "too-many-mites", "daughter-older", "settled",
            "certain", "possible", "unknown", "line", "queen", "unnamed queen", "none known", "above", "dead-out in an interval",
            "three colonies on a path", "back into its maker", "frames less treated", "too many", "owed", "course not defined",
            "late", "void before its target", "voided twice", "void of a void", "ties of day and order", "an interval", "season of the south",
        ];
        Assert.Empty(must.Except(reached).Order());
    }

    private static void Arrival(IReadOnlyList<Recorded> history, HashSet<string> reached)
    {
        var at = history.ToDictionary(recorded => recorded.Entry.Id);
        foreach (var (entry, when) in history)
        {
            reached.Add(Kinds.Of(entry).Name);
            if (DateOnly.FromDateTime(when.UtcDateTime) > entry.On.Day.AddDays(30)) reached.Add("late");
            if (entry.On.After is not null) reached.Add("an interval");
            if (entry is OutfitDescribed { SeasonStartMonth: 7 }) reached.Add("season of the south");
            if (entry is not Voided voided) continue;
            if (at[voided.Entry].At > when) reached.Add("void before its target");
            if (at[voided.Entry].Entry is Voided) reached.Add("void of a void");
            if (history.Count(other => other.Entry is Voided second && second.Entry == voided.Entry) > 1) reached.Add("voided twice");
        }

        if (history.GroupBy(recorded => (recorded.Entry.On.Day, recorded.Entry.Order)).Any(group => group.Count() > 1)) reached.Add("ties of day and order");
    }

    private static void Queen(QueenRow row, HashSet<string> reached)
    {
        reached.UnionWith([row.Sure, row.Presence, $"came {row.Came}"]);
        if (row.Line is not null) reached.Add("line");
    }

    private static void Dose(DoseRow row, HashSet<string> reached)
    {
        var path = row.Path.Split(" → ");
        if (path.Length > 2) reached.Add("three colonies on a path");
        if (path.Distinct().Count() < path.Length) reached.Add("back into its maker");
        if (row.FramesRemark is not null) reached.Add("frames less treated");
        if (row.TooMany > 0) reached.Add("too many");
        if (row.Owed > 0) reached.Add("owed");
        if (row.FullDoses is null) reached.Add("course not defined");
    }
}
