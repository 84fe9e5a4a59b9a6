using ColonyLineage.Desk.Drawing;
using ColonyLineage.Desk.Drawing.Whole;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Lineage;
using Xunit;

namespace ColonyLineage.Desk.Tests;

/// <summary>The laws of a whole drawing, on pedigrees and genealogies of 2,000 made from a seed that is printed.</summary>
public sealed class WholeDrawingTests(ITestOutputHelper output)
{
    private const int Many = 2000;

    /// <summary>Every seed with every way to fold, a column for a generation or a season, the living or all.</summary>
    public static TheoryData<int, KinGrouping, bool, bool> Cases
    {
        get
        {
            var cases = new TheoryData<int, KinGrouping, bool, bool>();
            for (var seed = 1; seed <= 8; seed++) cases.Add(seed, (KinGrouping)(seed % 4), seed % 3 == 0, seed % 2 == 0);
            return cases;
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void Everybody_is_in_exactly_one_box_and_the_boxes_are_few(int seed, KinGrouping by, bool seasons, bool all)
    {
        foreach (var kin in Drawn(seed, seasons, all))
        {
            var (_, folding) = Folded(kin, by, new Random(seed));
            Assert.Equal(kin.All.Select(one => one.Id).Order(), folding.Boxes.SelectMany(box => box.Members).Select(one => one.Id).Order());
            Assert.InRange(folding.Boxes.Count, 1, Folding.Most);
            Assert.Equal(kin.All.Count(one => one.Alive), folding.Boxes.Sum(box => box.Living));
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_counts_of_folded_groups_add_up_at_every_depth(int seed, KinGrouping by, bool seasons, bool all)
    {
        foreach (var kin in Drawn(seed, seasons, all))
        {
            var columns = FoldTree.Of(kin, by);
            Assert.Equal(kin.All.Count, columns.Sum(column => column.Members.Count));
            var codes = new HashSet<string>();
            var waiting = new Stack<FoldGroup>(columns);
            while (waiting.TryPop(out var group))
            {
                Assert.True(codes.Add(group.Code), $"{group.Label} shares its code.");
                Assert.InRange(group.Under.Count, 0, FoldTree.MostUnder);
                if (!group.Opens)
                {
                    Assert.True(group.IsSingle || kin.Columns[group.Column].Beyond, $"{group.Label} cannot be opened.");
                    continue;
                }

                Assert.Equal(group.Members.Count, group.Under.Sum(under => under.Members.Count));
                Assert.Equal(group.Living, group.Under.Sum(under => under.Living));
                foreach (var under in group.Under) waiting.Push(under);
            }
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void No_two_boxes_overlap_and_every_line_leads_to_a_later_column(int seed, KinGrouping by, bool seasons, bool all)
    {
        foreach (var kin in Drawn(seed, seasons, all))
        {
            var (_, folding) = Folded(kin, by, new Random(seed));
            var drawing = WholeDrawing.Of(kin, folding);
            foreach (var column in drawing.Boxes.GroupBy(box => box.X))
            {
                Assert.Single(column.Select(box => box.Group.Column).Distinct());
                var downwards = column.OrderBy(box => box.Y).ToList();
                for (var i = 1; i < downwards.Count; i++)
                    Assert.True(downwards[i - 1].Y + downwards[i - 1].Height + (downwards[i - 1].Group.IsSingle ? 0 : WholeDrawing.Pile) <= downwards[i].Y + 0.01, $"{downwards[i - 1].Group.Label} and {downwards[i].Group.Label}");
            }

            var placed = drawing.Boxes.ToDictionary(box => box.Group.Code);
            foreach (var line in drawing.Lines)
            {
                Assert.True(line.From.Column < line.To.Column);
                Assert.Equal(line.Points.OrderBy(point => point.X), line.Points);
                var (from, to) = (placed[line.From.Code], placed[line.To.Code]);
                Assert.InRange(line.Points[0].Y, from.Y, from.Y + from.Height + WholeDrawing.Pile);
                Assert.InRange(line.Points[^1].Y, to.Y, to.Y + to.Height + WholeDrawing.Pile);
            }

            // Each link is drawn in one line, said to lead back, or within a box at the end that is not opened.
            Assert.Equal(kin.Links.Count, drawing.Lines.Sum(line => line.Links.Count));
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void Every_box_is_whole_on_some_sheet_of_paper(int seed, KinGrouping by, bool seasons, bool all)
    {
        foreach (var kin in Drawn(seed, seasons, all))
        {
            var (_, folding) = Folded(kin, by, new Random(seed));
            var drawing = WholeDrawing.Of(kin, folding);
            var sheets = Sheets.Of(drawing);
            Assert.All(drawing.Boxes, box => Assert.Contains(sheets, sheet =>
                sheet.X <= box.X && box.X + drawing.BoxWidth <= sheet.X + sheet.Width && sheet.Y <= box.Y && box.Y + box.Height <= sheet.Y + sheet.Height));
            Assert.All(sheets, sheet => Assert.InRange(sheet.Width, 1, Sheets.Widest));
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_list_says_each_box_once(int seed, KinGrouping by, bool seasons, bool all)
    {
        foreach (var kin in Drawn(seed, seasons, all))
        {
            var (_, folding) = Folded(kin, by, new Random(seed));
            var listed = new List<FoldGroup>();
            var waiting = new Stack<ListedKin>(ListedKin.Of(kin, folding));
            while (waiting.TryPop(out var item))
            {
                listed.Add(item.Group);
                foreach (var under in item.Under) waiting.Push(under);
            }

            Assert.Equal(folding.Boxes.Select(box => box.Code).Order(), listed.Select(group => group.Code).Order());
        }
    }

    [Fact]
    public void Everybody_can_be_come_upon_by_opening_one_group_after_the_other()
    {
        var kin = Drawn(3, seasons: false, all: true)[0];
        var columns = FoldTree.Of(kin, KinGrouping.Yard);
        var sought = kin.All.Last(one => !kin.Columns[kin.ColumnOf[one.Id]].Beyond);
        var open = new List<string>();
        for (var step = 0; ; step++)
        {
            Assert.True(step < 12, "It takes too many steps.");
            var box = Fold(kin, columns, open).Boxes.Single(box => box.Members.Contains(sought));
            if (box.IsSingle) return;
            open.Add(box.Code);
        }
    }

    [Fact]
    public void What_was_opened_last_is_open_and_what_has_no_room_is_said()
    {
        var kin = Drawn(4, seasons: false, all: true)[0];
        var columns = FoldTree.Of(kin, KinGrouping.Generation);
        var open = new List<string>();
        for (var i = 0; i < 14; i++)
        {
            var folding = Fold(kin, columns, open);
            if (folding.Boxes.Where(box => box.Opens).MaxBy(box => box.Under.Count) is not { } largest) break;
            open.Add(largest.Code);
            folding = Fold(kin, columns, open);
            Assert.Contains(folding.Open, group => group.Code == largest.Code);
            Assert.InRange(folding.Boxes.Count, 1, Folding.Most);
        }

        Assert.NotEmpty(Fold(kin, columns, open).NoRoom);
    }

    [Fact]
    public void A_group_that_the_reader_folded_stays_folded()
    {
        var kin = Drawn(1, seasons: false, all: true)[0];
        var columns = FoldTree.Of(kin, KinGrouping.Generation);
        var first = Fold(kin, columns, []).Open.First(group => group.Under.Any(under => under.Opens));
        var folding = Folding.Of(columns, column => kin.Columns[column].Distance, [first.Under.First(group => group.Opens).Code], [first.Code]);
        Assert.DoesNotContain(folding.Open, group => group.Code == first.Code);
        Assert.Contains(folding.Boxes, box => box.Code == first.Code);
    }

    [Fact]
    public void A_ring_that_was_wrongly_entered_ends_with_the_link_that_closes_it()
    {
        List<LinkRow> links = [Mother(0, 1), Mother(1, 2), Mother(2, 3), Mother(3, 1), Mother(2, 0)];
        var kin = Genealogy.Of(new Graph(links), Pedigrees.Id(0), new KinAsk(true, All: true), Pedigrees.About(new Random(1), links));
        Assert.Equal([(2, 0), (3, 1)], kin.Back.Select(link => (Number(link.FromId), Number(link.ToId))).Order());
        Assert.Equal(["the queen herself", "generation 1", "generation 2", "generation 3"], kin.Columns.Select(column => column.Title));
        var up = Genealogy.Of(new Graph(links), Pedigrees.Id(0), new KinAsk(true, KinWay.Up), Pedigrees.About(new Random(1), links));
        Assert.Equal(4, up.All.Count);
        Assert.Equal(up.Columns.Count - 1, up.ColumnOf[Pedigrees.Id(0)]);
    }

    [Fact]
    public void A_colony_that_was_combined_into_what_it_was_made_from_stays_where_it_is()
    {
        List<LinkRow> links = [Pedigrees.Link(LinkKind.Split, 1, 0, null), Pedigrees.Link(LinkKind.Combined, 0, 1, null), Pedigrees.Link(LinkKind.Split, 0, 2, null)];
        var kin = Genealogy.Of(new Graph(links), Pedigrees.Id(0), new KinAsk(false, All: true), Pedigrees.About(new Random(1), links));
        Assert.Equal(["the colony itself", "generation 1"], kin.Columns.Select(column => column.Title));
        Assert.Equal(LinkKind.Split, Assert.Single(kin.Back).Link);
    }

    [Fact]
    public void Of_a_row_of_two_thousand_single_daughters_the_nearest_are_drawn_and_the_rest_is_counted_at_the_end()
    {
        var links = Enumerable.Range(1, Many).Select(i => Mother(i - 1, i)).ToList();
        var kin = Genealogy.Of(new Graph(links), Pedigrees.Id(0), new KinAsk(true, All: true), Pedigrees.About(new Random(1), links));
        Assert.Equal(Genealogy.MostColumns + 1, kin.Columns.Count);
        var folding = Fold(kin, FoldTree.Of(kin, KinGrouping.Generation), []);
        Assert.Equal(Many + 1 - Genealogy.MostColumns, folding.Boxes.Single(box => !box.IsSingle).Members.Count);
        Assert.Empty(kin.Back);
    }

    [Fact]
    public void Of_those_that_no_longer_live_only_the_ones_between_are_drawn_unless_all_are_asked_for()
    {
        List<LinkRow> links = [Mother(0, 1), Mother(1, 2), Mother(0, 3), Mother(3, 4)];
        Relative About(Guid id) => new(id, $"q{Number(id)}") { Alive = Number(id) == 2 };
        var living = Genealogy.Of(new Graph(links), Pedigrees.Id(0), new KinAsk(true), About);
        Assert.Equal([0, 1, 2], living.All.Select(one => Number(one.Id)).Order());
        Assert.Equal((4, 1, 1), (living.Found, living.FoundLiving, living.Between));
        Assert.Equal(5, Genealogy.Of(new Graph(links), Pedigrees.Id(0), new KinAsk(true, All: true), About).All.Count);
    }

    [Fact]
    public void Groups_of_one_depth_open_together_so_that_no_yard_looks_different_from_another()
    {
        var links = Enumerable.Range(1, 200).Select(i => Mother(0, i)).ToList();
        Relative About(Guid id) => new(id, $"q{Number(id)}") { Alive = true, Yard = Number(id) % 7 < 5 ? "Ash Lane" : $"Yard {Number(id) % 7}" };
        var kin = Genealogy.Of(new Graph(links), Pedigrees.Id(0), new KinAsk(true), About);
        var boxes = Fold(kin, FoldTree.Of(kin, KinGrouping.Yard), []).Boxes.Where(box => box.Column == 1).ToList();
        Assert.Equal(["Ash Lane", "Yard 5", "Yard 6"], boxes.Select(box => box.Label));
    }

    [Fact]
    public void A_layout_of_two_thousand_single_boxes_with_rings_keeps_its_promises()
    {
        var random = new Random(17);
        var nodes = Enumerable.Range(0, Many).Select(i => new LayoutNode(Pedigrees.Id(i), 2015 + (i * 10 / Many), 46)).ToList();
        var edges = Enumerable.Range(1, Many - 1).Select(i => new LayoutEdge(Pedigrees.Id(random.Next(20) == 0 ? random.Next(Many) : random.Next(i)), Pedigrees.Id(i), i)).ToList();
        edges.AddRange(edges.Take(1000).Where((_, i) => i % 100 == 0).ToList().Select(edge => new LayoutEdge(edge.To, edge.From, Many + edge.Tag)));
        var layout = LayeredLayout.Of(nodes, edges, 200);
        Assert.Equal(edges.Count, layout.Edges.Count + layout.LeftOut.Count);
        Assert.NotEmpty(layout.LeftOut);
        var at = layout.Nodes.ToDictionary(node => node.Key, node => node.Layer);
        Assert.All(layout.Edges, edge => Assert.True(at[edge.Edge.From] < at[edge.Edge.To]));
        foreach (var layer in layout.Nodes.GroupBy(node => node.Layer))
        {
            var downwards = layer.OrderBy(node => node.Y).ToList();
            for (var i = 1; i < downwards.Count; i++) Assert.True(downwards[i - 1].Y + downwards[i - 1].Height <= downwards[i].Y);
        }
    }

    /// <summary>A pedigree downwards and both ways, and a genealogy of colonies with the frames that went.</summary>
    private List<Genealogy> Drawn(int seed, bool seasons, bool all)
    {
        output.WriteLine($"Seed {seed}.");
        var random = new Random(seed);
        var queens = Pedigrees.Queens(random, Many, rings: 6);
        var colonies = Pedigrees.Colonies(random, Many);
        return
        [
            Genealogy.Of(new Graph(queens), Pedigrees.Id(0), new KinAsk(true, All: all, Also: seed % 5 == 0, Seasons: seasons), Pedigrees.About(random, queens)),
            Genealogy.Of(new Graph(queens), Pedigrees.Id(Many / 2), new KinAsk(true, KinWay.Both, all, true, seasons), Pedigrees.About(random, queens)),
            Genealogy.Of(new Graph(colonies), Pedigrees.Id(Many / 3), new KinAsk(false, KinWay.Both, all, true, seasons), Pedigrees.About(random, colonies)),
        ];
    }

    /// <summary>Folded as at first, with some groups opened and folded at random.</summary>
    private static (IReadOnlyList<FoldGroup> Columns, Folding Folding) Folded(Genealogy kin, KinGrouping by, Random random)
    {
        var columns = FoldTree.Of(kin, by);
        var (open, folded) = (new List<string>(), new List<string>());
        var folding = Fold(kin, columns, open);
        for (var step = 0; step < random.Next(8); step++)
        {
            var boxes = folding.Boxes.Where(box => box.Opens).ToList();
            if (boxes.Count > 0) open.Add(boxes[random.Next(boxes.Count)].Code);
            if (folding.Open.Count > 0 && random.Next(3) == 0) folded.Add(folding.Open[random.Next(folding.Open.Count)].Code);
            folding = Folding.Of(columns, column => kin.Columns[column].Distance, open, folded);
        }

        return (columns, folding);
    }

    private static Folding Fold(Genealogy kin, IReadOnlyList<FoldGroup> columns, IReadOnlyList<string> open) => Folding.Of(columns, column => kin.Columns[column].Distance, open, []);

    private static LinkRow Mother(int from, int to) => Pedigrees.Link(LinkKind.Mother, from, to, Certainty.Known);

    private static int Number(Guid id) => BitConverter.ToInt32(id.ToByteArray());
}
