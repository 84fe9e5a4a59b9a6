using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>Walks over the links against a walk that is written the plain way: round by round, over the list of all links.</summary>
public class GraphTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 40)];

    [Theory, MemberData(nameof(Seeds))]
    public void Every_walk_finds_what_the_plain_one_finds(int seed)
    {
        var random = new Random(seed);
        var ids = Enumerable.Range(0, random.Next(2, 140)).Select(_ => Bytes(random)).ToArray();
        var kinds = Enum.GetValues<LinkKind>();
        // Rings, doubled links and links to oneself among them.
        var links = Enumerable.Range(0, random.Next(0, 300)).Select(_ => Link(kinds[random.Next(kinds.Length)], ids[random.Next(ids.Length)], ids[random.Next(ids.Length)])).ToList();
        var graph = new Graph(links);
        foreach (var start in ids.Take(10))
            foreach (var wanted in new LinkKind[][] { [], [LinkKind.Mother], [LinkKind.Mother, LinkKind.Bees] })
            {
                Assert.Equal(Plain(links, [start], true, wanted), [.. graph.Descendants(start, wanted).OrderBy(one => one.Id)]);
                Assert.Equal(Plain(links, [start], false, wanted), [.. graph.Ancestors(start, wanted).OrderBy(one => one.Id)]);
                Assert.Equal(graph.Descendants(start, wanted).OrderBy(one => one.Steps).Select(one => one.Steps), graph.Descendants(start, wanted).Select(one => one.Steps));
            }

        foreach (var down in new[] { true, false })
        {
            var walked = graph.Walk([ids[0], ids[1], Guid.Empty], down);
            Assert.Equal(Plain(links, [ids[0], ids[1]], down, []), [.. walked.Select(step => (down ? step.Link.ToId : step.Link.FromId, step.Steps)).OrderBy(one => one.Item1)]);
        }

        foreach (var id in ids.Append(Guid.Empty))
        {
            Assert.Equal(links.Where(link => link.FromId == id), graph.From(id));
            Assert.Equal(links.Where(link => link.ToId == id), graph.To(id));
        }
    }

    [Fact]
    public void Of_one_that_has_no_links_nothing_came()
    {
        var graph = new Graph([]);
        Assert.Empty(graph.Descendants(Guid.Empty));
        Assert.Empty(graph.Walk([Guid.Empty], true));
        Assert.Empty(graph.From(Guid.Empty));
    }

    private static List<(Guid Id, int Steps)> Plain(List<LinkRow> links, Guid[] starts, bool down, LinkKind[] kinds)
    {
        var steps = starts.Distinct().ToDictionary(start => start, _ => 0);
        for (var round = 1; ; round++)
        {
            var next = links.Where(link => kinds.Length == 0 || kinds.Contains(link.Link))
                .Select(link => down ? (Here: link.FromId, There: link.ToId) : (Here: link.ToId, There: link.FromId))
                .Where(pair => steps.TryGetValue(pair.Here, out var at) && at == round - 1 && !steps.ContainsKey(pair.There)).Select(pair => pair.There).Distinct().ToList();
            foreach (var there in next) steps[there] = round;
            if (next.Count == 0) return [.. steps.Where(pair => pair.Value > 0).Select(pair => (pair.Key, pair.Value)).OrderBy(pair => pair.Key)];
        }
    }

    private static LinkRow Link(LinkKind kind, Guid from, Guid to) => new() { Link = kind, FromId = from, From = "", ToId = to, To = "", Entries = [] };

    private static Guid Bytes(Random random)
    {
        var bytes = new byte[16];
        random.NextBytes(bytes);
        return new Guid(bytes);
    }
}
