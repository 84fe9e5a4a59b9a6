using ColonyLineage.Ledger.Import;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Projections.MiteWatch;
using Xunit;

namespace ColonyLineage.Core.Tests.Import;

/// <summary>
/// The questions on the real sheet, against what its SOURCE.md says is known of the answers (Aurell et al. 2025, doi 10.1093/jee/toaf126,
/// data CC BY 4.0). Skipped where the shared folder is absent.
/// </summary>
public sealed class SplitStudyAnswers
{
    private static readonly Lazy<WholeBooks> Books = new(() =>
    {
        using var sheet = File.OpenRead(Places.Shared("data", "split-study-2022", "field-sheet.csv"));
        var plan = SheetImport.Plan(sheet, Mapping.Read(File.ReadAllText(Path.Combine(Places.Import, "split-study-2022.map.json"))), new DateOnly(2026, 1, 1));
        return WholeBooks.OfStanding(Standing.InOrder(plan.Entries));
    });

    [Fact] // SOURCE.md: 437 washes have both counts; Wire 61 / 10,692 = 0.5705 % in 35 colonies
    public void Washes_and_their_pools()
    {
        var washes = Books.Value.Rows(Questions.MiteWatch).ToList();
        Assert.Equal(437, washes.Count);
        Assert.Equal(new Pool("Wire", 1, 35, 61, 10_692, 0.5705m), MiteWatchQuestion.Pooled(washes).Single(pool => pool is { Yard: "Wire", Nth: 1 }));
    }

    [Fact] // SOURCE.md: the mean over the 117 colonies without an issue, 1.417781 at the first and 3.782780 at the third wash
    public void Means_of_the_colonies_without_an_issue()
    {
        var healthy = WithoutIssue();
        Assert.Equal(117, healthy.Count);
        var washes = Books.Value.Rows(Questions.MiteWatch).Where(wash => healthy.Contains(wash.Colony)).ToList();
        Assert.Equal(1.417781m, Mean(washes.Where(wash => wash.On < new DateOnly(2022, 4, 15))));
        Assert.Equal(3.782780m, Mean(washes.Where(wash => wash.On > new DateOnly(2022, 6, 15))));
    }

    /// <summary>
    /// Parents as lines: the last washes of the 117, yard and treatment group in the model. Variances and predictions by R 4.2.2, lme4 1.1-31, on the sheet itself:
    /// lmer(log(100 mites / bees + 0.5) ~ new_yard + trt + (1 | parent_id)). A parent is one colony, so nothing is claimed of any.
    /// </summary>
    [Fact]
    public void Mites_after_treatment_by_parent()
    {
        var measured = new Measured([.. Books.Value.Rows(Questions.Traits)], [.. Books.Value.Rows(Questions.Losses)], [.. Books.Value.Rows(Questions.Reigns)], Books.Value.Books.Outfit, new DateOnly(2026, 1, 1));
        var comparison = Comparing.Of(Records.Of(measured, Trait.MitesLast, ComparedBy.Maker), Trait.MitesLast, ComparedBy.Maker);
        Assert.Equal((61, 117), (comparison.Lines.Count, comparison.Lines.Sum(line => line.Records)));
        Assert.Equal(.23755527, comparison.Parts[0].Variance, 1e-5);
        Assert.Equal(.63600562, comparison.Parts[1].Variance, 1e-5);
        var blups = comparison.Lines.ToDictionary(line => line.Line, line => (double)line.Blup!.Value);
        foreach (var (parent, blup) in new[] { ("20-1", -.1605467622), ("20-18", .1045840215), ("20-69", .2376990985), ("20-7", .7411102061), ("20-C5", .1093309463), ("20-D19", .1748946505) }) Assert.Equal(blup, blups[parent], 1e-4);
        Assert.All(comparison.Lines, line => Assert.Null(line.Difference));
        Assert.All(comparison.Pairs, pair => Assert.Equal(Verdict.CannotSay, pair.Verdict));
        Assert.Contains("share no yard and season", comparison.First[0]);
    }

    [Fact] // SOURCE.md: 177 splits, 65 parents; counted in the sheet by hand: 21-030 gave three splits, one of them taken out as weak
    public void Who_descends_from_a_parent_and_what_became_of_them()
    {
        var register = Books.Value.Rows(Questions.Register).Where(row => row.Kind == SubjectKind.Colony).ToDictionary(row => row.Id);
        var links = Books.Value.Rows(Questions.Lineage).Where(link => link.Link == LinkKind.Split).ToList();
        Assert.Equal((177, 65), (links.Select(link => link.ToId).Distinct().Count(), links.Select(link => link.FromId).Distinct().Count()));
        var down = new Graph(links).Descendants(register.Values.Single(row => row.Name == "21-030").Id);
        Assert.Equal(
            [("22-001", "Shaw", null), ("22-002", "Shaw", "an issue by the authors' judgement"), ("22-003", "Shaw", "Weak")],
            down.Select(found => register[found.Id]).Select(row => (row.Name, row.Yard, row.TakenOut)).Order());
    }

    /// <summary>SOURCE.md: over the 117 without an issue 1.417781, 1.445925 and 3.782780; controls (16) 1.317678, 3.968434 and 7.740708.</summary>
    [Fact]
    public void Mites_by_treatment_group_at_the_three_washes()
    {
        var groups = MiteWatchQuestion.Grouped(Books.Value.Rows(Questions.MiteWatch));
        var all = groups.Where(group => group.Treatments == "all").ToList();
        Assert.Equal([(117, 1.417781m), (117, 1.445925m), (117, 3.782780m)], all.Select(group => (group.Washes, group.MeanPer100Bees!.Value)));
        var controls = groups.Where(group => group.Treatments!.Contains("control", StringComparison.OrdinalIgnoreCase)).ToList();
        Assert.Equal([(16, 1.317678m), (16, 3.968434m), (16, 7.740708m)], controls.Select(group => (group.Washes, group.MeanPer100Bees!.Value)));
    }

    [Fact] // SOURCE.md: 60 with an issue; the sheet: 55 of them were removed, each with a reason
    public void Taken_out_and_why() =>
        Assert.Equal(60, Books.Value.Rows(Questions.Register).Count(row => row.TakenOut is not null));

    private static decimal Mean(IEnumerable<WashRow> washes) => Math.Round(washes.Average(wash => 100m * wash.Mites / wash.Bees), 6);

    /// <summary>The authors' own judgement, a column of the sheet that the mapping leaves alone.</summary>
    private static HashSet<string> WithoutIssue()
    {
        var lines = File.ReadAllLines(Places.Shared("data", "split-study-2022", "field-sheet.csv")).Select(Cells).ToList();
        var (colony, issues) = (lines[0].IndexOf("colony_num"), lines[0].IndexOf("issues"));
        return lines.Skip(1).Where(cells => cells[issues] == "0").Select(cells => cells[colony]).ToHashSet();
    }

    /// <summary>The cells of a line; a comma between quotes parts nothing. No cell of this sheet runs over a line's end.</summary>
    private static List<string> Cells(string line)
    {
        var cells = new List<string> { "" };
        var quoted = false;
        foreach (var letter in line)
            if (letter == '"') quoted = !quoted;
            else if (letter == ',' && !quoted) cells.Add("");
            else cells[^1] += letter;
        return cells;
    }
}
