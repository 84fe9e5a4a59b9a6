using ColonyLineage.Core.Tests.Projections.Sums;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Losses;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>Lives, reigns and the rates of loss. Worked out by hand, or from the sources named.</summary>
public class LossesCases
{
    private static readonly OutfitCard Outfit = new();

    /// <summary>BEEBOOK, van der Zee et al. 2013, 2.3: dead, or too few bees or a queen problem that cannot be solved. What is combined or sold is not lost.</summary>
    [Fact]
    public void What_is_lost()
    {
        var story = new Story();
        story.OpenYard("A");
        foreach (var (colony, spot) in new[] { "dead", "dud", "joined", "sold", "lives" }.Select((colony, i) => (colony, i + 1))) story.Begins(colony, "1 May 2025", $"A {spot}", how: HowEstablished.Bought);
        story.Look("dead", "1 Oct 2025", QueenFinding.Seen);
        story.Dead("dead", "1 Mar 2026");
        story.GivenUp("dud", "1 Aug 2025", "drone layer");
        story.Combine("joined", "lives", "1 Sep 2025");
        story.Tell((id, act, order) => new Sold { Id = id, Act = act, Order = order, On = Story.Day("1 Jul 2025"), Colony = Story.Colony("sold"), To = "a neighbour" });
        var rows = Rows(story);
        Assert.Equal([("dead", true, "found dead"), ("dud", true, "given up: drone layer"), ("joined", false, null), ("lives", false, null), ("sold", false, null)],
            rows.Values.OrderBy(row => row.Colony, StringComparer.Ordinal).Select(row => (row.Colony, row.Lost, row.Why)));
        Assert.Equal((EndKind.Combined, EndKind.Sold, null), (rows["joined"].End, rows["sold"].End, rows["lives"].End));
        // It died after it was last seen alive, and stood on its spot to the end.
        Assert.Equal((Story.Day("2 Oct 2025"), Story.Day("1 Mar 2026"), "1"), (rows["dead"].EndedFrom, rows["dead"].Ended, rows["dead"].Spot));
        Assert.Equal(Story.Day("16 Dec 2025"), rows["dead"].EndTaken());
        Assert.Equal(2, rows["dead"].Entries.Count);
    }

    /// <summary>A mating nuc exists to get a queen mated: given up in autumn it is no loss. Set into a full box it is a colony like others.</summary>
    [Fact]
    public void Mating_nucs_are_in_no_rate()
    {
        var story = new Story();
        story.OpenYard("A");
        foreach (var (colony, spot) in (ReadOnlySpan<(string, string)>)[("nuc", "A 1"), ("grown", "A 2"), ("full", "A 3")])
            story.Begins(colony, "1 May 2025", spot, how: HowEstablished.Split, housing: colony == "full" ? Housing.Single : Housing.MatingNuc);
        story.Tell((id, act, order) => new NucTransferred { Id = id, Act = act, Order = order, On = Story.Day("1 Jun 2025"), Colony = Story.Colony("grown") });
        story.GivenUp("nuc", "10 Oct 2025", "season over");
        Assert.True(Rows(story)["nuc"].MatingNuc);
        var winter = Wintering.Of(Rows(story).Values, Outfit, Story.Day("1 May 2026")).First(row => row is { Period: LossPeriod.Winter, By: LossBy.All });
        Assert.Equal((2, 0), (winter.AtRisk, winter.Lost));
        Assert.Equal(2, HowLong.Of(Rows(story).Values, Story.Day("1 May 2026")).Colonies);
    }

    [Fact]
    public void An_opening_count_tells_no_age_unless_it_says_so()
    {
        var story = new Story();
        story.OpenYard("A");
        story.Begins("old", "1 May 2025", "A 1");
        story.Made("nuc", "1 Jun 2025", ["old"], "A 2");
        story.Tell((id, act, order) => new ColonyEstablished
        {
            Id = id, Act = act, Order = order, On = new Occurred(Story.Day("1 May 2025"), Story.Day("31 May 2024")), Colony = Story.Colony("between"), Number = "between", How = HowEstablished.OpeningCount,
        });
        story.Look("nobody", "3 May 2025", QueenFinding.Seen);
        var rows = Rows(story);
        Assert.Equal((null, Story.Day("1 May 2025")), (rows["old"].Began, rows["old"].KnownFrom));
        Assert.Equal((Story.Day("1 Jun 2025"), Story.Day("1 Jun 2025"), HowEstablished.Nuc), (rows["nuc"].Began, rows["nuc"].KnownFrom, rows["nuc"].Came));
        Assert.Equal((Story.Day("1 Jun 2024"), Story.Day("1 May 2025")), (rows["between"].Began, rows["between"].KnownFrom));
        var unknown = rows.Values.Single(row => row.Came is null);
        Assert.Equal((null, Story.Day("3 May 2025")), (unknown.Began, unknown.KnownFrom));
    }

