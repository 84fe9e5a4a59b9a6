using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.OwedWork;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>Cases O1 and O2 of the worked cases, and one of each kind of work. The days are common practice, no source, but for the queen cell (queen-rearing timetables).</summary>
public class OwedWorkCases
{
    /// <summary>O1: set in its box on 10 May; a visit on 24 May passes it by; transferred on 7 June; that entry voided.</summary>
    [Fact]
    public void O1_a_nuc_in_its_box()
    {
        var story = new Story();
        story.OpenYard("M");
        story.Begins("A", "1 May 2020", "M 1");
        story.Made("N3", "10 May 2026", ["A"], "M 7");
        Assert.Equal(Due.Coming, Work(story, "10 May 2026", Works.Transfer).State);
        Assert.Equal((Due.Now, 0), (Work(story, "11 May 2026", Works.Transfer).State, Work(story, "11 May 2026", Works.Transfer).Visits));
        story.Look("N3", "24 May 2026", QueenFinding.Seen);
        var late = Work(story, "25 May 2026", Works.Transfer);
        Assert.Equal((Due.Late, 1, "set in its nuc box on 10 May 2026", StockOf.Boxes), (late.State, late.Visits, late.What, late.Load));
        var transferred = story.Tell((id, act, order) => new NucTransferred { Id = id, Act = act, Order = order, On = Story.Day("7 Jun 2026"), Colony = Story.Colony("N3") });
        Assert.Empty(AllOf(story, "8 Jun 2026", Works.Transfer));
        story.Void(transferred, "9 Jun 2026");
        Assert.Equal(Due.Late, Work(story, "10 Jun 2026", Works.Transfer).State);
    }

    /// <summary>O2: one wash at 5 of 100 bees with the limit at 3 per 100: the whole yard is due, all its colonies, by that wash.</summary>
    [Fact]
    public void O2_one_high_wash_and_the_whole_yard_is_due()
    {
        var story = Yard("A", "B", "C");
        var wash = Wash(story, "B", "1 Aug 2026", 5, 100);
        var due = Work(story, "2 Aug 2026", Works.TreatYard);
        Assert.Equal((3, wash.Id.Value, "M", null, Due.Now), (due.Of, due.OpenedBy, due.Yard, due.Colony, due.State));
        Assert.Equal("5 mites in a wash of 100 bees from B on 1 Aug 2026: over the limit, so the whole yard is due; 3 of 3 colonies had no dose since", due.What);
        Assert.Contains(wash.Id, due.Entries);
        story.Dose("A", "4 Aug 2026", 1);
        story.Dose("B", "4 Aug 2026", 1);
        Assert.Equal(1, Work(story, "5 Aug 2026", Works.TreatYard).Of);
        story.Dose("C", "5 Aug 2026", 1);
        Assert.Empty(AllOf(story, "6 Aug 2026", Works.TreatYard));
    }

    [Fact]
    public void O2_voided_nothing_is_due()
    {
        var story = Yard("A", "B");
        story.Void(Wash(story, "B", "1 Aug 2026", 5, 100), "2 Aug 2026");
        Assert.Empty(AllOf(story, "3 Aug 2026", Works.TreatYard));
    }

    [Fact]
    public void A_wash_at_the_limit_is_washed_again()
    {
        var story = Yard("A", "B");
        Wash(story, "A", "1 Aug 2026", 3, 300);
        var again = Work(story, "16 Aug 2026", Works.WashAgain);
        Assert.Equal((Story.Day("15 Aug 2026"), Story.Day("29 Aug 2026"), Due.Now), (again.From, again.By, again.State));
        Wash(story, "A", "16 Aug 2026", 0, 300);
        Assert.Empty(AllOf(story, "17 Aug 2026", Works.WashAgain));
    }

    [Fact]
    public void A_course_that_is_complete_is_followed_by_a_wash()
    {
        var story = Yard("A", "B");
        story.Course("T", 1);
        story.Dose("A", "1 Aug 2026", 1);
        Assert.Empty(AllOf(story, "30 Aug 2026", Works.WashAgain));
        story.Dose("B", "2 Aug 2026", 1);
        Assert.Equal(("no wash since T was complete on 2 Aug 2026", Due.Late), (Work(story, "15 Sep 2026", Works.WashAgain).What, Work(story, "15 Sep 2026", Works.WashAgain).State));
        Wash(story, "A", "15 Sep 2026", 1, 300);
        Assert.Empty(AllOf(story, "16 Sep 2026", Works.WashAgain));
    }

