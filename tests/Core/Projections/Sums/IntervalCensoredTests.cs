using ColonyLineage.Projections.Sums;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums;

/// <summary>Ends between two visits, against Golden/interval-censoring (see its SOURCE.md).</summary>
public class IntervalCensoredTests
{
    private const string Source = "Golden/interval-censoring/SOURCE.md";

    [Theory]
    [InlineData("bcos94.csv", 1, "bcos94_treat1_turnbull.csv", -58.060022)]
    [InlineData("bcos94.csv", 2, "bcos94_treat2_turnbull.csv", -65.636965)]
    [InlineData("queens_interval.csv", 0, "queens_interval_turnbull.csv", -22.576614)]
    public void Turnbull(string data, int group, string expected, double logLikelihood)
    {
        var estimate = IntervalCensored.Turnbull([.. Rows($"interval-censoring/{data}").Where(row => group == 0 || row[0] == group).Select(row => new Between(row[1], row[2]))]);
        var golden = Rows($"interval-censoring/{expected}");
        // An infinite stretch has the last end seen on its left in the table as here.
        Assert.Equal(golden.Select(row => (row[0], row[1])), estimate.Stretches.Select(stretch => (stretch.After, stretch.UpTo)));
        foreach (var (row, stretch) in golden.Zip(estimate.Stretches))
        {
            Near(row[2], stretch.Mass, 1e-7, Source);
            Near(row[4], stretch.Gradient, 1e-6, Source);
        }

        Near(logLikelihood, estimate.LogLikelihood, 1e-6, Source);
        Assert.True(estimate.Stretches.Max(stretch => stretch.Gradient) <= 1 + 1e-9);
        Near(1, estimate.Stretches.Sum(stretch => stretch.Mass), 1e-12, "masses");
    }

    // By the fractions of the constructed queens: a third is gone by day 28, the half within (45, 60].
    [Fact]
    public void What_lives_on_is_known_between_the_stretches_only()
    {
        var estimate = IntervalCensored.Turnbull([.. Rows("interval-censoring/queens_interval.csv").Select(row => new Between(row[1], row[2]))]);
        Near(2 / 3.0, estimate.ShareAfter(28), 1e-7, Source);
        Near(2 / 3.0, estimate.ShareAfter(40), 1e-7, Source);
        Assert.Null(estimate.ShareAfter(50));
        Assert.Equal((45, 60), (estimate.Median!.After, estimate.Median.UpTo));
    }

    // By hand: with exact ends, as intervals of a day, it is the product-limit estimate without any lost from sight: a third each.
    [Fact]
    public void Ends_known_to_the_day()
    {
        var estimate = IntervalCensored.Turnbull([new(4, 5), new(8, 9), new(6, 7)]);
        Assert.Equal([(4, 5), (6, 7), (8, 9)], estimate.Stretches.Select(stretch => (stretch.After, stretch.UpTo)));
        Assert.All(estimate.Stretches, stretch => Near(1 / 3.0, stretch.Mass, 1e-12, "arithmetic"));
        Assert.Throws<ArgumentException>(() => IntervalCensored.Turnbull([new(5, 5)]));
        Assert.Empty(IntervalCensored.Turnbull([]).Stretches);
    }

    // Many overlapping intervals: no golden values, but the conditions themselves prove the estimate.
    [Fact]
    public void Many_intervals_meet_the_conditions()
    {
        var ends = Enumerable.Range(0, 3000).Select(i => (After: i * 7919 % 997, Wide: 1 + (i * 104729 % 83), Never: i % 7 == 0))
            .Select(end => new Between(end.After, end.Never ? double.PositiveInfinity : end.After + end.Wide)).ToList();
        var estimate = IntervalCensored.Turnbull(ends);
        Assert.True(estimate.Stretches.Count > 100, $"{estimate.Stretches.Count} stretches");
        Assert.True(estimate.Stretches.Max(stretch => stretch.Gradient) <= 1 + 1e-9);
        Assert.All(estimate.Stretches.Where(stretch => stretch.Mass > 0), stretch => Near(1, stretch.Gradient, 1e-9, "Karush, Kuhn and Tucker"));
    }
}
