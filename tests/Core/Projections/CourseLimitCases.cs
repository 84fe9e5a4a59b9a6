using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.DoseCompleteness;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>
/// What was done against the limits of a course. The limits are the owner's data; those here are invented, but for the days of strips (42 to 56 days,
/// as the amitraz courses of several labels have it) and the window of daily maxima (15 to 40 °C, UK SPC AN 01316/2014, thymol).
/// </summary>
public class CourseLimitCases
{
    [Fact]
    public void Two_doses_within_the_interval_are_as_the_course_wants_it()
    {
        var row = Only(Told(course => course with { DaysBetweenAtLeast = 10, DaysBetweenAtMost = 18 }, ("A", "20 Jul 2026"), ("A", "3 Aug 2026")));
        Assert.Equal((0, 0, 2m), (row.TooSoon, row.TooLate, row.Had));
        Assert.Empty(row.Remarks);
        Assert.Null(row.NextFrom);
    }

    [Theory]
    [InlineData("29 Jul 2026", 1, 0, "1 dose too soon after the one before")]
    [InlineData("30 Jul 2026", 0, 0, null)]
    [InlineData("7 Aug 2026", 0, 0, null)]
    [InlineData("8 Aug 2026", 0, 1, "1 dose too late after the one before")]
    public void A_dose_outside_of_the_interval_counts_and_is_named(string second, int soon, int late, string? remark)
    {
        var row = Only(Told(course => course with { DaysBetweenAtLeast = 10, DaysBetweenAtMost = 18 }, ("A", "20 Jul 2026"), ("A", second)));
        Assert.Equal((soon, late, 2m), (row.TooSoon, row.TooLate, row.Had));
        Assert.Equal(remark, row.Remarks.SingleOrDefault());
    }

    [Fact]
    public void What_is_owed_is_due_within_the_interval_after_the_last_dose()
    {
        var row = Only(Told(course => course with { DaysBetweenAtLeast = 10, DaysBetweenAtMost = 18 }, ("A", "20 Jul 2026")));
        Assert.Equal((Story.Day("30 Jul 2026"), Story.Day("7 Aug 2026")), (row.NextFrom, row.NextBy));
    }

    /// <summary>10 Feb 2028 + 42 and 56 days is 23 March and 6 April: computed with R's dates.</summary>
    [Fact]
    public void Strips_are_due_out_between_two_days_and_left_in_too_long_is_a_fault_too()
    {
        var story = Told(course => course with { TakenOut = true, DaysInAtLeast = 42, DaysInAtMost = 56, WithholdingDays = 14 }, ("A", "10 Feb 2028"));
        var row = Only(story);
        Assert.Equal((Story.Day("23 Mar 2028"), Story.Day("6 Apr 2028"), null), (row.OutFrom, row.OutBy, row.OutOn));
        // While the strips are in nobody knows until when supers stay off.
        Assert.Null(row.WithholdingUntil);
        Assert.Equal(["taken out: not recorded, due by 2028-04-06"], row.Remarks);
        TakeOut(story, "10 Apr 2028");
        var late = Only(story);
        Assert.Equal((Story.Day("10 Apr 2028"), Story.Day("24 Apr 2028")), (late.OutOn, late.WithholdingUntil));
        Assert.Equal(["taken out too late, 2028-04-10"], late.Remarks);
    }

    [Fact]
    public void Strips_out_before_their_time_are_named()
    {
        var story = Told(course => course with { TakenOut = true, DaysInAtLeast = 42, DaysInAtMost = 56 }, ("A", "10 Feb 2028"));
        TakeOut(story, "22 Mar 2028");
        Assert.Equal(["taken out too soon, 2028-03-22"], Only(story).Remarks);
    }

    [Theory]
    [InlineData(41, "C", 1, 0)]
    [InlineData(40, "C", 0, 0)]
    [InlineData(15, "C", 0, 0)]
    [InlineData(14.9, "C", 0, 1)]
    // 60 °F is 15.556 °C, 105 °F 40.556 °C (check values).
    [InlineData(60, "F", 0, 0)]
    [InlineData(105, "F", 1, 0)]
    public void The_daily_maximum_at_the_yard_is_held_against_the_window(double degrees, string scale, int hot, int cold)
    {
        var story = Told(course => course with { CoolestMaximum = 15, WarmestMaximum = 40 }, ("A", "20 Jul 2026"), ("A", "3 Aug 2026"));
        Maximum(story, "20 Jul 2026", (decimal)degrees, scale);
        var row = Only(story);
        Assert.Equal((hot, cold, 1), (row.TooHot, row.TooCold, row.WarmthUnknown));
        Assert.Contains("1 dose without a recorded daily maximum", row.Remarks);
    }

