using ColonyLineage.Core.Tests.Projections.Sums.Mixed;
using ColonyLineage.Entries;
using ColonyLineage.Projections.LineComparison;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>Lines compared: figures against R on Golden/mixed-model/lines_yards.csv (its SOURCE.md; pbkrtest for the pairs), verdicts by the rule, and what may not be claimed.</summary>
public class LineComparisonCases
{
    [Fact]
    public void Six_lines_in_five_yards()
    {
        var table = new Table("mixed-model/lines_yards.csv");
        var comparison = Comparing.Of([.. Enumerable.Range(0, table.Count).Select(i => Record(i, table.Texts("line")[i], table.Texts("mother")[i], table.Texts("yard")[i], table.Texts("season")[i], table.Texts("age")[i], table.Numbers("honey")[i]))], Trait.Honey, ComparedBy.Line);
        Assert.Empty(comparison.First);
        // Age is a class here and a number in the table: these are lme4's own with factor(age), R 4.2.2.
        var parts = comparison.Parts.ToDictionary(part => part.Name, part => part.Variance);
        Near(AgeAsClass.Line, parts["line"], 1e-3, "R, lme4");
        Near(AgeAsClass.Mother, parts["mother"], 1e-3, "R, lme4");
        Near(AgeAsClass.Residual, parts["residual"], 1e-3, "R, lme4");
        var pair = comparison.Pairs.Single(pair => (pair.Line, pair.Other) == ("L1", "L3"));
        Near(AgeAsClass.L1OverL3, (double)pair.Difference!, 1e-3, "R, pbkrtest");
        Near(AgeAsClass.L1OverL3Error, (double)pair.StandardError!, 1e-3, "R, pbkrtest");
        Near(AgeAsClass.L1OverL3Freedom, (double)pair.Freedom!, .06, "R, pbkrtest");
        Near(AgeAsClass.L1OverL3P, (double)pair.P!, 2e-4, "R, ptukey");
        Assert.All(comparison.Pairs, other => Assert.Equal(Verdict.CannotSay, other.Verdict));
        Assert.Equal(15, comparison.Pairs.Count);
        // Ranked with the most honey first, each with as much on both sides of its figure.
        Assert.Equal(comparison.Lines.OrderByDescending(line => line.Difference).Select(line => line.Line), comparison.Lines.Select(line => line.Line));
        Assert.All(comparison.Lines, line => Near((double)(line.Upper! + line.Lower!) / 2, (double)line.Difference!, 1e-5, "arithmetic"));
        Near(0, (double)comparison.Lines.Sum(line => line.Difference!.Value), 1e-4, "differences from their own mean");
        Assert.All(comparison.Pairs, other => Assert.True(other.MothersNeeded is null or > 3, "More than there are, where nothing can be said."));
    }

    [Fact]
    public void Two_lines_that_differ_are_told_apart_and_the_better_is_first()
    {
        var comparison = Comparing.Of(Made(["A", "B", "C"], mothers: 4, colonies: 4, line => line == "A" ? 20 : 0), Trait.Honey, ComparedBy.Line);
        Assert.Equal("A", comparison.Lines[0].Line);
        Assert.Equal([("A", "B", Verdict.Differ), ("A", "C", Verdict.Differ), ("B", "C", Verdict.CannotSay)], comparison.Pairs.Select(pair => (pair.Line, pair.Other, pair.Verdict)).OrderBy(pair => pair));
        Assert.True(comparison.Pairs[0].P < .001m);
        // Of mites fewer are better.
        Assert.Equal("A", Comparing.Of(Made(["A", "B", "C"], 4, 4, line => line == "A" ? -20 : 0), Trait.MitesLast, ComparedBy.Line).Lines[0].Line);
    }

    [Fact]
    public void One_mother_is_no_line()
    {
        var comparison = Comparing.Of([.. Made(["A", "B"], 3, 5, _ => 0), .. Made(["C"], 1, 15, _ => 50)], Trait.Honey, ComparedBy.Line);
        var pair = comparison.Pairs.Single(pair => (pair.Line, pair.Other) == ("A", "C"));
        Assert.Equal((Verdict.CannotSay, "C has fewer than two mothers"), (pair.Verdict, pair.Why));
    }

    [Fact]
    public void A_line_in_one_yard_alone_is_said_first()
    {
        var comparison = Comparing.Of([.. Made(["A", "B"], 3, 4, _ => 0), .. Made(["C"], 3, 4, _ => 9).Select(record => record with { Yard = "far", YardSeason = "far 2026" })], Trait.Honey, ComparedBy.Line);
        Assert.Equal("C shares no yard and season with another line: what is the line's and what is the place's cannot be told apart.", comparison.First[0]);
        Assert.Null(comparison.Lines.Single(line => line.Line == "C").Difference);
        Assert.Contains("share no yard and season", comparison.Pairs.Single(pair => (pair.Line, pair.Other) == ("A", "C")).Why);
        Assert.NotNull(comparison.Lines.Single(line => line.Line == "A").Difference);
    }