    [Fact]
    public void The_last_queen_and_her_line()
    {
        var story = Requeened();
        story.Dead("c", "1 Mar 2026", "10 Oct 2025");
        var row = Rows(story)["c"];
        Assert.Equal(("young", 2025, 2025, "North"), (row.Queen, row.QueenSeasonFrom, row.QueenSeasonTo, row.Line));
        Assert.Equal([("old", HowWent.Killed), ("young", HowWent.ColonyEnded)], Reigns(story).Select(reign => (reign.Queen, reign.Went!.Value)));
        Assert.Equal((Story.Day("11 Oct 2025"), Story.Day("1 Mar 2026"), Story.Day("1 Aug 2025")), (Reigns(story)[1].GoneFrom, Reigns(story)[1].GoneTo, Reigns(story)[1].LastSeen));
    }

    /// <summary>A national survey's definition: 1,000, of them 700 after the winter, 600 made, 1,000 in October: 30 %, 300 of 1,300 = 23.08 %, 600 of 1,600 = 37.5 %.</summary>
    [Fact]
    public void Winter_summer_and_year_are_counted_each_on_its_own()
    {
        var rows = Enumerable.Range(0, 1600).Select(i => Life($"{i}", "A", i < 1000 ? "1 Sep 2025" : "1 May 2026", i < 300 ? "1 Jan 2026" : i < 600 ? "1 Aug 2026" : null));
        var rates = Wintering.Of(rows, Outfit, Story.Day("1 Nov 2026")).Where(row => row is { By: LossBy.All, Winter: 2025 }).ToDictionary(row => row.Period);
        Assert.Equal((1000, 300, .3m), Rate(rates[LossPeriod.Winter]));
        Assert.Equal((1300, 300, .2308m), Rate(rates[LossPeriod.Summer]));
        Assert.Equal((1600, 600, .375m), Rate(rates[LossPeriod.Year]));
        Assert.Equal((Story.Day("1 Oct 2025"), Story.Day("15 Apr 2026"), Story.Day("16 Apr 2026"), Story.Day("30 Sep 2026")),
            (rates[LossPeriod.Winter].From, rates[LossPeriod.Winter].To, rates[LossPeriod.Summer].From, rates[LossPeriod.Summer].To));
    }

    /// <summary>R's quasi-binomial and the clustered standard error: see Sums/LossRateTests. The average is the yards' mean.</summary>
    [Fact]
    public void Two_rates_and_whose_the_intervals_are()
    {
        int[] lost = [0, 1, 2, 5, 40, 0, 3, 12];
        int[] of = [3, 5, 8, 20, 300, 6, 10, 60];
        var rows = lost.Zip(of).SelectMany((yard, i) => Enumerable.Range(0, yard.Second).Select(n => Life($"{i} {n}", $"Y{i}", "1 Sep 2025", n < yard.First ? "1 Jan 2026" : null)));
        var all = Wintering.Of(rows, Outfit, Story.Day("1 May 2026")).Single(row => row is { By: LossBy.All, Period: LossPeriod.Winter });
        Assert.Equal((.1529m, .1667m, 8), (all.OverallRate, all.AverageRate, all.Yards));
        Assert.Equal((.1206m, .1920m, 1.0476m), (all.OverallQuasiLower, all.OverallQuasiUpper, all.Dispersion));
        Assert.Equal((.1095m, .1964m), (all.OverallClusteredLower, all.OverallClusteredUpper));
        // 63 of 412: prop.test in R 4.2.2, without correction.
        Assert.Equal((.1214m, .1909m), (all.OverallWilsonLower, all.OverallWilsonUpper));
    }

