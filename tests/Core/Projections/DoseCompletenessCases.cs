using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.DoseCompleteness;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>Worked by hand: course T is complete at 2.0 full doses. The cases D1 to D11 of the design settle what the words mean.</summary>
public class DoseCompletenessCases
{
    private static Story Told()
    {
        var story = new Story();
        story.Course("T", 2m);
        foreach (var colony in new[] { "A", "B", "C", "X", "Y", "Z" }) story.Begins(colony, "1 May 2026");
        return story;
    }

    private static DoseRow? Row(WholeBooks books, string colony) => books.Rows(Questions.DoseCompleteness).SingleOrDefault(row => row.Colony == colony);

    private static void Had(WholeBooks books, string colony, decimal had, decimal owed, string? path = null)
    {
        var row = Row(books, colony);
        Assert.NotNull(row);
        Assert.Equal((had, owed), (row.Had, row.Owed));
        if (path is not null) Assert.Equal(path, row.Path);
    }

    private static Story D1()
    {
        var story = Told();
        story.Dose("A", "20 Jul 2026", 1);
        story.Made("N", "25 Jul 2026", ["A"]);
        story.Dose("A", "4 Aug 2026", 1);
        return story;
    }

    [Fact]
    public void D1_a_nuc_brings_what_its_maker_had()
    {
        var books = D1().Books();
        Had(books, "A", 2, 0, "A");
        Had(books, "N", 1, 1, "A → N");
    }

    private static Story D2()
    {
        var story = Told();
        story.Dose("A", "20 Jul 2026", 1);
        story.Made("N", "25 Jul 2026", ["A", "B"]);
        return story;
    }

    [Fact]
    public void D2_of_two_makers_the_less_treated_counts()
    {
        var story = D2();
        Had(story.Books(), "N", 0, 2, "B → N");
        story.Dose("B", "30 Jul 2026", 1);
        Had(story.Books(), "N", 0, 2, "B → N");
        story.Dose("N", "30 Jul 2026", 1);
        Had(story.Books(), "N", 1, 1, "B → N");
    }

    [Theory]
    [InlineData("X", "Y")]
    [InlineData("Y", "X")]
    public void D3_of_two_combined_the_less_treated_counts_whichever_goes_on(string ends, string goesOn)
    {
        var story = Told();
        story.Dose("X", "1 Aug 2026", 1);
        story.Dose("X", "15 Aug 2026", 1);
        story.Dose("Y", "1 Aug 2026", 0.5m);
        story.Combine(ends, goesOn, "1 Sep 2026");
        var books = story.Books();
        Had(books, goesOn, 0.5m, 1.5m, goesOn == "Y" ? "Y" : "Y → X");
        Had(books, ends, ends == "X" ? 2 : 0.5m, ends == "X" ? 0 : 1.5m);
        Assert.Equal(Story.Day("1 Sep 2026"), Row(books, ends)!.Ended);
        story.Dose(goesOn, "5 Sep 2026", 0.5m);
        Had(story.Books(), goesOn, 1, 1);
    }

    [Fact]
    public void D4_a_diamond_counts_its_shared_time_once_on_each_path()
    {
        var story = Told();
        story.Made("N", "10 Jul 2026", ["A"]);
        story.Dose("A", "15 Jul 2026", 1);
        story.Dose("A", "29 Jul 2026", 1);
        story.Dose("N", "15 Jul 2026", 1);
        story.Combine("N", "A", "10 Aug 2026");
        Had(story.Books(), "A", 1, 1, "A → N → A");
    }

    [Fact]
    public void D5_moved_is_not_changed()
    {
        var story = new Story();
        story.Course("T", 2m);
        story.OpenYard("M");
        story.OpenYard("P");
        story.Begins("A", "1 May 2026", "M 1");
        story.Dose("A", "20 Jul 2026", 1);
        story.Move("A", "P 9", "1 Aug 2026", "M 1");
        var row = Row(story.Books(), "A")!;
        Assert.Equal((1m, 1m, "P", "9"), (row.Had, row.Owed, row.Yard, row.Spot));
    }

    [Fact]
    public void D6_another_queen_changes_no_dose()
    {
        var story = Told();
        story.Dose("A", "20 Jul 2026", 1);
        story.Requeen("A", "Q", "25 Jul 2026");
        story.Superseded("A", "R", "30 Aug 2026");
        Had(story.Books(), "A", 1, 1);
    }

    [Fact]
    public void D7_void_and_right_entry()
    {
        var story = Told();
        var wrong = story.Dose("A", "20 Jul 2026", 1);
        story.Made("N", "25 Jul 2026", ["A"]);
        story.Dose("A", "4 Aug 2026", 1);
        story.RecordedAt = new DateTimeOffset(2026, 11, 20, 19, 0, 0, TimeSpan.Zero);
        story.Void(wrong, "20 Nov 2026");
        story.Dose("C", "20 Jul 2026", 1);
        var now = story.Books();
        Had(now, "A", 1, 1);
        Assert.Null(Row(now, "N"));
        Had(now, "C", 1, 1);
        var then = story.Books(knownAt: "1 Sep 2026");
        Had(then, "A", 2, 0);
        Had(then, "N", 1, 1);
        Assert.Null(Row(then, "C"));
        var back = story.Books(asOf: "22 Jul 2026");
        Assert.Null(Row(back, "A"));
        Had(back, "C", 1, 1);
    }

