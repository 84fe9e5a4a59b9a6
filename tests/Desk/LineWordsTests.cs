using ColonyLineage.Desk.Drawing;
using ColonyLineage.Entries;
using ColonyLineage.Projections.LineComparison;
using Xunit;

namespace ColonyLineage.Desk.Tests;

/// <summary>What is said of made-up comparisons, and where their picture puts them.</summary>
public sealed class LineWordsTests
{
    private const string Chance = "as much is made by chance among as many lines";

    /// <summary>Tukey's range of three means with 20 degrees of freedom is 3.578 (tables; R 4.2.2, qtukey(.95, 3, 20)): 5.1 ± 3.578 / √2 × 1.225 = 2.0 to 8.2, whichever of the two stands first.</summary>
    [Theory]
    [InlineData("Sloe", "Brindle", 5.1)]
    [InlineData("Brindle", "Sloe", -5.1)]
    public void Two_that_differ_are_said_with_the_better_first_by_how_much_and_from_how_many(string line, string other, double difference)
    {
        var comparison = Made(Trait.Honey, Pair(Trait.Honey, line, other, (decimal)difference, 1.225m, Verdict.Differ));
        Assert.Equal("Sloe has more honey than Brindle: 5.1 kg a season (2.0 to 8.2), 6 and 5 mothers, 31 and 24 colonies", LineWords.Differ(comparison, comparison.Pairs[0]));
        Assert.Equal(LineWords.Differ(comparison, comparison.Pairs[0]), LineWords.InShort(comparison));
    }