    [Theory]
    [InlineData(ComparedBy.Mother, "daughters of one mother each: differences between mothers are not claimed, lines are")]
    [InlineData(ComparedBy.Maker, "each is one colony: its splits share its mites, its yard and one mother, and are no replicates")]
    [InlineData(ComparedBy.Queen, "each is one queen: of her own there is nothing to repeat")]
    public void Mothers_queens_and_makers_are_shown_and_nothing_is_claimed(ComparedBy by, string why)
    {
        var comparison = Comparing.Of([.. Made(["A", "B"], 3, 4, line => line == "A" ? 30 : 0)], Trait.Honey, by);
        Assert.All(comparison.Pairs, pair => Assert.Equal(why, pair.Why));
        Assert.All(comparison.Pairs, pair => Assert.Equal((Verdict.CannotSay, null), (pair.Verdict, pair.P)));
        Assert.All(comparison.Lines, line => Assert.NotNull(line.Blup));
    }

    /// <summary>Two mothers that are sisters are drawn towards each other; one that is kin to nobody is not. By the dense oracle, which is given the kinship by hand: daughters of sisters by drones unknown.</summary>
    [Fact]
    public void Mothers_related_by_the_pedigree()
    {
        var story = new Story();
        foreach (var founder in new[] { "root", "lone" }) story.Raise(founder, "1 Jun 2020");
        foreach (var sister in new[] { "a", "b" }) story.Raise(sister, "1 Jun 2022", "root");
        var books = new ColonyLineage.Projections.Relationship.BooksPedigree(story.Books().Rows(ColonyLineage.Projections.Questions.Lineage), [(Story.Queen("lone").Value, "lone")]);
        double[] y = [9, 11, 10, 6, 8, 3, 4, 2, 6];
        string[] of = ["a", "a", "a", "b", "b", "lone", "lone", "lone", "lone"];
        var records = y.Select((value, i) => Record(i, of[i], of[i], "East", "2026", "0", value) with { MotherId = Story.Queen(of[i]) }).ToList();
        var comparison = Comparing.Of(records, Trait.Honey, ComparedBy.Mother, books);
        // θ of daughters of two sisters is a quarter of that of the sisters, .25/2 + .5/12/2; two daughters of one mother: .25 + .5/12.
        var (sisters, own) = ((.25 + (.5 / 12)) / 4, .25 + (.5 / 12));
        var effect = ColonyLineage.Projections.Sums.Mixed.RandomEffect.Of("mother", of) with
        {
            Kinship = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseOfArray(new[,] { { own, sisters, 0 }, { sisters, own, 0 }, { 0, 0, own } }),
        };
        var oracle = new DenseOracle(y, [.. y.Select(_ => "mean")], new double[9], [effect], [comparison.Parts[0].Variance], comparison.Parts[1].Variance, covariate: false);
        foreach (var (mother, i) in new[] { "a", "b", "lone" }.Select((mother, i) => (mother, i)))
        {
            Near(oracle.Blups[0][i], (double)comparison.Lines.Single(line => line.Line == mother).Blup!, 1e-5, "dense V");
            Near(oracle.BlupErrors[0][i], (double)comparison.Lines.Single(line => line.Line == mother).BlupError!, 1e-5, "dense V");
        }

        Assert.NotEqual(comparison.Lines.Select(line => line.Blup), Comparing.Of(records, Trait.Honey, ComparedBy.Mother).Lines.Select(line => line.Blup));
    }

