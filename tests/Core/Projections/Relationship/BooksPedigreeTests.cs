using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Register;
using ColonyLineage.Projections.Relationship;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Relationship;

/// <summary>The pedigree of Golden/pedigree told as entries, and asked for again.</summary>
public class BooksPedigreeTests
{
    private const string Source = "Golden/pedigree/SOURCE.md";

    [Fact]
    public void The_same_pedigree_out_of_the_books()
    {
        var books = Books(Told());
        double F(string queen) => books.Pedigree.Inbreeding(Number(books, queen));
        double A(string one, string other) => 2 * books.Pedigree.Coancestry(Number(books, one), Number(books, other));
        Near(.1458333333, F("Q4"), 1e-10, Source);
        Near(.2916666667, A("Q1", "Q2"), 1e-10, Source);
        Near(.6708333333, A("Q4", "Q5"), 1e-10, Source);
        Near(.4427083333, A("Q6", "Q7"), 1e-10, Source);
        Assert.Empty(books.InRings);
    }

    [Fact]
    public void Inbreeding_relationship_and_a_plan()
    {
        var books = Books(Told());
        var q4 = Assert.Single(Relations.Inbreeding(books, [Story.Queen("Q4").Value]));
        Assert.Equal(("Q2", Certainty.Known, .145833m, 2), (q4.Mother, q4.MotherIs, q4.Inbreeding, q4.Generations));
        Assert.Equal(0, q4.BroodInbreeding);
        Assert.Equal(["S"], Relations.Inbreeding(books, [Story.Queen("Q2").Value])[0].Drones);
        var related = Relations.To(books, Story.Queen("Q4").Value, [Story.Queen("Q5").Value, Story.Queen("Q2").Value, Story.Queen("Q4").Value, Story.Queen("Q3").Value]);
        Assert.Equal([("Q5", "full sisters, super or half by the drone", .670833m), ("Q2", "daughter and mother", .645833m), ("Q3", null, .145833m)], related.Select(row => (row.Other, row.Are, row.Additive)));
        // Q1 with drones of her own mating's sister S: F = θ(Q1, S) = .145833.
        var planned = Relations.Planned(books, Story.Queen("Q1").Value, [Story.Queen("S").Value], 12, 10);
        Assert.Equal((.145833m, .216667m), (planned.BroodInbreeding, planned.DiploidDrones));
        Near(.145833 + ((1 - .291667) / 10), (double)planned.DiploidDrones, 1e-6, "F + (1 − 2F)/k");
        Assert.NotEmpty(planned.Entries);
        Assert.Equal(0, Relations.Planned(books, Story.Queen("Q1").Value, [], 12, 10).BroodInbreeding);
    }

    [Fact]
    public void A_ring_of_mothers_ends_and_is_named()
    {
        var story = new Story();
        story.Raise("a", "1 Jun 2024", mother: "b");
        story.Raise("b", "1 Jun 2023", mother: "c");
        story.Raise("c", "1 Jun 2022", mother: "a");
        story.Raise("d", "1 Jun 2025", mother: "a");
        var books = Books(story);
        Assert.Equal(new[] { "a", "b", "c" }.Select(name => Story.Queen(name).Value).Order(), books.InRings.Order());
        Near(.25, books.Pedigree.Coancestry(Number(books, "d"), Number(books, "a")), 1e-12, "mother and daughter");
        Assert.Null(books.MotherOf(Story.Queen("a").Value));
    }

    // Her own daughter's drones, entered as met before that daughter was born.
    [Fact]
    public void A_ring_through_drones_ends_and_is_named()
    {
        var story = new Story();
        story.Raise("a", "1 Jun 2024");
        story.Raise("d", "1 Jun 2025", mother: "a");
        Mate(story, "a", 12, "d");
        var books = Books(story);
        Assert.Equal([Story.Queen("d").Value], books.InRings);
        Assert.Equal(2, books.Pedigree.Queens);
    }

    [Fact]
    public void A_sheet_becomes_entries_and_comes_out_the_same()
    {
        QueenLine[] queens = [new(2, "B", "", ""), new(3, "S", "B", "mB"), new(4, "Q2", "B", "mB"), new(5, "Q4", "Q2", "mQ2")];
        MatingLine[] matings = [new(2, "mB", "B", "", "12"), new(3, "mQ2", "Q2", "S", "10")];
        BirthLine[] births = [new(2, "B", "2022"), new(4, "Q2", "2024-05-10"), new(5, "Q4", "2026-05-10/2026-07-02")];
        var none = new BooksPedigree([], []);
        var (entries, refusals) = PedigreeEntries.Of(queens, matings, births, new Dictionary<string, QueenId>(), none, new DateOnly(2026, 11, 1));
        Assert.Empty(refusals);
        Assert.Equal(6, entries.Count);
        Assert.Single(entries.Select(entry => entry.Act).Distinct());
        Assert.Equal(entries.Select(entry => entry.Id), PedigreeEntries.Of(queens, matings, births, new Dictionary<string, QueenId>(), none, new DateOnly(2026, 11, 2)).Entries.Select(entry => entry.Id));
        var whole = WholeBooks.OfStanding(Standing.InOrder(entries));
        var books = new BooksPedigree(whole.Rows(Questions.Lineage), []);
        var q4 = whole.Rows(Questions.Register).Single(row => row.Name == "Q4");
        Near(.1458333333, books.Pedigree.Inbreeding(books.NumberOf(q4.Id)!.Value), 1e-10, Source);
        Assert.Equal(new DateOnly(2026, 5, 11), q4.Began);
        // Whom the books know keeps what they say.
        var known = whole.Rows(Questions.Register).Where(row => row.Kind == SubjectKind.Queen).ToDictionary(row => row.Name, row => new QueenId(row.Id));
        Assert.DoesNotContain(PedigreeEntries.Of(queens, matings, births, known, books, new DateOnly(2026, 11, 1)).Entries, entry => entry is QueenRaised);
    }

    [Theory]
    [InlineData("soon", Refusals.NotReadable)]
    [InlineData("2027-01-01", Refusals.DayInFuture)]
    public void A_birth_that_makes_no_sense_is_refused(string birth, string name) =>
        Assert.Equal(name, Assert.Single(PedigreeEntries.Of([new(2, "a", "", "")], [], [new(2, "a", birth)], new Dictionary<string, QueenId>(), new BooksPedigree([], []), new DateOnly(2026, 11, 1)).Refusals).Name);

    private static Story Told()
    {
        var story = new Story();
        foreach (var founder in new[] { "B", "U" }) story.Raise(founder, "1 Jun 2020");
        foreach (var (queen, mother) in new[] { ("Q1", "B"), ("Q2", "B"), ("S", "B"), ("Q3", "Q1"), ("Q4", "Q2"), ("Q5", "Q2"), ("Q6", "U"), ("Q7", "U") }) story.Raise(queen, "1 Jun 2024", mother);
        Mate(story, "Q2", 10, "S");
        Mate(story, "U", 8, "Q1", "Q2");
        return story;
    }

    private static void Mate(Story story, string queen, decimal effective, params string[] drones) =>
        story.Tell((id, act, order) => new QueenMated { Id = id, Act = act, Order = order, On = Story.Day("1 Jul 2024"), Queen = Story.Queen(queen), Drones = [.. drones.Select(Story.Queen)], EffectiveDrones = effective });

    private static BooksPedigree Books(Story story) => new(story.Books().Rows(Questions.Lineage), []);

    private static int Number(BooksPedigree books, string queen) => books.NumberOf(Story.Queen(queen).Value)!.Value;
}
