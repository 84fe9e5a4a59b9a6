using ColonyLineage.Projections.Sums.Mixed;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums.Mixed;

/// <summary>Differences of fixed lines, against R 4.2.2 with lme4 1.1-31 and pbkrtest (vcovAdj, get_Lb_ddf) on Golden/mixed-model/lines_yards.csv.</summary>
public class ContrastTests
{
    private const string Source = "R, pbkrtest";

    // lme4's own noise in the variances is up to 6e-5 of them.
    [Theory]
    [InlineData("L2", -4.99010280781, 3.11041541328, 8.89480664557)]
    [InlineData("L3", -7.60901367341, 3.14906753825, 9.2234569257)]
    [InlineData("L4", -.452022507769, 3.02720522111, 8.13488268342)]
    [InlineData("L5", -5.37324377794, 3.60831076674, 13.3872067299)]
    [InlineData("L6", -.778968498562, 3.57520358038, 15.3092912969)]
    public void Kenward_and_Roger(string line, double difference, double error, double freedom)
    {
        var (fit, part) = FixedLines();
        var contrast = Contrast.KenwardRoger(fit, [.. part.Columns.Select(column => column == $"line {line}" ? 1.0 : 0)])!;
        Near(difference, contrast.Value, 2e-4 * Math.Abs(difference), Source);
        Near(error, contrast.StandardError, 2e-5 * error, Source);
        Near(freedom, contrast.Freedom, 2e-4 * freedom, Source);
    }

    [Fact]
    public void Two_lines_neither_of_which_is_the_first()
    {
        var (fit, part) = FixedLines();
        var contrast = Contrast.KenwardRoger(fit, [.. part.Columns.Select(column => column == "line L2" ? 1.0 : column == "line L3" ? -1 : 0)])!;
        Near(2.6189108656, contrast.Value, 2e-4, Source);
        Near(3.12946249075, contrast.StandardError, 2e-4, Source);
        Near(9.3802263558, contrast.Freedom, 2e-3, Source);
        Near(9.126672378, fit.Variance(0), 2e-3, "R, lme4");
        Near(33.616450108, fit.Error, 2e-3, "R, lme4");
    }

    // By hand: balanced, three lines of four mothers with two colonies each: the mothers' mean square has 3 (4 − 1) = 9 degrees of freedom, and nothing is to be put right.
    [Fact]
    public void Where_it_is_balanced_the_mothers_are_the_replicates()
    {
        var (lines, mothers) = (new List<string>(), new List<string>());
        var y = new List<double>();
        for (var line = 0; line < 3; line++)
            for (var mother = 0; mother < 4; mother++)
                for (var colony = 0; colony < 2; colony++)
                {
                    lines.Add($"L{line}");
                    mothers.Add($"L{line}-{mother}");
                    y.Add(line + (mother * mother * (line == 1 ? -1 : 1)) + (.1 * colony * (mother + line)));
                }

        var part = FixedPart.Mean(y.Count).With("line", lines);
        var fit = new MixedModel(y, part, [RandomEffect.Of("mother", mothers)]).Reml();
        var contrast = Contrast.KenwardRoger(fit, [1, 0])!;
        Near(9, contrast.Freedom, 1e-6, "3 × (4 − 1)");
        var means = y.Select((value, i) => (value, mother: mothers[i])).GroupBy(one => one.mother).Select(one => (Line: one.Key[..2], Mean: one.Average(value => value.value))).ToList();
        var square = means.GroupBy(mean => mean.Line).Sum(line => line.Sum(mean => Math.Pow(mean.Mean - line.Average(other => other.Mean), 2))) / 9;
        Near(Math.Sqrt(2 * square / 4), contrast.StandardError, 1e-6, "the mothers' mean square");
    }

    [Fact]
    public void A_line_in_one_yard_only_cannot_be_told_from_it()
    {
        var part = FixedPart.By(["a", "a", "a", "b", "b", "b"]).With("line", ["L1", "L1", "L1", "L2", "L2", "L2"]);
        var fit = new MixedModel([1, 2, 3, 4, 5, 7], part, [RandomEffect.Of("mother", ["1", "1", "2", "3", "3", "4"])]).Reml();
        Assert.Equal(["line L2"], fit.Confounded);
        Assert.Null(Contrast.KenwardRoger(fit, [1]));
    }

    private static (MixedFit Fit, FixedPart Part) FixedLines()
    {
        var table = new Table("mixed-model/lines_yards.csv");
        var part = FixedPart.By(MixedModelTests.Joined(table, "yard", "season")).With("age", table.Numbers("age")).With("line", table.Texts("line"));
        return (new MixedModel(table.Numbers("honey"), part, [MixedModelTests.Effect("mother", table, "mother")]).Reml(), part);
    }
}
