using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.QueensByAge;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>The cases Q1 to Q7 of the design, worked by hand. Marks: the international colour convention.</summary>
public class QueensByAgeCases
{
    private static QueenRow Row(WholeBooks books, string colony) => books.Rows(Questions.QueensByAge).Single(row => row.Colony == colony);

    [Fact]
    public void Q1_a_queen_of_august_2025_is_of_season_2025_and_due_blue()
    {
        var story = new Story();
        story.Raise("Q", "8 Aug 2025");
        story.Begins("A", "20 Aug 2025", queen: "Q");
        var row = Row(story.Books(), "A");
        Assert.Equal((2025, 2025, "certain", "blue"), (row.SeasonFrom, row.SeasonTo, row.Sure, row.MarkDue));
        Assert.Equal(2, Season.Of(Story.Day("1 Sep 2027"), 3) - row.SeasonFrom);
        Assert.Equal(1, Season.Of(Story.Day("1 Feb 2027"), 3) - row.SeasonFrom);
    }

    [Fact]
    public void Q2_in_the_south_the_season_starts_in_july_and_the_mark_is_of_the_calendar_year()
    {
        var story = new Story();
        story.Season(7);
        story.Raise("Q", "5 Dec 2018");
        story.Raise("R", "30 Jun 2019");
        story.Begins("A", "1 Jul 2019", queen: "Q");
        story.Begins("B", "1 Jul 2019", queen: "R");
        Assert.Equal((2018, "red"), (Row(story.Books(), "A").SeasonFrom, Row(story.Books(), "A").MarkDue));
        Assert.Equal((2018, "green"), (Row(story.Books(), "B").SeasonFrom, Row(story.Books(), "B").MarkDue));
    }

    [Fact]
    public void Q3_superseded_unseen()
    {
        var story = new Story();
        story.Raise("Q", "8 Aug 2025");
        story.Begins("A", "20 Aug 2025", queen: "Q");
        story.Look("A", "10 May 2026", QueenFinding.Seen, MarkColour.Blue);
        story.Superseded("A", "R", "2 Jul 2026");
        story.Look("A", "2 Jul 2026", QueenFinding.Seen, MarkColour.Unmarked, eggs: true);
        var books = story.Books();
        var old = books.Books.Colony(Story.Colony("A")).Reigns[0];
        Assert.Equal((HowWent.Superseded, new Occurred(Story.Day("2 Jul 2026"), Story.Day("10 May 2026"))), (old.Went, old.To));
        var row = Row(books, "A");
        Assert.Equal((Story.Queen("R"), Story.Queen("Q"), Certainty.Supposed), (row.QueenId, row.MotherId, row.MotherIs));
        Assert.Equal((2026, 2026, "certain"), (row.SeasonFrom, row.SeasonTo, row.Sure));
        Assert.Equal(("white", "unmarked"), (row.MarkDue, row.MarkSeen));
    }

    [Fact]
    public void Q4_over_the_winter_two_seasons_are_possible()
    {
        var story = new Story();
        story.Raise("Q", "8 Aug 2024");
        story.Begins("A", "20 Aug 2024", queen: "Q");
        story.Look("A", "2 Oct 2025", QueenFinding.Seen, MarkColour.Green);
        story.Superseded("A", "R", "14 Apr 2026");
        var row = Row(story.Books(), "A");
        Assert.Equal((Story.Day("3 Oct 2025"), Story.Day("14 Apr 2026")), (row.BornFrom, row.BornTo));
        Assert.Equal((2025, 2026, "possible", "blue or white"), (row.SeasonFrom, row.SeasonTo, row.Sure, row.MarkDue));
    }

