using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Core.Tests.Demo;

/// <summary>What the demo promises to show is in it.</summary>
public sealed class ContentTests
{
    [Fact]
    public void Every_kind_of_entry_but_a_few_occurs()
    {
        // Not in the demo: a yard described anew, and a queen set into a colony that has none.
        var missing = Kinds.All.Select(kind => kind.Type).Except(DemoBooks.Entries.Select(entry => entry.GetType())).ToList();
        Assert.Subset(new HashSet<Type> { typeof(YardDescribed), typeof(QueenIntroduced) }, missing.ToHashSet());
    }

    [Fact]
    public void The_crew_is_late_with_its_notes_and_paper_is_caught_up_with_in_November()
    {
        var late = DemoBooks.Recorded.Where(recorded => Days(recorded) >= 14).ToList();
        Assert.True(late.Count > 300, $"{late.Count} late entries");
        Assert.Contains(late, recorded => recorded.At.Month == 11 && recorded.Entry is Treated && Days(recorded) > 80);
    }

    [Fact]
    public void Mistakes_are_voided_with_a_reason_and_the_right_entry_stands_beside_them()
    {
        var byId = DemoBooks.Entries.ToDictionary(entry => entry.Id);
        var voids = DemoBooks.Entries.OfType<Voided>().ToList();
        Assert.True(voids.Count >= 20, $"{voids.Count} voids");
        Assert.All(voids, voided =>
        {
            var wrong = byId[voided.Entry];
            Assert.Equal(wrong.Stream, voided.Of);
            Assert.Equal(wrong.AlsoConcerns, voided.AlsoOf);
            var right = Assert.Single(DemoBooks.Entries, entry => entry.Act == voided.Act && entry is not Voided);
            Assert.Equal(wrong.On, right.On);
            Assert.IsType(wrong.GetType(), right);
        });
    }

    [Fact]
    public void Supersedures_are_found_late_with_an_interval() =>
        Assert.Contains(DemoBooks.Entries.OfType<SupersedureSeen>(), seen => !seen.On.IsExact && seen.On.Day.DayNumber - seen.On.Earliest.DayNumber > 60);

    [Fact]
    public void Dead_outs_have_an_interval()
    {
        var dead = DemoBooks.Whole.Rows(Questions.SpotStory).Where(band => band.Went == "found dead").ToList();
        Assert.True(dead.Count > 50, $"{dead.Count} dead-outs");
        Assert.Contains(dead, band => band.GoneFrom < band.GoneTo);
    }

    [Fact]
    public void Half_doses_nucs_above_a_screen_board_combined_colonies_and_two_moved_yards_occur()
    {
        Assert.Contains(DemoBooks.Entries.OfType<Treated>(), dose => dose is { Course: "thymol summer", Doses: 0.5m });
        Assert.Contains(DemoBooks.Entries.OfType<ColonyEstablished>(), colony => colony.Above);
        Assert.NotEmpty(DemoBooks.Entries.OfType<Combined>());
        Assert.Equal(2, DemoBooks.Entries.OfType<YardClosed>().Count());
        Assert.Contains(DemoBooks.Entries.OfType<QueenEnded>(), ended => ended.How == QueenEnd.Sold);
        Assert.Single(DemoBooks.Entries.OfType<ConflictSettled>());
    }

    [Fact]
    public void Courses_are_examples_that_the_label_binds() =>
        Assert.All(DemoBooks.Entries.OfType<CourseDefined>(), course => Assert.Equal(("example", "example, your label binds"), (course.Country, course.Source)));

    /// <summary>No product and no amount: neither is the demo's to suggest.</summary>
    [Fact]
    public void Treatments_name_a_substance_and_nothing_to_imitate() =>
        Assert.All(DemoBooks.Entries.OfType<Treated>(), dose => Assert.True(dose is { Product: null, Amount: null, Substance: not null }));

    [Fact]
    public void Spots_have_places_of_their_own_in_the_drawing_of_the_yard() =>
        Assert.All(DemoBooks.Entries.OfType<SpotMarked>().GroupBy(marked => marked.Spot.Yard), yard =>
        {
            Assert.All(yard, marked => Assert.True(marked is { Row: not null, Place: not null }));
            Assert.Equal(yard.Count(), yard.Select(marked => (marked.Row, marked.Place)).Distinct().Count());
        });

    /// <summary>The international convention: the last digit of the year of birth.</summary>
    [Fact]
    public void Marks_follow_the_convention_and_some_queens_are_unmarked()
    {
        var rows = DemoBooks.Whole.Rows(Questions.QueensByAge).Where(row => row is { MarkSeen: not null, MarkDue: not null }).ToList();
        Assert.Contains(rows, row => row.MarkSeen == "unmarked");
        var wrong = rows.Count(row => row.MarkSeen != "unmarked" && !row.MarkDue!.Split(" or ").Contains(row.MarkSeen));
        Assert.InRange(wrong, 0, 4);
    }

    private static int Days(Recorded recorded) => DateOnly.FromDateTime(recorded.At.UtcDateTime).DayNumber - recorded.Entry.On.Day.DayNumber;
}
