using ColonyLineage.Entries;
using ColonyLineage.Ledger.Import;
using Xunit;

namespace ColonyLineage.Core.Tests.Import;

/// <summary>
/// The import of the real sheet, against what its SOURCE.md says is known of it (Aurell et al. 2025, doi 10.1093/jee/toaf126, data
/// CC BY 4.0). Skipped where the shared folder is absent.
/// </summary>
public sealed class SplitStudyTests
{
    private static readonly DateOnly Today = new(2026, 1, 1);

    private static ImportPlan Plan()
    {
        using var sheet = File.OpenRead(Places.Shared("data", "split-study-2022", "field-sheet.csv"));
        return SheetImport.Plan(sheet, Map(), Today);
    }

    private static Mapping Map() => Mapping.Read(File.ReadAllText(Path.Combine(Places.Import, "split-study-2022.map.json")));

    [Fact]
    public void No_cell_is_bad_and_every_entry_may_be_recorded()
    {
        var plan = Plan();
        Assert.Empty(plan.Bad);
        Assert.Equal(177, plan.GoodRows);
        Assert.All(plan.Entries, entry => Assert.Empty(entry.Check()));
        Assert.All(plan.Entries, entry => Assert.Equal(plan.Act, entry.Act));
        Assert.Distinct(plan.Entries.Select(entry => entry.Id));
    }

    [Fact] // SOURCE.md: 177 splits in four yards; 65 parents in nine parent yards
    public void Splits_and_parents_stand_in_their_yards()
    {
        var plan = Plan();
        var yards = plan.Entries.OfType<YardOpened>().ToDictionary(yard => yard.Yard, yard => yard.Name);
        var colonies = plan.Entries.OfType<ColonyEstablished>().ToList();
        var splits = colonies.Where(colony => colony.How == HowEstablished.Split).ToList();
        var parents = colonies.Where(colony => colony.How == HowEstablished.OpeningCount).ToList();

        Assert.Equal(177, splits.DistinctBy(split => split.Colony).Count());
        Assert.Equal(["Shaw", "Shooting Range", "Turfgrass", "Wire"], splits.Select(split => yards[split.At!.Value.Yard]).Distinct().Order());
        Assert.Equal(65, parents.DistinctBy(parent => parent.Colony).Count());
        Assert.Equal(9, parents.Select(parent => parent.At!.Value.Yard).Distinct().Count());
        Assert.Equal(12, yards.Count); // Shooting Range is both
        Assert.Equal(12, yards.Values.Distinct().Count());
    }

    [Fact]
    public void Every_split_has_one_parent_and_one_queen_cell()
    {
        var plan = Plan();
        var splits = plan.Entries.OfType<ColonyEstablished>().Where(colony => colony.How == HowEstablished.Split).Select(colony => colony.Colony).ToHashSet();
        var parents = plan.Entries.OfType<ColonyEstablished>().Where(colony => colony.How == HowEstablished.OpeningCount).ToDictionary(colony => colony.Colony, colony => colony.Number);
        var made = plan.Entries.OfType<SplitFrom>().ToList();

        Assert.Equal(177, made.Count);
        Assert.True(splits.SetEquals(made.Select(split => split.Into)));
        Assert.True(parents.Keys.ToHashSet().SetEquals(made.Select(split => split.Colony)));
        Assert.Equal(3, made.Count(split => parents[split.Colony] == "21-030")); // the sheet's column splits_made
        Assert.True(splits.SetEquals(plan.Entries.OfType<QueenCellGiven>().Select(cell => cell.Colony)));
        Assert.Equal(177, plan.Entries.OfType<QueenCellGiven>().Select(cell => cell.Queen).Distinct().Count());
    }

    [Fact] // SOURCE.md: 437 washes have both counts
    public void All_washes_have_both_counts() => Assert.Equal(437, Plan().Entries.OfType<Washed>().Count());