    /// <summary>Of mites and losses fewer are better. Half is 3.578 / √2 × the standard error: ln 0.62 = −0.478, e^(−0.478 ± 0.253) = 0.48 to 0.80, of mites and of odds.</summary>
    [Theory]
    [InlineData(Trait.MitesFirst, "Sloe", "Brindle", -.478, .1, "Sloe has fewer mites than Brindle in the season's first wash: 0.62 times as many mites (0.48 to 0.80)")]
    [InlineData(Trait.MitesFirst, "Brindle", "Sloe", .478, .1, "Sloe has fewer mites than Brindle in the season's first wash: 0.62 times as many mites (0.48 to 0.80)")]
    [InlineData(Trait.MiteGrowth, "Brindle", "Sloe", .478, .1, "mites grow more slowly in Sloe than in Brindle: 0.62 times as many in 30 days (0.48 to 0.80)")]
    [InlineData(Trait.WinterLosses, "Sloe", "Brindle", -.478, .1, "Sloe lost fewer colonies in winter than Brindle: 0.62 times the odds of loss (0.48 to 0.80)")]
    [InlineData(Trait.WinterLosses, "Brindle", "Sloe", .478, .1, "Sloe lost fewer colonies in winter than Brindle: 0.62 times the odds of loss (0.48 to 0.80)")]
    [InlineData(Trait.QueenGone, "Brindle", "Sloe", .478, .1, "Sloe lost fewer queens within a year than Brindle: 0.62 times the odds of being gone (0.48 to 0.80)")]
    [InlineData(Trait.Temper, "Brindle", "Sloe", -.6, .1, "Sloe is gentler than Brindle: 0.60 points (0.35 to 0.85)")]
    public void What_is_wanted_goes_by_the_trait(Trait trait, string line, string other, double difference, double error, string said)
    {
        var comparison = Made(trait, Pair(trait, line, other, (decimal)difference, (decimal)error, Verdict.Differ));
        Assert.StartsWith(said, LineWords.Differ(comparison, comparison.Pairs[0]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(28, 140, "To see a difference as large as this one (1.1 kg a season) in four of five cases it would take 28 mothers in each line, about 140 colonies; there are 6 and 5")]
    [InlineData(4, 20, "it would take 4 mothers in each line, about 20 colonies, if they stood side by side in the same yards; there are 6 and 5")]
    [InlineData(null, null, "To see a difference as small as this one (1.1 kg a season) 500 mothers in each line would not do; there are 6 and 5")]
    public void Where_nothing_can_be_said_it_is_said_why_and_what_it_would_take(int? mothers, int? colonies, string said)
    {
        var comparison = Made(Trait.Honey, Pair(Trait.Honey, "Sloe", "Brindle", -1.1m, 1.2m, Verdict.CannotSay) with { MothersNeeded = mothers, ColoniesNeeded = colonies });
        var sentence = LineWords.CannotSay(comparison, comparison.Pairs[0]);
        Assert.StartsWith($"cannot say: {Chance}. ", sentence, StringComparison.Ordinal);
        Assert.EndsWith(said, sentence, StringComparison.Ordinal);
        Assert.Equal("cannot say: no two of 3 lines differ by more than chance makes", LineWords.InShort(comparison));
        Assert.Equal("cannot say: Sloe differs from none of the 1 others by more than chance makes", LineWords.InShort(comparison, "Sloe"));
        Assert.Equal("No two lines can be said to differ: which stands above which means nothing here.", LineWords.NoRanking(comparison));
    }

    /// <summary>What one mother's daughters differ by would make two mothers look enough.</summary>
    [Fact]
    public void Of_one_mother_it_is_not_reckoned_what_it_would_take()
    {
        var comparison = Made(Trait.Honey, Pair(Trait.Honey, "Lone", "Sloe", 30, 1.2m, Verdict.CannotSay) with { Why = "Lone has fewer than two mothers", MothersNeeded = 2, ColoniesNeeded = 20 });
        comparison = comparison with { Lines = [.. comparison.Lines, Line("Lone", 1, 9, 30)] };
        Assert.Equal("cannot say: Lone has fewer than two mothers. It takes two mothers in each line at the least to say anything; there are 1 and 6", LineWords.CannotSay(comparison, comparison.Pairs[0]));
    }

    [Fact]
    public void What_is_confounded_has_no_figure_and_stands_apart()
    {
        var comparison = Made(Trait.Honey, Pair(Trait.Honey, "Far", "Sloe", null, null, Verdict.CannotSay) with { Why = "they share no yard and season", P = null });
        comparison = comparison with { Lines = [.. comparison.Lines, Line("Far", 3, 9, null) with { Blup = null }, Line("Lone", 1, 9, 4)] };
        Assert.Equal("cannot say: they share no yard and season", LineWords.CannotSay(comparison, comparison.Pairs[0]));
        Assert.Null(LineWords.Interval(comparison, comparison.Pairs[0]));
        Assert.Equal("cannot say: they share no yard and season", LineWords.InShort(comparison));
        Assert.Equal(["Sloe", "Ember", "Brindle"], LineFigure.Of(comparison).Select(figure => figure.Row.Line));
        Assert.StartsWith("shares no yard and season", LineFigure.WhyApart(comparison, comparison.Lines[3])!, StringComparison.Ordinal);
        Assert.StartsWith("has one mother only", LineFigure.WhyApart(comparison, comparison.Lines[4])!, StringComparison.Ordinal);
    }

    /// <summary>Of mothers nothing is claimed; what is drawn is the prediction, 2 ± 1.96 × 1.5.</summary>
    [Fact]
    public void Of_mothers_predictions_are_drawn()
    {
        Assert.Equal("9 colonies", LineWords.Counts(Line("K-12", 0, 9, null), ComparedBy.Maker));
        Assert.Equal("2 mothers, 9 colonies", LineWords.Counts(Line("K-12", 2, 9, null), ComparedBy.Maker));
        var comparison = Made(Trait.Honey) with { By = ComparedBy.Mother, Lines = [Line("M1", 1, 9, null) with { Blup = 2, BlupError = 1.5m, Reliability = .4m }, Line("M2", 1, 9, null) with { Blup = -2 }] };
        Assert.Equal((2m, -.94m, 4.94m), LineFigure.Of(comparison)[0] is var figure ? (figure.Value, Math.Round(figure.Lower, 2), Math.Round(figure.Upper, 2)) : default);
        Assert.Equal("nothing is claimed of mothers; predictions are shown", LineWords.InShort(comparison));
    }

    [Theory]
    [InlineData(LineBars.Narrow)]
    [InlineData(LineBars.Broad)]
    public void The_picture_puts_each_line_where_its_figure_is(double width)
    {
        var figures = LineFigure.Of(Made(Trait.Honey));
        var bars = new LineBars(Trait.Honey, ComparedBy.Line, figures, width);
        Assert.Equal(width / 2, bars.X(0m), 6);
        Assert.Equal(bars.Right, bars.X(100m), 6);
        Assert.True(bars.IsBeyond(100m) && figures.All(figure => !bars.IsBeyond(figure.Lower) && !bars.IsBeyond(figure.Upper)));
        foreach (var placed in bars.Rows)
        {
            // As far from the middle as its figure is from the mean.
            Assert.Equal((double)placed.Figure.Value / bars.Most, (bars.X(placed.Figure.Value) - (width / 2)) / ((bars.Right - LineBars.Left) / 2), 6);
            Assert.Equal($"{TraitWords.Signed(Trait.Honey, placed.Figure.Value)} ({TraitWords.Interval(Trait.Honey, placed.Figure.Lower, placed.Figure.Upper)})", placed.Number.Said);
            Assert.Equal($"{placed.Figure.Row.Mothers} mothers, {placed.Figure.Row.Colonies} colonies", placed.Counts.Said);
        }

        Assert.Equal(["Sloe", "Ember", "Brindle"], bars.Rows.Select(placed => placed.Name[0].Said));
        Assert.Equal("+5.0 (2.0 to 8.0)", bars.Rows[0].Number.Said);
        Assert.Equal(("wanted: more honey →", "end"), (bars.WantedAt.Said, bars.WantedAt.Anchor));
        Assert.Equal(("← wanted: fewer mites", "start"), new LineBars(Trait.MitesLast, ComparedBy.Line, figures, width).WantedAt is var at ? (at.Said, at.Anchor) : default);
        Assert.Contains(bars.Ticks, tick => tick.Said == "mean" && Math.Abs(tick.X - (width / 2)) < 1e-6);
        Assert.All(bars.Ticks, tick => Assert.InRange(tick.X, LineBars.Left, bars.Right));
    }

    /// <summary>One line of two mothers may have an interval as wide as the sea: the others are not drawn as dots for that.</summary>
    [Fact]
    public void An_interval_beyond_all_others_goes_on_beyond_the_scale()
    {
        var made = Made(Trait.Honey);
        var figures = LineFigure.Of(made with { Lines = [.. made.Lines, Line("Wide", 2, 9, 1) with { Lower = -400, Upper = 402 }] });
        var bars = new LineBars(Trait.Honey, ComparedBy.Line, figures, LineBars.Narrow);
        Assert.True(bars.IsBeyond(402m) && bars.Most < 30);
        Assert.All(figures, figure => Assert.False(bars.IsBeyond(figure.Value)));
    }

    [Theory]
    [InlineData(Trait.Honey, -.04, "0.0")]
    [InlineData(Trait.Honey, -2, "−2.0")]
    [InlineData(Trait.Honey, 2, "+2.0")]
    [InlineData(Trait.MitesFirst, 0, "× 1.00")]
    [InlineData(Trait.MitesFirst, 12, "× 1000 and more")]
    [InlineData(Trait.WinterLosses, .1234, "× 1.13")]
    public void A_difference_has_its_sign(Trait trait, double difference, string said) => Assert.Equal(said, TraitWords.Signed(trait, (decimal)difference));

    /// <summary>e^0.9 − 0.5 = 1.96 mites per 100.</summary>
    [Theory]
    [InlineData(Trait.MitesFirst, .9, "1.96 per 100")]
    [InlineData(Trait.MitesFirst, -.693147, "0.00 per 100")]
    [InlineData(Trait.Honey, 31.54, "31.5 kg")]
    [InlineData(Trait.WinterLosses, .125, "12.5 %")]
    public void A_mean_is_told_in_the_unit_it_was_counted_in(Trait trait, double mean, string said) => Assert.Equal(said, TraitWords.Mean(trait, (decimal)mean));

    private static Comparison Made(Trait trait, params LinePairRow[] pairs) =>
        new(trait, ComparedBy.Line, [Line("Sloe", 6, 31, 5), Line("Ember", 4, 20, .5m), Line("Brindle", 5, 24, -5.5m)], pairs, [], []);

    private static LineRow Line(string name, int mothers, int colonies, decimal? difference) => new()
    {
        Trait = Trait.Honey, Line = name, Mothers = mothers, Colonies = colonies, Records = colonies, Yards = 2, RawMean = 20, Difference = difference, StandardError = 1.5m, Freedom = 20,
        Lower = difference - 3, Upper = difference + 3, Blup = difference / 2 ?? 0, BlupError = 1, Reliability = .5m, Cautions = [], Entries = [],
    };

    private static LinePairRow Pair(Trait trait, string line, string other, decimal? difference, decimal? error, Verdict verdict) => new()
    {
        Trait = trait, Line = line, Other = other, Difference = difference, StandardError = error, Freedom = 20, P = verdict == Verdict.Differ ? .01m : .5m, Verdict = verdict,
        Why = verdict == Verdict.Differ ? null : Chance, Entries = [],
    };
}