    /// <summary>
    /// What a queen hands down, by her own records and those of her kin; a queen of two seasons has a part of her own beside it. By the dense oracle, which is given the kinship by hand:
    /// two sisters by drones unknown, A = 2 (¼ · ½ + ¼ · 1/12); their mother, of whom there is no record, is known all the same.
    /// </summary>
    [Fact]
    public void Queens_related_by_the_pedigree()
    {
        var story = new Story();
        foreach (var founder in new[] { "root", "lone" }) story.Raise(founder, "1 Jun 2020");
        foreach (var sister in new[] { "a", "b" }) story.Raise(sister, "1 Jun 2022", "root");
        var books = new ColonyLineage.Projections.Relationship.BooksPedigree(story.Books().Rows(ColonyLineage.Projections.Questions.Lineage), [(Story.Queen("lone").Value, "lone")]);
        double[] y = [9, 11, 10, 7, 8, 3, 4, 2, 6];
        string[] of = ["a", "a", "a", "b", "b", "lone", "lone", "lone", "new"];
        var records = y.Select((value, i) => Record(i, of[i], "m", "East", "2026", "0", value) with { QueenId = Story.Queen(of[i]) }).ToList();
        var comparison = Comparing.Of(records, Trait.Honey, ComparedBy.Queen, books);
        Assert.Equal(["queen", "queen, not inherited", "residual"], comparison.Parts.Select(part => part.Name));
        var sisters = 2 * ((.25 * .5) + (.25 / 12));
        // 'new' is not in the pedigree: related to nobody.
        var kinship = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseIdentity(4);
        kinship[0, 1] = kinship[1, 0] = sisters;
        var queen = ColonyLineage.Projections.Sums.Mixed.RandomEffect.Of("queen", of);
        var oracle = new DenseOracle(y, [.. y.Select(_ => "mean")], new double[9], [queen with { Kinship = kinship }, queen], [comparison.Parts[0].Variance, comparison.Parts[1].Variance], comparison.Parts[2].Variance, covariate: false);
        foreach (var (level, i) in queen.Levels.Select((level, i) => (level, i)))
        {
            var row = comparison.Lines.Single(line => line.Line == level);
            Near(oracle.Blups[0][i], (double)row.Blup!, 1e-5, "dense V");
            Near(oracle.BlupErrors[0][i], (double)row.BlupError!, 1e-5, "dense V");
            Assert.Equal(Story.Queen(level), row.QueenId);
        }

        Assert.Equal(comparison.Lines.OrderByDescending(line => line.Blup).Select(line => line.Line), comparison.Lines.Select(line => line.Line));
        Assert.All(comparison.Pairs, pair => Assert.Equal((Verdict.CannotSay, "each is one queen: of her own there is nothing to repeat"), (pair.Verdict, pair.Why)));
    }

    /// <summary>Beyond what whole matrices are made for, lines are compared all the same, and by the same rule: 8 lines of 60 mothers.</summary>
    [Fact]
    public void Hundreds_of_mothers_are_compared_by_the_same_rule()
    {
        var comparison = Comparing.Of(Made(["A", "B", "C", "D", "E", "F", "G", "H"], mothers: 60, colonies: 2, line => line == "A" ? 20 : 0), Trait.Honey, ComparedBy.Line);
        Assert.All(comparison.Pairs, pair => Assert.Equal(pair.Line == "A" ? Verdict.Differ : Verdict.CannotSay, pair.Verdict));
        Assert.All(comparison.Lines, line => Assert.NotNull(line.Freedom));
    }

    [Theory]
    [InlineData("none")]
    [InlineData("one line")]
    [InlineData("one record")]
    [InlineData("all zero")]
    [InlineData("no mother")]
    [InlineData("no line")]
    [InlineData("a yard each")]
    [InlineData("all lost")]
    [InlineData("separated")]
    public void Boundary_cases_end_well(string what)
    {
        var records = what switch
        {
            "none" => [],
            "one line" => Made(["A"], 3, 3, _ => 0),
            "one record" => Made(["A"], 1, 1, _ => 0),
            "all zero" => [.. Made(["A", "B"], 3, 3, _ => 0).Select(record => record with { Value = 0 })],
            "no mother" => [.. Made(["A", "B"], 3, 3, _ => 0).Select(record => record with { Mother = null })],
            "no line" => [.. Made(["A", "B"], 3, 3, _ => 0).Select(record => record with { Line = Records.NoLine })],
            "a yard each" => [.. Made(["A", "B", "C"], 3, 3, _ => 0).Select(record => record with { Yard = record.Line, YardSeason = record.Line })],
            "all lost" => [.. Made(["A", "B"], 3, 3, _ => 0).Select(record => record with { Value = 1 })],
            _ => (IReadOnlyList<LineRecord>)[.. Made(["A", "B"], 3, 3, _ => 0).Select(record => record with { Value = record.Line == "A" ? 1 : 0 })],
        };
        foreach (var trait in Enum.GetValues<Trait>())
            foreach (var by in Enum.GetValues<ComparedBy>())
            {
                var comparison = Comparing.Of(Traits.IsShare(trait) ? [.. records.Select(record => record with { Value = record.Value > 2 || what is "all lost" || record.Value == 1 ? 1 : 0 })] : records, trait, by);
                if (what != "separated") Assert.All(comparison.Pairs, pair => Assert.Equal(Verdict.CannotSay, pair.Verdict));
                Assert.All(comparison.Pairs, pair => Assert.True(pair.Verdict == Verdict.Differ || pair.Why is not null));
                if (what is "none" or "one line" or "no line" or "a yard each") Assert.NotEmpty(comparison.First);
            }
    }