    [Fact]
    public void Sold_is_out_of_it_and_combined_is_not_lost()
    {
        LifeRow[] rows =
        [
            Life("a", "A", "1 Sep 2025"), Life("b", "A", "1 Sep 2025", "1 Jan 2026"), Life("c", "A", "1 Sep 2025", "1 Nov 2025", EndKind.Combined), Life("d", "A", "1 Sep 2025", "1 Mar 2026", EndKind.Sold),
            Life("e", "B", "1 Sep 2025", "1 Feb 2026", EndKind.GivenUp), Life("gone", "B", "1 May 2025", "1 Aug 2025"), Life("late", "B", "1 Dec 2025", "1 Mar 2026"), Life("summer", "B", "1 Sep 2025", "16 Apr 2026"),
        ];
        var winter = Wintering.Of(rows, Outfit, Story.Day("1 May 2026")).Where(row => row is { Winter: 2025, Period: LossPeriod.Winter }).ToList();
        var all = winter.Single(row => row.By == LossBy.All);
        Assert.Equal((5, 2, .4m), Rate(all));
        Assert.Equal((1, 1, 0, 2), (all.Combined, all.Sold, all.LostUnsure, all.Yards));
        Assert.Equal([("A", 3, 1), ("B", 2, 1)], winter.Where(row => row.By == LossBy.Yard).Select(row => (row.Group, row.AtRisk, row.Lost)));
        Assert.Equal(.4167m, all.AverageRate);
        Assert.Null(winter.Single(row => row is { By: LossBy.Yard, Group: "A" }).OverallClusteredLower);
    }

    /// <summary>Found dead in spring, last seen in autumn: the middle of the days counts, and the row says how many are unsure.</summary>
    [Fact]
    public void An_end_between_two_visits()
    {
        LifeRow[] rows =
        [
            Life("lives", "A", "1 Sep 2025"),
            Life("winter", "A", "1 Sep 2025", "1 May 2026") with { EndedFrom = Story.Day("20 Sep 2025") }, // Middle: 9 January.
            Life("before", "A", "1 Jul 2025", "2 Oct 2025") with { EndedFrom = Story.Day("1 Aug 2025") }, // Middle: 1 September.
            Life("after", "A", "1 Jul 2025", "1 Jul 2026") with { EndedFrom = Story.Day("10 Apr 2026") }, // Middle: 21 May.
        ];
        var rates = Wintering.Of(rows, Outfit, Story.Day("1 Nov 2026")).Where(row => row is { By: LossBy.All, Winter: 2025 }).ToDictionary(row => row.Period);
        Assert.Equal((3, 1, 1), (rates[LossPeriod.Winter].AtRisk, rates[LossPeriod.Winter].Lost, rates[LossPeriod.Winter].LostUnsure));
        Assert.Equal((2, 1, 1), (rates[LossPeriod.Summer].AtRisk, rates[LossPeriod.Summer].Lost, rates[LossPeriod.Summer].LostUnsure));
    }

    [Fact]
    public void A_winter_that_is_not_over_says_so_and_nothing_is_told_of_days_to_come()
    {
        LifeRow[] rows = [Life("a", "A", "1 Sep 2025"), Life("b", "A", "1 Sep 2025", "1 Mar 2026")];
        var row = Assert.Single(Wintering.Of(rows, Outfit, Story.Day("1 Jan 2026")), row => row is { By: LossBy.All, Period: LossPeriod.Winter });
        Assert.Equal((false, 2, 0), (row.Over, row.AtRisk, row.Lost));
        Assert.Empty(Wintering.Of([], Outfit, Story.Day("1 Jan 2026")));
    }

    /// <summary>South of the equator: a winter within one calendar year.</summary>
    [Fact]
    public void The_winter_is_what_is_asked_for()
    {
        var row = Wintering.Of([Life("a", "A", "1 Mar 2025", "1 Jul 2025"), Life("b", "A", "1 Mar 2025")], Outfit, Story.Day("1 Nov 2025"), new Winter(5, 1, 8, 31))
            .Single(row => row is { By: LossBy.All, Period: LossPeriod.Winter });
        Assert.Equal((2025, Story.Day("1 May 2025"), Story.Day("31 Aug 2025"), .5m), (row.Winter, row.From, row.To, row.OverallRate));
        Assert.Equal(Story.Day("28 Feb 2026"), new Winter(11, 1, 2, 29).To(2025));
    }