    [Fact]
    public void Half_a_course_is_owed_within_its_interval_and_by_colonies_that_had_nothing()
    {
        var story = Yard("A", "B");
        story.Tell((id, act, order) => new CourseDefined { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2026"), Course = "T", FullDoses = 2, DaysBetweenAtLeast = 10, DaysBetweenAtMost = 18 });
        var dose = story.Dose("A", "1 Aug 2026", 1);
        var owed = AllOf(story, "20 Aug 2026", Works.Course);
        Assert.Equal([("A", 1m, Due.Late, "1 of 2 full doses of T missing"), ("B", 2m, Due.Now, "2 of 2 full doses of T missing; others in the yard had theirs")], owed.Select(row => (row.Colony, row.LoadAmount!.Value, row.State, row.What)));
        Assert.All(owed, row => Assert.Equal((dose.Id.Value, StockOf.Doses, "T"), (row.OpenedBy, row.Load, row.LoadWhich)));
        // In the next season nobody owes last season's course.
        Assert.Empty(AllOf(story, "1 Mar 2027", Works.Course));
    }

    [Fact]
    public void Strips_are_to_come_out_also_when_a_new_season_has_begun()
    {
        var story = Yard("A");
        story.Tell((id, act, order) => new CourseDefined { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2026"), Course = "S", FullDoses = 1, TakenOut = true, DaysInAtLeast = 42, DaysInAtMost = 56 });
        story.Dose("A", "10 Feb 2026", 1, "S");
        Assert.Equal([Due.Coming, Due.Now, Due.Now, Due.Late], new[] { "23 Mar 2026", "24 Mar 2026", "7 Apr 2026", "8 Apr 2026" }.Select(day => Work(story, day, Works.StripsOut).State));
        story.Tell((id, act, order) => new TreatmentTakenOut { Id = id, Act = act, Order = order, On = Story.Day("8 Apr 2026"), Colony = Story.Colony("A"), Course = "S" });
        Assert.Empty(AllOf(story, "9 Apr 2026", Works.StripsOut));
    }

    [Fact]
    public void A_given_queen_is_looked_for_until_she_lays()
    {
        var story = Yard("A");
        story.Requeen("A", "q", "1 Jul 2026");
        Assert.Equal([Due.Coming, Due.Now, Due.Late], new[] { "7 Jul 2026", "8 Jul 2026", "23 Jul 2026" }.Select(day => Work(story, day, Works.Laying).State));
        story.Look("A", "23 Jul 2026", bees: 6);
        Assert.Single(AllOf(story, "24 Jul 2026", Works.Laying));
        story.Look("A", "24 Jul 2026", eggs: true);
        Assert.Empty(AllOf(story, "25 Jul 2026", Works.Laying));
    }

    /// <summary>Cells go to mating nucs 10 days after grafting, queens emerge at 12 and lay from 10 days after that: 12 days after the cell was given.</summary>
    [Fact]
    public void A_cell_is_asked_after_from_the_day_on_which_she_can_lay()
    {
        var story = Yard("A");
        story.Kill("A", "1 Jul 2026");
        Assert.Equal(("its queen was killed on 1 Jul 2026", Story.Day("15 Jul 2026")), (Work(story, "2 Jul 2026", Works.Queenless).What, Work(story, "2 Jul 2026", Works.Queenless).By));
        story.Tell((id, act, order) => new QueenCellGiven { Id = id, Act = act, Order = order, On = Story.Day("2 Jul 2026"), Colony = Story.Colony("A"), Queen = Story.Queen("v") });
        Assert.Empty(AllOf(story, "3 Jul 2026", Works.Queenless));
        Assert.Equal(Story.Day("14 Jul 2026"), Work(story, "3 Jul 2026", Works.Cell).From);
        story.Look("A", "14 Jul 2026", QueenFinding.Queenright);
        Assert.Empty(AllOf(story, "15 Jul 2026", Works.Cell));
    }

    [Fact]
    public void A_poor_pattern_is_looked_at_again_and_not_believed_too_soon_after_a_course_that_stops_the_laying()
    {
        var story = Yard("A", "B");
        story.Tell((id, act, order) => new CourseDefined { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2026"), Course = "T", FullDoses = 1, BroodTooSoonDays = 21 });
        story.Dose("A", "1 Aug 2026", 1);
        Pattern(story, "A", "10 Aug 2026", 2);
        Pattern(story, "B", "10 Aug 2026", 1);
        var again = AllOf(story, "20 Aug 2026", Works.QueenAgain);
        Assert.Equal(
            [("A", "brood pattern 2 of 5 on 10 Aug 2026: too soon after T to judge", Story.Day("23 Aug 2026")), ("B", "brood pattern 1 of 5 on 10 Aug 2026", Story.Day("24 Aug 2026"))],
            again.Select(row => (row.Colony!, row.What, row.From)));
        Pattern(story, "A", "24 Aug 2026", 4);
        Assert.Equal("B", Work(story, "25 Aug 2026", Works.QueenAgain).Colony);
    }

    [Fact]
    public void An_old_queen_is_looked_at_before_each_winter()
    {
        var story = Yard("A");
        story.Raise("q", "8 Jun 2024");
        story.Requeen("A", "q", "1 Jul 2024");
        var old = Work(story, "5 Sep 2026", Works.OldQueen);
        Assert.Equal(("q was born in season 2024", Story.Day("1 Sep 2026"), Story.Day("31 Oct 2026"), Due.Now), (old.What, old.From, old.By, old.State));
        story.Look("A", "5 Sep 2026", QueenFinding.Seen);
        Assert.Equal(Story.Day("1 Sep 2027"), Work(story, "6 Sep 2026", Works.OldQueen).From);
        story.Requeen("A", "young", "10 Sep 2026");
        Assert.Empty(AllOf(story, "11 Sep 2026", Works.OldQueen));
    }

    [Fact]
    public void Feeder_combined_boxes_and_supplement_every_other_round()
    {
        var story = Yard("A", "B");
        story.Tell((id, act, order) => new FeederPutOn { Id = id, Act = act, Order = order, On = Story.Day("1 Sep 2026"), Colony = Story.Colony("A") });
        story.Combine("B", "A", "1 Sep 2026");
        story.Tell((id, act, order) => new SupplementGiven { Id = id, Act = act, Order = order, On = Story.Day("1 Sep 2026"), Colony = Story.Colony("A"), Supplement = "patty" });
        Assert.Equal([Works.Combined, Works.FeederOff], All(story, "9 Sep 2026").Where(row => row.Colony == "A").Select(row => row.Work));
        story.Look("A", "10 Sep 2026", bees: 8);
        Assert.Equal([Works.FeederOff, Works.Supplement], All(story, "11 Sep 2026").Where(row => row.Colony == "A").Select(row => row.Work));
        Assert.Empty(AllOf(story, "1 Nov 2026", Works.Supplement));
        story.Tell((id, act, order) => new FeederTakenOff { Id = id, Act = act, Order = order, On = Story.Day("12 Sep 2026"), Colony = Story.Colony("A") });
        Assert.Empty(AllOf(story, "13 Sep 2026", Works.FeederOff));
    }

    [Fact]
    public void The_treatment_without_brood_is_owed_in_its_weeks_and_the_rest_of_the_yard_once_it_has_begun()
    {
        var story = Yard("A", "B");
        var course = story.Tell((id, act, order) => new CourseDefined { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2026"), Course = "W", FullDoses = 1, BroodlessWanted = true });
        var winter = Work(story, "1 Oct 2026", Works.WinterTreatment);
        Assert.Equal((Due.Coming, Story.Day("1 Dec 2026"), Story.Day("15 Jan 2027"), course.Id.Value, 2), (winter.State, winter.From, winter.By, winter.OpenedBy, winter.Of));
        Assert.Equal(Due.Late, Work(story, "16 Jan 2027", Works.WinterTreatment).State);
        story.Dose("A", "10 Dec 2026", 1, "W");
        Assert.Empty(AllOf(story, "11 Dec 2026", Works.WinterTreatment));
        Assert.Equal("B", Work(story, "11 Dec 2026", Works.Course).Colony);
    }

    [Fact]
    public void Empty_spots_are_told_by_the_last_colony_that_stood_there()
    {
        var story = Yard("A", "B");
        story.Dead("A", "20 Feb 2026");
        var empty = Work(story, "1 Mar 2026", Works.SpotEmpty);
        Assert.Equal(("spot 1 empty; last A, found dead, 20 Feb 2026", 1, StockOf.Nucs), (empty.What, empty.Of, empty.Load));
        story.Tell((id, act, order) => new SpotRetired { Id = id, Act = act, Order = order, On = Story.Day("2 Mar 2026"), Spot = Story.Spot("M 1") });
        Assert.Empty(AllOf(story, "3 Mar 2026", Works.SpotEmpty));
    }

    [Fact]
    public void Put_off_and_done_elsewhere_are_entries_that_can_be_voided()
    {
        var story = Yard("A");
        story.Requeen("A", "q", "1 Jul 2026");
        var opened = new EntryId(Work(story, "9 Jul 2026", Works.Laying).OpenedBy);
        story.Tell((id, act, order) => new WorkPutOff { Id = id, Act = act, Order = order, On = Story.Day("9 Jul 2026"), Work = Works.Laying, Opened = opened, Colony = Story.Colony("A"), Until = Story.Day("20 Jul 2026"), Why = "rain" });
        Assert.Equal((Due.PutOff, Story.Day("20 Jul 2026")), (Work(story, "19 Jul 2026", Works.Laying).State, Work(story, "19 Jul 2026", Works.Laying).PutOffUntil));
        Assert.Equal(Due.Now, Work(story, "20 Jul 2026", Works.Laying).State);
        var done = story.Tell((id, act, order) => new WorkDoneElsewhere { Id = id, Act = act, Order = order, On = Story.Day("21 Jul 2026"), Work = Works.Laying, Opened = opened, Colony = Story.Colony("A"), Why = "the neighbour looked" });
        Assert.Empty(AllOf(story, "22 Jul 2026", Works.Laying));
        story.Void(done, "23 Jul 2026");
        Assert.Single(AllOf(story, "24 Jul 2026", Works.Laying));
    }

    [Fact]
    public void A_course_and_a_yard_can_be_put_off_too()
    {
        var story = Yard("A", "B");
        story.Course("T", 2);
        var dose = story.Dose("A", "1 Aug 2026", 1);
        var wash = Wash(story, "B", "30 Jul 2026", 9, 300);
        story.Tell((id, act, order) => new WorkDoneElsewhere { Id = id, Act = act, Order = order, On = Story.Day("2 Aug 2026"), Work = Works.Course, Opened = dose.Id, Colony = Story.Colony("B"), Why = "sold on Monday" });
        story.Tell((id, act, order) => new WorkPutOff { Id = id, Act = act, Order = order, On = Story.Day("2 Aug 2026"), Work = Works.TreatYard, Opened = wash.Id, Yard = Story.Yard("M"), Until = Story.Day("10 Aug 2026"), Why = "heat" });
        Assert.Equal("A", Work(story, "3 Aug 2026", Works.Course).Colony);
        Assert.Equal(Due.PutOff, Work(story, "3 Aug 2026", Works.TreatYard).State);
    }

    private static OwedRow Work(Story story, string day, string work) => Assert.Single(AllOf(story, day, work));

    private static IReadOnlyList<OwedRow> AllOf(Story story, string day, string work) => [.. All(story, day).Where(row => row.Work == work)];

    /// <summary>As of the day itself: what was recorded later is not known yet.</summary>
    private static IReadOnlyList<OwedRow> All(Story story, string day)
    {
        var whole = story.Books();
        return Owed.Of(FactsOf.Whole(whole, Story.Day(day)));
    }

    private static Story Yard(params string[] colonies)
    {
        var story = new Story();
        story.OpenYard("M");
        for (var i = 0; i < colonies.Length; i++) story.Begins(colonies[i], "1 May 2020", $"M {i + 1}");
        return story;
    }

    private static Entry Wash(Story story, string colony, string day, int mites, int bees) =>
        story.Tell((id, act, order) => new Washed { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony(colony), Mites = mites, Bees = bees });

    private static void Pattern(Story story, string colony, string day, int pattern) =>
        story.Tell((id, act, order) => new Inspected { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony(colony), BroodPattern = pattern });
}