    /// <summary>
    /// Of shares: lines that lost 1 in 20 and 12 in 20 of each of five mothers' daughters are told apart, and the odds ratio is about (12/8) / (1/19) = 28.5. A line none of which was lost is compared as well.
    /// </summary>
    [Theory]
    [InlineData(1, 2.5, 4.5)]
    [InlineData(0, 3, 9)]
    public void Shares_are_compared_by_their_odds(int lost, double least, double most)
    {
        var comparison = Comparing.Of(Lost(("A", 20, lost), ("B", 20, 12)), Trait.WinterLosses, ComparedBy.Line);
        var pair = Assert.Single(comparison.Pairs);
        Assert.Equal(Verdict.Differ, pair.Verdict);
        Assert.InRange(-(double)pair.Difference!.Value, least, most);
        Assert.Equal("A", comparison.Lines[0].Line);
        // Where a line lost none the variance between lines has no end, and that is said.
        Assert.Equal(lost > 0 ? ["line", "mother", "yard and season", "residual"] : [], comparison.Parts.Select(part => part.Name));
        Assert.Equal(lost == 0, comparison.First.Contains("One has none of it or all, and the variance between them has no end: predictions take it as 9 on the logit scale."));
    }

    /// <summary>Two mothers of whose one daughter each is gone say next to nothing: with noughts and ones in a linear model they made a line of 6 in 100 look as if 19 more were gone.</summary>
    [Fact]
    public void Mothers_of_one_daughter_weigh_as_one_daughter_does()
    {
        var records = Lost(("A", 50, 3), ("B", 50, 3));
        records.AddRange([LostOne(9001, "A", "A single", 1), LostOne(9002, "A", "A other", 1)]);
        var comparison = Comparing.Of(records, Trait.QueenGone, ComparedBy.Line);
        Assert.Equal(Verdict.CannotSay, Assert.Single(comparison.Pairs).Verdict);
        // A's odds by hand: 17 of 252 gone, B's 15 of 250: ln 1.13 = .13.
        Assert.InRange((double)comparison.Pairs[0].Difference!.Value, 0, .8);
    }

    /// <summary>Five mothers of each line, so many daughters of each, of which so many were lost.</summary>
    private static List<LineRecord> Lost(params (string Line, int Daughters, int Lost)[] lines) =>
    [
        .. from line in lines
           from mother in Enumerable.Range(0, 5)
           from daughter in Enumerable.Range(0, line.Daughters)
           select LostOne((line.Line[0] * 1000) + (mother * 100) + daughter, line.Line, $"{line.Line}{mother}", daughter < line.Lost ? 1 : 0),
    ];

    private static LineRecord LostOne(int number, string line, string mother, double lost) => Record(number, line, mother, number % 2 == 0 ? "East" : "West", "2026", "0", lost);

    // Fleiss 1981 (from memory): 82 in each group tell 20 % from 40 % with power .8.
    [Fact]
    public void How_many_it_takes()
    {
        Assert.Equal(82, ColonyLineage.Projections.Sums.SampleSize.TwoShares(.2, .4));
        Assert.Null(ColonyLineage.Projections.Sums.SampleSize.TwoShares(.3, .3));
        Assert.Null(ColonyLineage.Projections.Sums.SampleSize.Mothers(0, 1, 5, 6));
        // Two lines, many mothers: nearly 2 (z.975 + z.8)² σ² / δ² = 15.7 of them, and Student's t takes one or two more.
        Assert.InRange(ColonyLineage.Projections.Sums.SampleSize.Mothers(1, Math.Sqrt(2), 1, 2)!.Value, 16, 18);
    }

    internal static LineRecord Record(int i, string line, string? mother, string yard, string season, string age, double value) =>
        new(new ColonyId(new Guid(i + 1, 0, 0, new byte[8])), line, mother, yard, $"{yard} {season}", age, "none", value, false, false, [new EntryId(new Guid(i + 1, 1, 0, new byte[8]))]);

    /// <summary>Lines with mothers with colonies in two yards, with a spread that is made up but not chance.</summary>
    private static List<LineRecord> Made(string[] lines, int mothers, int colonies, Func<string, double> effect)
    {
        var records = new List<LineRecord>();
        foreach (var line in lines)
            for (var mother = 0; mother < mothers; mother++)
                for (var colony = 0; colony < colonies; colony++)
                    records.Add(Record(records.Count + (line[0] * 1000), line, $"{line}{mother}", colony % 2 == 0 ? "East" : "West", "2026", "0", effect(line) + (mother % 2) + (((records.Count * 7) + line[0]) % 5)));
        return records;
    }

    /// <summary>R 4.2.2: lmer(honey ~ 0 + ys + factor(age) + (1|line) + (1|mother)), and with fixed lines vcovAdj and get_Lb_ddf for L1 - L3, ptukey with 6 means.</summary>
    private static class AgeAsClass
    {
        public const double Line = 5.628747633, Mother = 8.264071938, Residual = 33.877115356, L1OverL3 = 7.49374199183, L1OverL3Error = 3.11120168089, L1OverL3Freedom = 9.12116750276, L1OverL3P = .246352122827;
    }
}