    /// <summary>Requeened and moved since: a winter is counted by the queen and the yard of its own time.</summary>
    [Fact]
    public void By_the_queen_and_the_yard_that_there_were_then()
    {
        var story = Requeened();
        var asked = Story.Day("1 Dec 2025");
        var books = story.Books();
        var beside = new Beside { Reigns = [.. books.Rows(Questions.Reigns)], Stays = [.. books.Rows(Questions.SpotStory)] };
        var rates = Wintering.Of(books.Rows(Questions.Losses), Outfit, asked, beside: beside).Where(row => row.Period == LossPeriod.Winter).ToList();
        Assert.Equal([(2023, "K", "0", "unknown"), (2024, "K", "1", "unknown"), (2025, "M", "0", "North")],
            rates.GroupBy(row => row.Winter).Select(winter => (winter.Key, Group(winter, LossBy.Yard), Group(winter, LossBy.QueenAge), Group(winter, LossBy.Line))));

        // With the lives alone: the last yard, and nothing of a queen who was not born then.
        var alone = Wintering.Of(books.Rows(Questions.Losses), Outfit, asked).Where(row => row.Period == LossPeriod.Winter).ToList();
        Assert.Equal([(2023, "M", "unknown", "unknown"), (2024, "M", "unknown", "unknown"), (2025, "M", "0", "North")],
            alone.GroupBy(row => row.Winter).Select(winter => (winter.Key, Group(winter, LossBy.Yard), Group(winter, LossBy.QueenAge), Group(winter, LossBy.Line))));
        Assert.DoesNotContain(alone, row => row.By == LossBy.Treatment);

        static string Group(IEnumerable<LossRow> winter, LossBy kind) => winter.Single(row => row.By == kind).Group;
    }

    [Fact]
    public void By_completeness_of_treatment()
    {
        var story = new Story();
        story.OpenYard("A");
        story.Course("T", 2);
        foreach (var colony in new[] { "full", "half", "none" }) story.Begins(colony, "1 May 2025", $"A {colony}");
        story.Dose("full", "1 Aug 2025", 1);
        story.Dose("full", "15 Aug 2025", 1);
        story.Dose("half", "1 Aug 2025", 1);
        story.Dead("half", "1 Jan 2026", "31 Dec 2025");
        var books = story.Books();
        var rates = Wintering.Of(books.Rows(Questions.Losses), Outfit, Story.Day("1 May 2026"), beside: new Beside { Doses = [.. books.Rows(Questions.DoseCompleteness)] });
        Assert.Equal([("complete", 1, 0), ("incomplete", 1, 1), ("none recorded", 1, 0)], rates.Where(row => row is { By: LossBy.Treatment, Winter: 2025 }).Select(row => (row.Group, row.AtRisk, row.Lost)));
    }

    /// <summary>Bickel et al. 1975, Science 187:398, departments as yards: crude 1.841080, within .904697 (.771907–1.060330), R mantelhaen.test.</summary>
    [Fact]
    public void Pooled_and_within_yards_point_in_opposite_directions()
    {
        (int, int, int, int)[] yards = [(512, 313, 89, 19), (353, 207, 17, 8), (120, 205, 202, 391), (138, 279, 131, 244), (53, 138, 94, 299), (22, 351, 24, 317)];
        var rows = yards.SelectMany((yard, i) => new[] { (yard.Item1, true, "L"), (yard.Item2, false, "L"), (yard.Item3, true, "O"), (yard.Item4, false, "O") }
            .SelectMany(cell => Enumerable.Range(0, cell.Item1).Select(n => Life($"{i} {cell.Item2} {cell.Item3} {n}", $"Y{i}", "1 Sep 2025", cell.Item2 ? "1 Jan 2026" : null) with { Line = cell.Item3, QueenSeasonFrom = 2025, QueenSeasonTo = 2025 })));
        var row = Assert.Single(Paradox.Of(rows, Outfit, Story.Day("1 May 2026")), row => row.Winter == 2025);
        Assert.Equal((LossBy.Line, "L", 1198, 2691, 557, 1835), (row.By, row.Group, row.Lost, row.AtRisk, row.OthersLost, row.OthersAtRisk));
        Assert.Equal((1.8411m, .9047m, .7719m, 1.0603m, true), (row.PooledOddsRatio, row.WithinYardsOddsRatio, row.WithinYardsLower, row.WithinYardsUpper, row.Disagree));
    }

