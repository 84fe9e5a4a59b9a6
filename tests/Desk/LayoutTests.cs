using ColonyLineage.Desk.Drawing;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Lineage;
using Xunit;

namespace ColonyLineage.Desk.Tests;

/// <summary>The layouts of the drawings, checked by their own promises on genealogies made from a fixed seed.</summary>
public sealed class LayoutTests
{
    private const double BoxWidth = 150;

    public static TheoryData<int> Seeds => [1, 2, 3, 4, 5, 6, 7, 8];

    [Theory, MemberData(nameof(Seeds))]
    public void No_two_boxes_overlap(int seed)
    {
        var layout = Random(seed, 90, rings: true);
        foreach (var (one, i) in layout.Nodes.Select((node, i) => (node, i)))
            foreach (var other in layout.Nodes.Skip(i + 1))
                Assert.False(
                    one.X < other.X + BoxWidth && other.X < one.X + BoxWidth && one.Y < other.Y + other.Height - 0.001 && other.Y < one.Y + one.Height - 0.001,
                    $"{one} and {other}");
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Every_line_leads_forward(int seed)
    {
        var layout = Random(seed, 90, rings: true);
        var at = layout.Nodes.ToDictionary(node => node.Key);
        foreach (var edge in layout.Edges)
        {
            Assert.True(at[edge.Edge.From].Layer < at[edge.Edge.To].Layer);
            Assert.Equal(edge.Points.OrderBy(point => point.X), edge.Points);
        }
    }

    [Theory, MemberData(nameof(Seeds))]
    public void No_line_runs_behind_a_box(int seed)
    {
        var layout = Random(seed, 60, rings: false);
        foreach (var edge in layout.Edges)
            for (var i = 2; i < edge.Points.Count - 1; i += 2)
                Assert.DoesNotContain(layout.Nodes, node => Math.Abs(node.X - edge.Points[i - 1].X) < 0.01 && node.Y < edge.Points[i].Y && edge.Points[i].Y < node.Y + node.Height);
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Lines_that_close_a_ring_are_left_out_and_named_and_no_other(int seed)
    {
        Assert.Empty(Random(seed, 60, rings: false).LeftOut);
        var ring = LayeredLayout.Of([new(Id(1), 2024, 40), new(Id(2), 2025, 40)], [new(Id(1), Id(2), 0), new(Id(2), Id(1), 1)], BoxWidth);
        Assert.Single(ring.Edges);
        Assert.Single(ring.LeftOut);
    }

    [Fact]
    public void A_box_stands_in_the_column_of_its_season_and_the_seasons_go_on_from_left_to_right()
    {
        var layout = LayeredLayout.Of(
            [new(Id(1), 2024, 40), new(Id(2), 2024, 40), new(Id(3), 2026, 40)],
            [new(Id(1), Id(2), 0), new(Id(2), Id(3), 1)],
            BoxWidth);
        Assert.Equal([2024, 2026], layout.Seasons.Select(season => season.Season!.Value));
        // The daughter of the same season has a column of her own in it.
        Assert.Equal(2, layout.Nodes.Single(node => node.Key == Id(3)).Layer - layout.Nodes.Single(node => node.Key == Id(1)).Layer);
    }

    [Fact]
    public void A_box_stands_at_the_middle_of_its_neighbours_where_there_is_room()
    {
        var layout = LayeredLayout.Of([new(Id(1), 1, 40), new(Id(2), 2, 40), new(Id(3), 2, 40)], [new(Id(1), Id(2), 0), new(Id(1), Id(3), 1)], BoxWidth);
        var at = layout.Nodes.ToDictionary(node => node.Key, node => node.Y);
        Assert.Equal((at[Id(2)] + at[Id(3)]) / 2, at[Id(1)], 3);
    }

    /// <summary>A path to and fro between two columns can be drawn without crossings; the sweeps must find that from a bad order.</summary>
    [Fact]
    public void Crossings_that_a_bad_order_makes_are_taken_away()
    {
        int[] mothers = [2, 0, 3, 1];
        var nodes = mothers.Select(i => new LayoutNode(Id(i), 1, 40)).Concat(new[] { 11, 10, 12 }.Select(i => new LayoutNode(Id(i), 2, 40))).ToList();
        var edges = Enumerable.Range(0, 3).SelectMany(i => new[] { new LayoutEdge(Id(i), Id(10 + i), 2 * i), new LayoutEdge(Id(i + 1), Id(10 + i), (2 * i) + 1) }).ToList();
        var ends = LayeredLayout.Of(nodes, edges, BoxWidth).Edges.Select(edge => (From: edge.Points[0].Y, To: edge.Points[^1].Y)).ToList();
        Assert.DoesNotContain(ends, one => ends.Any(other => (one.From - other.From) * (one.To - other.To) < -0.001));
    }

    [Fact]
    public void Of_two_thousand_descendants_a_readable_few_are_shown_and_the_rest_are_counted()
    {
        var links = new List<LinkRow>();
        for (var i = 1; i <= 2000; i++) links.Add(Link(i <= 60 ? 0 : 1 + (i % 60), i));
        var kin = Kinship.Around(new Graph(links), Id(0), 2, 3, new HashSet<LinkKind> { LinkKind.Mother });
        Assert.InRange(kin.Shown.Count, 20, 1 + (3 * Kinship.MostOfAGeneration));
        Assert.Equal(60 - Kinship.MostOfAGeneration, kin.MoreBelow[Id(0)]);
        // Nobody is lost: every direct daughter of a shown queen is shown or counted.
        var shown = kin.Shown.Select(one => one.Id).ToHashSet();
        Assert.Equal(links.Count(link => shown.Contains(link.FromId)), kin.Links.Count + kin.MoreBelow.Values.Sum());
    }

    [Fact]
    public void Every_parent_gets_its_turn_where_a_generation_is_too_large()
    {
        var links = new List<LinkRow> { Link(0, 1), Link(0, 2) };
        for (var i = 10; i < 60; i++) links.Add(Link(1, i));
        links.Add(Link(2, 99));
        var kin = Kinship.Around(new Graph(links), Id(0), 0, 2, new HashSet<LinkKind> { LinkKind.Mother });
        Assert.Contains(kin.Shown, one => one.Id == Id(99));
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Bands_of_a_lane_never_overlap_and_keys_stand_apart(int seed)
    {
        var random = new Random(seed);
        var bands = Enumerable.Range(0, 40).Select(i =>
        {
            var from = new DateOnly(2020, 1, 1).AddDays(random.Next(2400));
            var gone = random.Next(6) == 0 ? (DateOnly?)null : from.AddDays(random.Next(1, 400));
            return new Band($"{i + 1}", $"colony {i}", "/", from, gone, gone?.AddDays(random.Next(40)));
        });
        var placed = new Years(new DateOnly(2020, 1, 1), new DateOnly(2026, 10, 1), 1080).Place(bands, 12);
        Assert.Equal(40, placed.Count);
        foreach (var lane in placed.GroupBy(band => band.Lane))
        {
            var inOrder = lane.OrderBy(band => band.X).ToList();
            for (var i = 1; i < inOrder.Count; i++) Assert.True(inOrder[i - 1].X + inOrder[i - 1].Width <= inOrder[i].X + 0.51);
        }

        Assert.All(placed, band => Assert.True(band.Caption is not null || band.KeyAbove is not null));
    }

    [Fact]
    public void A_label_is_broken_into_lines_and_nothing_of_it_is_lost()
    {
        const string Name = "the daughter of the old grey queen from Tarrant's Lane";
        var lines = Lettering.Lines(Name, 120, 13);
        Assert.True(lines.Count > 1);
        Assert.All(lines, line => Assert.True(Lettering.Width(line, 13) <= 120));
        Assert.Equal(Name, string.Join(' ', lines));
        Assert.Equal(new string('W', 60), string.Concat(Lettering.Lines(new string('W', 60), 120, 13)));
    }

    [Fact]
    public void Numbers_that_are_names_are_read_as_people_read_them()
    {
        string[] names = ["N3", "10", "7a", "2", "N12", "7"];
        Assert.Equal(["2", "7", "7a", "10", "N3", "N12"], names.Order(ByNumber.Order));
    }

    private static LayeredLayout Random(int seed, int count, bool rings)
    {
        var random = new Random(seed);
        var nodes = Enumerable.Range(0, count).Select(i => new LayoutNode(Id(i), random.Next(8) == 0 ? null : 2018 + (i * 8 / count), 40 + (random.Next(3) * 20))).ToList();
        var edges = new List<LayoutEdge>();
        for (var i = 1; i < count; i++)
            for (var parents = random.Next(3); parents > 0; parents--) edges.Add(new LayoutEdge(Id(random.Next(i)), Id(i), edges.Count));
        if (rings)
            for (var i = 0; i < 5; i++) edges.Add(new LayoutEdge(Id(random.Next(count)), Id(random.Next(count / 2)), edges.Count));
        return LayeredLayout.Of(nodes, edges, BoxWidth);
    }

    private static Guid Id(int number) => new(number, 0, 0, new byte[8]);

    private static LinkRow Link(int from, int to) => new()
    {
        Link = LinkKind.Mother, FromId = Id(from), From = $"q{from}", ToId = Id(to), To = $"q{to}", Sure = Certainty.Known, Entries = [],
    };
}