    [Fact]
    public void D8_found_late_in_the_paper_notes()
    {
        var story = D2();
        story.RecordedAt = new DateTimeOffset(2026, 11, 20, 19, 0, 0, TimeSpan.Zero);
        story.Dose("B", "22 Jul 2026", 0.5m);
        Had(story.Books(), "N", 0.5m, 1.5m);
        Had(story.Books(knownAt: "1 Sep 2026"), "N", 0, 2);
    }

    [Fact]
    public void D9_frames_of_brood_are_a_path_beside_and_empty_comb_is_none()
    {
        var story = Told();
        story.Dose("A", "20 Jul 2026", 1);
        story.Dose("A", "4 Aug 2026", 1);
        story.Frames("Z", "A", "9 Aug 2026", 3, FramesOf.EmptyComb);
        Assert.Null(Row(story.Books(), "A")!.FramesRemark);
        story.Frames("Z", "A", "10 Aug 2026", 2, FramesOf.Brood);
        var row = Row(story.Books(), "A")!;
        Assert.Equal((2m, 0m), (row.Had, row.Owed));
        Assert.Equal(("2 frames of brood from Z, 2026-08-10", 0m), (row.FramesRemark, row.FramesHad));
    }

    [Fact]
    public void D10_a_dose_after_the_end_counts_for_nobody_and_is_a_conflict_on_both()
    {
        var story = Told();
        story.Dose("Y", "1 Aug 2026", 1);
        story.Combine("A", "Y", "1 Sep 2026");
        var late = story.Dose("A", "2 Sep 2026", 1);
        var books = story.Books();
        Had(books, "Y", 0, 2, "A → Y");
        Assert.Null(Row(books, "A"));
        var conflicts = books.Rows(Questions.Conflicts).ToList();
        Assert.Equal(["A", "Y"], conflicts.Select(conflict => conflict.Colony).Order());
        Assert.All(conflicts, conflict => Assert.Equal(("after-end", false), (conflict.Conflict, conflict.Settled)));
        Assert.All(conflicts, conflict => Assert.Contains(late.Id, conflict.Entries));
        story.Void(late, "3 Sep 2026", "it was meant for Y");
        story.Dose("Y", "2 Sep 2026", 1);
        Assert.Empty(story.Books().Rows(Questions.Conflicts));
        Had(story.Books(), "Y", 1, 1);
    }

    [Fact]
    public void D11_the_order_of_arrival_changes_nothing()
    {
        var story = D1();
        var answer = story.Books().Rows(Questions.DoseCompleteness).ToList();
        var twice = story.Recorded.Reverse().Concat(story.Recorded).ToList();
        Assert.Equivalent(answer, WholeBooks.Of(twice).Rows(Questions.DoseCompleteness).ToList(), strict: true);
    }

    [Fact]
    public void Too_many_doses_are_told_apart_from_a_full_course()
    {
        var story = Told();
        foreach (var day in new[] { "1 Jul 2026", "15 Jul 2026", "29 Jul 2026" }) story.Dose("A", day, 1);
        var row = Row(story.Books(), "A")!;
        Assert.Equal((3m, 0m, 1m), (row.Had, row.Owed, row.TooMany));
    }

    [Fact]
    public void A_dose_counts_in_its_own_season_only()
    {
        var story = Told();
        story.Dose("A", "28 Feb 2027", 1);
        story.Dose("A", "1 Mar 2027", 0.5m);
        var rows = story.Books().Rows(Questions.DoseCompleteness).Select(row => (row.Season, row.Had)).ToList();
        Assert.Equal([(2026, 1m), (2027, 0.5m)], rows);
    }

    [Fact]
    public void A_yard_with_an_untreated_colony_is_incomplete()
    {
        var story = new Story();
        story.Course("T", 2m);
        story.OpenYard("M");
        story.Begins("A", "1 May 2026", "M 1");
        story.Begins("B", "1 May 2026", "M 2");
        story.Dose("A", "20 Jul 2026", 2);
        var rows = story.Books().Rows(Questions.DoseCompleteness).ToList();
        var blank = new DoseRow { YardId = Story.Yard("M"), Yard = "M", Spot = "2", ColonyId = Story.Colony("B"), Colony = "B", Course = "", Season = 0, Had = 0, Path = "B", Entries = [] };
        var whole = DoseCompletenessQuestion.WholeYards(rows, [(blank, Story.Day("1 May 2026"))], 2026, 3);
        Assert.Equal([("A", 0m), ("B", 2m)], whole.Select(row => (row.Colony, row.Owed!.Value)));
    }
}
