using ColonyLineage.Core.Tests.Projections;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.QueensByAge;

namespace ColonyLineage.Core.Tests.Simulation;

/// <summary>What the simulation once found wrong in the folds, as cases: the expected answers follow from the words of question.md.</summary>
public class FoundBySimulation
{
    private static QueenRow Row(Story story, string colony) => story.Books().Rows(Questions.QueensByAge).Single(row => row.Colony == colony);

    [Fact]
    public void A_yard_of_which_all_is_voided_has_no_row()
    {
        var story = new Story();
        story.Void(story.OpenYard("M"), "2 Jan 2015");
        var books = story.Books();
        Assert.Empty(Questions.Register.RowsFor(books.Books, Story.Yard("M")));
    }

    [Fact]
    public void A_queen_out_of_a_cell_was_not_superseded_before_the_cell_was_given()
    {
        var story = new Story();
        story.Raise("Q", "1 Jun 2025");
        story.Begins("A", "20 Aug 2025", queen: "Q");
        story.Look("A", "10 May 2026", QueenFinding.Seen);
        story.Kill("A", "1 Jun 2026");
        story.Tell((id, act, order) => new QueenCellGiven { Id = id, Act = act, Order = order, On = Story.Day("2 Jun 2026"), Colony = Story.Colony("A"), Queen = Story.Queen("C") });
        story.Superseded("A", "R", "1 Jul 2026");
        Assert.Equal((Story.Day("3 Jun 2026"), Story.Day("1 Jul 2026")), (Row(story, "A").BornFrom, Row(story, "A").BornTo));
    }

    [Fact]
    public void A_supersedure_where_no_queen_was_ever_seen_reaches_back_to_the_beginning_of_the_colony()
    {
        var story = new Story();
        story.Begins("A", "20 Aug 2025", how: HowEstablished.Nuc);
        story.Superseded("A", "R", "14 Apr 2026");
        Assert.Equal((2025, 2026, "possible"), (Row(story, "A").SeasonFrom, Row(story, "A").SeasonTo, Row(story, "A").Sure));
    }

    [Fact]
    public void An_interval_of_a_single_day_stays_as_it_was_given()
    {
        var story = new Story();
        story.Begins("A", "20 Aug 2025");
        story.Tell((id, act, order) => new SupersedureSeen { Id = id, Act = act, Order = order, On = new Occurred(Story.Day("2 Jul 2026"), Story.Day("1 Jul 2026")), Colony = Story.Colony("A"), Queen = Story.Queen("R") });
        Assert.Equal((Story.Day("2 Jul 2026"), Story.Day("2 Jul 2026")), (Row(story, "A").BornFrom, Row(story, "A").BornTo));
    }

    [Fact]
    public void A_queen_that_was_caged_was_seen()
    {
        var story = new Story();
        story.Begins("A", "20 Aug 2025", queen: "Q");
        story.Tell((id, act, order) => new QueenCaged { Id = id, Act = act, Order = order, On = Story.Day("1 Jun 2026"), Colony = Story.Colony("A"), Queen = Story.Queen("Q") });
        story.Superseded("A", "R", "1 Jul 2026");
        Assert.Equal(Story.Day("2 Jun 2026"), Row(story, "A").BornFrom);
    }

    [Fact]
    public void What_was_seen_of_a_queen_in_her_nuc_is_known_of_her_where_she_reigns_now()
    {
        var story = new Story();
        story.Begins("N", "20 May 2026", queen: "Q", how: HowEstablished.Nuc);
        story.Look("N", "1 Jun 2026", QueenFinding.Seen, MarkColour.White);
        story.Begins("A", "20 Aug 2025");
        story.Tell((id, act, order) => new Combined { Id = id, Act = act, Order = order, On = Story.Day("10 Jun 2026"), Colony = Story.Colony("N"), Into = Story.Colony("A"), QueenKept = Story.Queen("Q") });
        Assert.Equal(("white", (DateOnly?)Story.Day("10 Jun 2026")), (Row(story, "A").MarkSeen, Row(story, "A").LastSeen));
    }

    [Fact]
    public void A_queen_that_reigns_out_of_a_cell_was_born_of_the_cell_whatever_is_seen_later()
    {
        var story = new Story();
        story.Begins("A", "20 Aug 2025", how: HowEstablished.Nuc);
        story.Tell((id, act, order) => new QueenCellGiven { Id = id, Act = act, Order = order, On = Story.Day("2 Jun 2026"), Colony = Story.Colony("A"), Queen = Story.Queen("C") });
        story.Superseded("A", "C", "1 Jul 2026");
        Assert.Equal((Story.Day("2 Jun 2026"), Story.Day("18 Jun 2026")), (Row(story, "A").BornFrom, Row(story, "A").BornTo));
    }

    [Fact]
    public void The_entries_of_a_settled_conflict_stand_in_the_order_of_things()
    {
        var story = new Story();
        story.Begins("A", "1 May 2026");
        var end = story.GivenUp("A", "1 Jun 2026", "shared out");
        var settle = story.Tell((id, act, order) => new ConflictSettled { Id = id, Act = act, Order = order, On = Story.Day("2 Jun 2026"), Colony = Story.Colony("A"), Conflict = "after-end", Between = [end.Id, story.NextId, Later(story)], Why = "the crew is sure" });
        var dose = story.Dose("A", "3 Jun 2026", 1);
        var row = Assert.Single(story.Books().Rows(Questions.Conflicts));
        Assert.True(row.Settled);
        Assert.Equal([end.Id, settle.Id, dose.Id], row.Entries);

        static EntryId Later(Story story)
        {
            // The id of the entry that is told after the next one: ids of a story follow from its count alone.
            var ahead = new Story();
            foreach (var _ in story.Recorded) ahead.Season(3);
            ahead.Season(3);
            return ahead.NextId;
        }
    }
}