    [Fact] // SOURCE.md: first wash, pooled over a yard: Wire 61 / 10,692 = 0.5705 % in 35 colonies
    public void First_wash_of_Wire()
    {
        var plan = Plan();
        var wire = plan.Entries.OfType<YardOpened>().Single(yard => yard.Name == "Wire").Yard;
        var there = plan.Entries.OfType<ColonyEstablished>().Where(colony => colony.At?.Yard == wire).Select(colony => colony.Colony).ToHashSet();
        var first = plan.Entries.OfType<Washed>().Where(wash => there.Contains(wash.Colony))
            .GroupBy(wash => wash.Colony).Select(washes => washes.MinBy(wash => wash.On.Day)!).ToList();

        Assert.Equal(35, first.Count);
        Assert.Equal(61, first.Sum(wash => wash.Mites));
        Assert.Equal(10_692, first.Sum(wash => wash.Bees));
        Assert.Equal(0.5705m, Math.Round(100m * first.Sum(wash => wash.Mites) / first.Sum(wash => wash.Bees), 4));
    }

    [Fact] // the sheet: date_decided_remove and reason_removal are filled in 55 rows, 14 of them 'Failed to mate'
    public void Colonies_taken_out_with_the_reason()
    {
        var taken = Plan().Entries.OfType<TakenOut>().ToList();
        // SOURCE.md: 60 with an issue; five of them were not removed.
        Assert.Equal((60, 5), (taken.Count, taken.Count(colony => colony.Why == "an issue by the authors' judgement")));
        Assert.Equal(14, taken.Count(colony => colony.Why == "Failed to mate"));
        Assert.All(taken, colony => Assert.Equal(2022, colony.On.Day.Year)); // '24-May' has no year in the sheet
    }

    [Fact] // counted in the sheet's columns chNN_qstatus
    public void Queens_by_state_at_each_look()
    {
        var plan = Plan();
        var looks = plan.Entries.OfType<Inspected>().GroupBy(look => look.Order).OrderBy(looks => looks.Key).Select(looks => looks.ToList()).ToList();
        Assert.Equal(7, looks.Count); // days 18, 30, 44, 58, 72, 77 and after harvest
        Assert.Equal((50, 43, 64, 20), (Of(0, QueenFinding.Seen), Of(0, QueenFinding.Queenright), Of(0, QueenFinding.NotSeen), Of(0, QueenFinding.VirginSeen)));
        Assert.Equal((130, 4, 1, 1), (Of(1, QueenFinding.Queenright), Of(1, QueenFinding.Queenless), Of(1, QueenFinding.LayingWorkers), Of(1, QueenFinding.DroneLayer)));
        Assert.Equal((139, 11, 8), (Of(2, QueenFinding.Queenright), Of(2, QueenFinding.Seen), Of(2, QueenFinding.DroneLayer)));
        Assert.Equal((131, 3), (Of(3, QueenFinding.Queenright), Of(3, QueenFinding.DroneLayer)));
        Assert.Equal((123, 2), (Of(4, QueenFinding.Queenright), Of(4, QueenFinding.Queenless)));
        Assert.Equal((61, 72, 1), (Of(5, QueenFinding.Seen), Of(5, QueenFinding.Queenright), Of(5, QueenFinding.VirginSeen)));
        Assert.Equal((13, 100, 6), (Of(6, QueenFinding.Seen), Of(6, QueenFinding.Queenright), Of(6, QueenFinding.Queenless)));

        int Of(int look, QueenFinding finding) => looks[look].Count(inspected => inspected.Queen == finding);
    }

    [Fact] // counted in the sheet: ch77_lbs is filled in 139 rows, post_lbs in 123
    public void Weights_keep_their_pounds()
    {
        var weights = Plan().Entries.OfType<Weighed>().ToList();
        Assert.Equal(139 + 123, weights.Count);
        Assert.All(weights, weight => Assert.Equal("lb", weight.Gross.Unit));
    }

    [Fact]
    public void No_dose_is_invented() => Assert.Empty(Plan().Entries.OfType<Treated>());

    [Fact]
    public void A_second_plan_is_the_same()
    {
        var (first, second) = (Plan(), Plan());
        Assert.Equal(first.Act, second.Act);
        Assert.Equal(first.Entries.Select(EntryJson.Write), second.Entries.Select(EntryJson.Write));
    }
}
