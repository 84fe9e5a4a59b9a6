using ColonyLineage.Core.Tests.Projections.Sums.Mixed;
using ColonyLineage.Projections.Relationship;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Relationship;

/// <summary>Diploid drones and spotty brood.</summary>
public class SexAlleleTests
{
    private const string Source = "Golden/pedigree/SOURCE.md";

    [Fact]
    public void Unrelated_drones()
    {
        var table = new Table("pedigree/csd_random_mating.csv");
        Assert.Equal(45, table.Count);
        for (var row = 0; row < table.Count; row++)
        {
            var (k, n) = (table.Numbers("k")[row], (int)table.Numbers("n")[row]);
            Near(table.Numbers("mean")[row], SexAlleles.Mean(k), 1e-12, Source);
            Near(table.Numbers("sd")[row], SexAlleles.Deviation(k, n), 1e-12, Source);
            Near(table.Numbers("P0")[row], 1 - SexAlleles.AtLeast(1e-9, k, n), 1e-10, Source);
            foreach (var (column, share) in new[] { ("P_ge_10", .10), ("P_ge_15", .15), ("P_ge_25", .25) }) Near(table.Numbers(column)[row], SexAlleles.AtLeast(share, k, n), 1e-10, $"{Source}, k {k}, n {n}");
        }
    }

    [Theory]
    [InlineData(6, .1667, .074536, .70086)]
    [InlineData(10, .1, .063246, .32220)]
    [InlineData(20, .05, .047434, .07019)]
    public void Ten_drones(int alleles, double mean, double deviation, double atLeast15)
    {
        Near(mean, SexAlleles.Mean(alleles), 5e-5, "check values");
        Near(deviation, SexAlleles.Deviation(alleles, 10), 5e-7, "check values");
        Near(atLeast15, SexAlleles.AtLeast(.15, alleles, 10), 5e-6, "check values");
    }

    // Woyke, Journal of Apicultural Research 1976 (year from memory): 36 % matched matings, 82.0 % expected to survive; six alleles, 83.3 %. Woyke 1963: sib-mated, about 50 %.
    [Fact]
    public void Woyke()
    {
        Near(.820, 1 - (.36 / 2), 5e-4, "Woyke 1976");
        Near(.833, 1 - SexAlleles.Mean(6), 5e-4, "Woyke 1976");
        Near(.5, 1 - SexAlleles.Related(.5, 6), 1e-12, "Woyke 1963, own sons: every drone matches");
    }

    [Theory]
    [InlineData(.05, 14.5, .3765)]
    [InlineData(.10, 19, .8125)]
    [InlineData(.25, 32.5, .9999)]
    [InlineData(.5, 55, 1)]
    public void Empty_cells_of_a_hundred(double diploid, double empty, double alarmAt16)
    {
        Near(empty, 100 * SexAlleles.Empty(diploid), 1e-9, "check values");
        Near(alarmAt16, SexAlleles.ChanceOfEmpty(16, 100, diploid), 1.01e-4 / 2, "R pbinom, check values");
    }

    // By hand: brothers carry one of the queen's mother's genes, so half of them match for sure: .25 + .5 / k.
    [Theory]
    [InlineData(0, 10, .1)]
    [InlineData(.25, 10, .3)]
    [InlineData(.5, 10, .5)]
    [InlineData(.75, 10, .5)]
    public void Related_drones(double inbreeding, int alleles, double expected) => Near(expected, SexAlleles.Related(inbreeding, alleles), 1e-12, "by hand");

    [Fact]
    public void Two_alleles_at_least() => Assert.Throws<ArgumentOutOfRangeException>(() => SexAlleles.Mean(1));
}
