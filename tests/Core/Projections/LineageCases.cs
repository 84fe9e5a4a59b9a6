using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Core.Tests.Projections;

public class LineageCases
{
    private static Story Told()
    {
        var story = new Story();
        story.OpenYard("M");
        story.Raise("G", "1 Jun 2023");
        story.Raise("M1", "1 Jun 2024", "G");
        story.Raise("M2", "1 Jun 2024", "G");
        story.Raise("D", "1 Jun 2025", "M1");
        return story;
    }

    [Fact]
    public void Descendants_and_ancestors_nearest_first()
    {
        var graph = new Graph(Told().Books().Rows(Questions.Lineage));
        var down = graph.Descendants(Story.Queen("G").Value, LinkKind.Mother);
        Assert.Equal(2, down.Count(found => found.Steps == 1));
        Assert.Equal((Story.Queen("D").Value, 2), down[^1]);
        Assert.Equal([(Story.Queen("M1").Value, 1), (Story.Queen("G").Value, 2)], graph.Ancestors(Story.Queen("D").Value, LinkKind.Mother));
    }

    [Fact]
    public void A_ring_of_mothers_ends_the_walk_and_is_a_conflict()
    {
        var story = new Story();
        story.Raise("A", "1 Jun 2024", "B");
        story.Raise("B", "1 Jun 2024", "A");
        story.Begins("C", "1 Jul 2024", queen: "A");
        var books = story.Books();
        Assert.Single(new Graph(books.Rows(Questions.Lineage)).Descendants(Story.Queen("A").Value));
        Assert.Contains(books.Rows(Questions.Conflicts), conflict => conflict.Conflict == "daughter-older");
    }

    [Fact]
    public void Contacts_share_frames_a_yard_or_a_maker()
    {
        var story = Told();
        story.OpenYard("K");
        story.Begins("A", "1 May 2026", "M 1");
        story.Begins("B", "1 May 2026", "M 2");
        story.Begins("C", "1 May 2026", "K 1");
        story.Begins("D", "1 May 2026", "K 2");
        story.Made("N", "1 Jun 2026", ["C"], "K 3");
        story.Made("O", "1 Jun 2026", ["C"], "M 3");
        story.Frames("A", "D", "5 Jun 2026", 2, FramesOf.Brood);
        var books = story.Books();
        var contacts = Contacts.Of(Story.Colony("A").Value, Story.Day("1 May 2026"), books.Rows(Questions.Lineage), books.Rows(Questions.SpotStory));
        Assert.Equal([("B", "same yard"), ("D", "frames"), ("O", "same yard")], contacts.Select(contact => (contact.Colony, contact.How)));
        var ofN = Contacts.Of(Story.Colony("N").Value, Story.Day("1 May 2026"), books.Rows(Questions.Lineage), books.Rows(Questions.SpotStory));
        Assert.Contains(ofN, contact => contact is { Colony: "O", How: "same maker" });
        Assert.Contains(ofN, contact => contact is { Colony: "C", How: "it was made from" });
        Assert.DoesNotContain(Contacts.Of(Story.Colony("A").Value, Story.Day("6 Jun 2026"), books.Rows(Questions.Lineage), books.Rows(Questions.SpotStory)), contact => contact.How == "frames");
    }
}