    /// <summary>The left-truncated lives of Sums/SurvivalTests, as days: .8, .64, .512, .384, .192 (R survival). Counted from the books it is another curve.</summary>
    [Fact]
    public void Colonies_that_came_late()
    {
        (int Entry, int Exit, bool Lost)[] lives = [(0, 5, true), (0, 14, true), (0, 20, false), (6, 18, true), (12, 24, true), (12, 13, false), (0, 30, false), (3, 9, true)];
        var asked = Story.Day("1 Jan 2026");
        List<LifeRow> rows = [.. lives.Select((life, i) => Life($"{i}", "A", "1 May 2025") is var row && Story.Day("1 May 2025") is var began
            ? row with { Began = began, KnownFrom = began.AddDays(life.Entry), EndedFrom = began.AddDays(life.Exit), Ended = began.AddDays(life.Exit), End = life.Lost ? EndKind.Dead : EndKind.Sold, Lost = life.Lost } : row)];
        var lasting = HowLong.Of([.. rows, Life("old", "A", "1 May 2025")], asked);
        Assert.Equal([(5, .8m), (9, .64m), (14, .512m), (18, .384m), (24, .192m)], lasting.Curve.Select(step => (step.Days, step.Share)));
        Assert.Equal((18, 8, 1), (lasting.MedianDays, lasting.Colonies, lasting.LeftOut));
        Assert.Equal((.0104m, .5506m), (lasting.Curve[^1].Lower, lasting.Curve[^1].Upper));
        var books = HowLong.Of([.. rows, Life("old", "A", "1 May 2025")], asked, CountedFrom.Books);
        Assert.Equal((9, 0, 5), (books.Colonies, books.LeftOut, books.Curve[0].Days));
    }

    /// <summary>The competing ends of Sums/SurvivalTests: .100, .2143, .3571, .5714 and .100, .2143, .4286 (R survival, Aalen–Johansen).</summary>
    [Fact]
    public void Ends_that_exclude_each_other()
    {
        EndKind?[] how = [EndKind.Dead, EndKind.Combined, null, EndKind.Dead, EndKind.Combined, null, null, EndKind.Dead, EndKind.Dead, EndKind.Combined];
        var asked = Story.Day("1 Jun 2025");
        // What has no end is watched up to the day asked for: it came so many days before.
        var rows = new[] { 4, 6, 7, 9, 10, 12, 15, 15, 18, 20 }.Zip(how, (at, end) =>
        {
            var from = end is null ? asked.AddDays(-at) : Story.Day("1 May 2025");
            var row = Life($"{at} {end}", "A", "1 May 2025") with { Began = from, KnownFrom = from };
            return end is null ? row : row with { EndedFrom = from.AddDays(at), Ended = from.AddDays(at), End = end, Lost = end == EndKind.Dead };
        });
        var ends = HowLong.Of(rows, asked).Ends;
        Assert.Equal([(4, .1m), (9, .2143m), (15, .3571m), (18, .5714m)], ends.Where(end => end.How == "dead").Select(end => (end.Days, end.Share)));
        Assert.Equal([(6, .1m), (10, .2143m), (20, .4286m)], ends.Where(end => end.How == "combined").Select(end => (end.Days, end.Share)));
    }

    [Fact]
    public void A_colony_that_ended_on_its_first_day_lived_half_of_it()
    {
        var lasting = HowLong.Of([Life("a", "A", "1 May 2025", "1 May 2025") with { Began = Story.Day("1 May 2025") }, Life("b", "A", "1 May 2025") with { Began = Story.Day("1 May 2025") }], Story.Day("1 Jun 2025"));
        Assert.Equal([(.5m, 2, .5m)], lasting.Curve.Select(step => (step.Days, step.AtRisk, step.Share)));
    }

    /// <summary>Sums/Golden/interval-censoring, 15 constructed queens, as reigns: 1/9, 2/9, 4/21, 2/63, 11/126, 17/126, 11/252; 5/28 outlast all.</summary>
    [Fact]
    public void Queens_superseded_between_two_visits()
    {
        var came = Story.Day("1 Jun 2025");
        var rows = GoldenFile.Rows("interval-censoring/queens_interval.csv").Select(queen => double.IsPositiveInfinity(queen[2])
            ? Reign(came) with { LastSeen = came.AddDays((int)queen[1]) }
            : Reign(came) with { Went = HowWent.Superseded, GoneFrom = came.AddDays((int)queen[1] + 1), GoneTo = came.AddDays((int)queen[2]) }).ToList();
        var lasting = HowLong.Queens([.. rows, Reign(came) with { BornFrom = came.AddDays(-300) }, Reign(came) with { Came = HowCame.WithColony }, Reign(came)], Story.Day("1 Jan 2027"));
        Assert.Equal([(10, 14, .1111m), (14, 28, .2222m), (45, 60, .1905m), (60, 75, .0317m), (75, 90, .0873m), (90, 120, .1349m), (120, 150, .0437m), (150, null, 0)],
            lasting.Stretches.Select(stretch => (stretch.AfterDays, stretch.UpToDays, stretch.Superseded)));
        Assert.Equal([.8889m, .6667m, .4762m, .4444m, .3571m, .2222m, .1786m, null], lasting.Stretches.Select(stretch => stretch.LivesOn));
        Assert.Equal((15, 11, 3), (lasting.Reigns, lasting.Superseded, lasting.LeftOut));
    }