    /// <summary>A hot day on the third day of the dose; the colony has moved since, and the yard where it was dosed counts.</summary>
    [Fact]
    public void Days_after_the_dose_count_as_long_as_the_course_says_in_the_yard_where_it_was_given()
    {
        var story = Told(course => course with { WarmestMaximum = 30, MaximumMattersDays = 3 }, ("A", "20 Jul 2026"));
        foreach (var day in (string[])["20 Jul 2026", "21 Jul 2026", "23 Jul 2026"]) Maximum(story, day, day.StartsWith("23", StringComparison.Ordinal) ? 39 : 25);
        story.Move("A", "P 1", "24 Jul 2026");
        Assert.Equal((0, 1), (Only(story).TooHot, Only(story).WarmthUnknown));
        Maximum(story, "22 Jul 2026", 31);
        Assert.Equal((1, 0), (Only(story).TooHot, Only(story).WarmthUnknown));
    }

    [Fact]
    public void Supers_on_where_they_must_be_off_is_named()
    {
        var story = Told(course => course with { SupersOff = true });
        story.Tell((id, act, order) => new Treated { Id = id, Act = act, Order = order, On = Story.Day("20 Jul 2026"), Colony = Story.Colony("A"), Course = "T", Doses = 1, SupersOn = true });
        Assert.Equal((1, "1 dose with supers on"), (Only(story).SupersOn, Only(story).Remarks.Single()));
    }

    [Fact]
    public void More_than_the_most_in_a_season_is_named() =>
        Assert.Contains("more than the most in a season, 2.5", Only(Told(course => course with { MostPerSeason = 2.5m }, ("A", "1 Jul 2026"), ("A", "15 Jul 2026"), ("A", "1 Aug 2026"))).Remarks);

    [Fact]
    public void Brood_is_too_soon_to_judge_for_as_long_as_the_owner_says() =>
        Assert.Equal(Story.Day("24 Aug 2026"), Only(Told(course => course with { BroodTooSoonDays = 21 }, ("A", "20 Jul 2026"), ("A", "3 Aug 2026"))).BroodTooSoonUntil);

    /// <summary>D1 with the path in words: one dose short, and why.</summary>
    [Fact]
    public void One_dose_short_says_why_along_the_path()
    {
        var story = Told(course => course with { DaysBetweenAtLeast = 10 }, ("A", "20 Jul 2026"));
        story.Made("N", "25 Jul 2026", ["A"]);
        story.Dose("A", "4 Aug 2026", 1);
        var nuc = Rows(story).Single(row => row.Colony == "N");
        Assert.Equal((1m, 1m, "A → N"), (nuc.Had, nuc.Owed, nuc.Path));
        Assert.Equal("N was made on 25 Jul 2026 from A, whose bees had 1 full dose by then; none since", nuc.Story);
        // The maker's dose starts the clock of the nuc: it is owed by its own bees.
        Assert.Equal(Story.Day("30 Jul 2026"), nuc.NextFrom);
    }

    [Fact]
    public void A_course_that_nobody_defined_has_no_limits()
    {
        var story = new Story();
        story.Begins("A", "1 May 2026", "M 1");
        story.Dose("A", "20 Jul 2026", 1, "unheard of");
        var row = Only(story);
        Assert.Empty(row.Remarks);
        Assert.Null(row.WithholdingUntil);
    }

    private static DoseRow Only(Story story) => Assert.Single(Rows(story));

    private static IReadOnlyList<DoseRow> Rows(Story story) => [.. story.Books().Rows(Questions.DoseCompleteness)];

    private static Story Told(Func<CourseDefined, CourseDefined> limits, params (string Colony, string Day)[] doses)
    {
        var story = new Story();
        story.OpenYard("M");
        story.OpenYard("P");
        story.Tell((id, act, order) => limits(new CourseDefined { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2015"), Course = "T", FullDoses = 2 }));
        story.Begins("A", "1 May 2020", "M 1");
        foreach (var (colony, day) in doses) story.Dose(colony, day, 1);
        return story;
    }

    private static void Maximum(Story story, string day, decimal degrees, string scale = "C") =>
        story.Tell((id, act, order) => new DailyMaximum { Id = id, Act = act, Order = order, On = Story.Day(day), Yard = Story.Yard("M"), Maximum = new Temperature(degrees, scale) });

    private static void TakeOut(Story story, string day) =>
        story.Tell((id, act, order) => new TreatmentTakenOut { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony("A"), Course = "T" });
}
