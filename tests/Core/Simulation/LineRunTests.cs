using ColonyLineage.Simulation;

namespace ColonyLineage.Core.Tests.Simulation;

/// <summary>Invented lines with known effects, a few of the runs that <c>tools/simulate --lines</c> makes by the thousand. Seed 1.</summary>
public class LineRunTests
{
    [Fact]
    public void Intervals_hold_the_truth_and_equal_lines_are_rarely_told_apart()
    {
        var tally = LineRuns.Run(60, 1, 2);
        Assert.True(tally.Coverage is > .92 and < .99, $"{tally.Coverage:P1} of {tally.Intervals} intervals, seed 1");
        Assert.True(tally.FalseShare < .12, $"{tally.FalseShare:P1} of {tally.Runs} runs with equal lines, seed 1");
        Assert.True(tally.TrueClaims > 10 * tally.WrongWay, $"{tally.TrueClaims} rightly, {tally.WrongWay} the wrong way round, seed 1");
    }
}