    /// <summary>Given on 1 July, seen on 1 August, a daughter on 20 September: she went 31 to 81 days after she came. The daughter came between the two, and is seen that day.</summary>
    [Fact]
    public void A_supersedure_told()
    {
        var story = new Story();
        story.Raise("mother", "10 Jun 2025");
        story.Begins("c", "1 Jul 2025", queen: "mother", how: HowEstablished.Nuc);
        story.Look("c", "1 Aug 2025", QueenFinding.Seen);
        story.Superseded("c", "daughter", "20 Sep 2025");
        var reigns = Reigns(story);
        Assert.Equal((HowWent.Superseded, Story.Day("2 Aug 2025"), Story.Day("20 Sep 2025")), (reigns[0].Went!.Value, reigns[0].GoneFrom, reigns[0].GoneTo));
        Assert.Equal((HowCame.Supersedure, Story.Day("2 Aug 2025"), Story.Day("20 Sep 2025")), (reigns[1].Came, reigns[1].SinceFrom, reigns[1].SinceTo));
        var lasting = HowLong.Queens(reigns, Story.Day("1 Oct 2025"));
        Assert.Equal([(31, 81, 1m)], lasting.Stretches.Select(stretch => (stretch.AfterDays, stretch.UpToDays!.Value, stretch.Superseded)));
        // The daughter was seen on the day she was found only: she tells nothing.
        Assert.Equal((1, 1, 1), (lasting.Reigns, lasting.Superseded, lasting.LeftOut));
        // On the day before the supersedure was seen, nothing had ended.
        Assert.Empty(HowLong.Queens(Reigns(story, "19 Sep 2025"), Story.Day("19 Sep 2025")).Stretches);
    }

    private static (int, int, decimal) Rate(LossRow row) => (row.AtRisk, row.Lost, row.OverallRate);

    private static Dictionary<string, LifeRow> Rows(Story story) => story.Books().Rows(Questions.Losses).ToDictionary(row => row.Colony);

    private static List<ReignRow> Reigns(Story story, string? asOf = null) => [.. story.Books(asOf).Rows(Questions.Reigns)];

    /// <summary>With a queen of 2023 until it got a daughter of the North line in 2025, and moved.</summary>
    private static Story Requeened()
    {
        var story = new Story();
        story.OpenYard("K");
        story.OpenYard("M");
        story.Raise("breeder", "1 Jun 2022");
        story.Tell((id, act, order) => new LineStarted { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2023"), Line = "North", Breeder = Story.Queen("breeder") });
        story.Raise("old", "1 Jun 2023");
        story.Raise("young", "1 Jul 2025", "breeder");
        story.Begins("c", "1 Jul 2023", "K 1", "old", HowEstablished.Nuc);
        story.Requeen("c", "young", "1 Aug 2025");
        story.Move("c", "M 1", "2 Aug 2025");
        return story;
    }

    private static LifeRow Life(string colony, string yard, string knownFrom, string? ended = null, EndKind end = EndKind.Dead) => new()
    {
        ColonyId = Story.Colony(colony), Colony = colony, YardId = Story.Yard(yard), Yard = yard, KnownFrom = Story.Day(knownFrom),
        EndedFrom = ended is null ? null : Story.Day(ended), Ended = ended is null ? null : Story.Day(ended), End = ended is null ? null : end,
        Lost = ended is not null && (end is EndKind.Dead or EndKind.GivenUp), Entries = [],
    };

    private static ReignRow Reign(DateOnly came) => new()
    {
        ColonyId = Story.Colony("c"), Colony = "c", BornFrom = came.AddDays(-20), BornTo = came.AddDays(-20), Came = HowCame.Given, SinceFrom = came, SinceTo = came, Entries = [],
    };
}