    [Fact]
    public void Q5_queenless_days()
    {
        var story = new Story();
        story.OpenYard("M");
        story.Begins("Old", "1 May 2026", "M 7");
        story.Raise("Q", "1 Jul 2026");
        story.Begins("N", "20 Jul 2026", "M 9", "Q", HowEstablished.Nuc, housing: Housing.NucBox);
        story.Kill("Old", "3 Sep 2026");
        story.GivenUp("Old", "3 Sep 2026", "failing queen");
        story.Move("N", "M 7", "3 Sep 2026");
        var books = story.Books();
        Assert.Equal("Q", Row(books, "N").Queen);
        Assert.DoesNotContain(books.Rows(Questions.QueensByAge), row => row.Colony == "Old");
        var bands = books.Rows(Questions.SpotStory).Where(band => band.Spot == "7").OrderBy(band => band.From).ToList();
        Assert.Equal(["Old", "N"], bands.Select(band => band.Colony));
        Assert.Equal(Story.Day("3 Sep 2026"), bands[0].GoneTo);
        Assert.Empty(books.Rows(Questions.Conflicts));
    }

    [Fact]
    public void Q6_share_requeened()
    {
        var story = new Story();
        story.OpenYard("M");
        for (var i = 1; i <= 8; i++)
        {
            if (i <= 5) story.Raise($"Q{i}", "10 Jun 2027");
            else if (i > 6) story.Raise($"Q{i}", "10 Jun 2025");
            story.Begins($"C{i}", i <= 5 ? "20 Jun 2027" : "1 May 2026", $"M {i}", i == 6 ? null : $"Q{i}");
        }

        story.Look("C6", "2 Oct 2026", QueenFinding.Seen);
        story.Superseded("C6", "R", "14 Apr 2027");
        var share = Assert.Single(QueensByAgeQuestion.ShareRequeened(story.Books(asOf: "1 Sep 2027").Rows(Questions.QueensByAge), 2027));
        Assert.Equal((5, 1, 8, 0.625m, 0.75m), (share.Certain, share.Possible, share.Colonies, share.From, share.To));
    }

    [Fact]
    public void Q7_the_mark_against_the_record_changes_no_age_and_is_a_conflict()
    {
        var story = new Story();
        story.Raise("Q", "8 Aug 2025");
        story.Begins("A", "20 Aug 2025", queen: "Q");
        story.Look("A", "10 May 2026", QueenFinding.Seen, MarkColour.Green);
        var row = Row(story.Books(), "A");
        Assert.Equal((2025, "green", "blue"), (row.SeasonFrom, row.MarkSeen, row.MarkDue));
        Assert.Equal("mark-against-record", Assert.Single(story.Books().Rows(Questions.Conflicts)).Conflict);
    }

    [Fact]
    public void A_queen_set_into_another_colony_reigns_there_and_not_here()
    {
        var story = new Story();
        story.Raise("Q", "8 Aug 2025");
        story.Begins("A", "20 Aug 2025", queen: "Q");
        story.Begins("B", "20 Aug 2025");
        story.Requeen("B", "Q", "10 May 2026");
        Assert.Equal("none known", Row(story.Books(), "A").Presence);
        Assert.Equal("Q", Row(story.Books(), "B").Queen);
        Assert.Equal("queen-in-two-places", Assert.Single(story.Books().Rows(Questions.Conflicts)).Conflict);
    }

    [Fact]
    public void The_line_is_the_nearest_breeder_up_the_mothers()
    {
        var story = new Story();
        story.Raise("G", "1 Jun 2023");
        story.Raise("M", "1 Jun 2024", "G");
        story.Raise("D", "1 Jun 2025", "M");
        story.Tell((id, act, order) => new LineStarted { Id = id, Act = act, Order = order, On = Story.Day("1 Jul 2023"), Line = "Heather", Breeder = Story.Queen("G") });
        story.Begins("A", "20 Jun 2025", queen: "D");
        Assert.Equal(("Heather", "M", Certainty.Known), (Row(story.Books(), "A").Line, Row(story.Books(), "A").Mother, Row(story.Books(), "A").MotherIs));
    }
}
