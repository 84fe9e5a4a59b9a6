using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Core.Tests.Projections.Sums;

/// <summary>Intervals of proportions and sample sizes, against published tables.</summary>
public class ProportionTests
{
    private const string Newcombe = "Newcombe 1998, Statistics in Medicine 17:857, table";

    [Theory(DisplayName = Newcombe)]
    [InlineData(81, 263, .2553, .3662, .2527, .3676)]
    [InlineData(15, 148, .0624, .1605, .0578, .1617)]
    [InlineData(0, 20, 0, .1611, 0, .1684)]
    [InlineData(1, 29, .0061, .1718, .0009, .1776)]
    public void Score_and_exact_intervals(int hits, int of, double low, double high, double exactLow, double exactHigh)
    {
        var (wilson, exact) = (Proportion.Wilson(hits, of), Proportion.ClopperPearson(hits, of));
        Assert.Equal((low, high), (Math.Round(wilson.Lower, 4), Math.Round(wilson.Upper, 4)));
        Assert.Equal((exactLow, exactHigh), (Math.Round(exact.Lower, 4), Math.Round(exact.Upper, 4)));
    }

    // The formula of Newcombe 1998, worked out in R 4.2.2.
    [Theory(DisplayName = "Wilson's interval of mites in 300 bees, percent")]
    [InlineData(0, 0, 1.26)]
    [InlineData(3, .34, 2.90)]
    [InlineData(6, .92, 4.29)]
    [InlineData(9, 1.59, 5.60)]
    [InlineData(15, 3.05, 8.08)]
    public void Of_300_bees(int mites, double low, double high)
    {
        var (lower, upper) = Proportion.Wilson(mites, 300);
        Assert.Equal((low, high), (Math.Round(100 * lower, 2), Math.Round(100 * upper, 2)));
    }

    // Computed in R 4.2.2: one-sided at 95 % is the upper end of the two-sided interval at 90 %.
    [Fact]
    public void No_mites_in_300_bees_is_not_free_of_mites() => Assert.Equal(.993608, Math.Round(100 * Proportion.ClopperPearson(0, 300, .90).Upper, 6));

    // Gray et al. 2020, Journal of Apicultural Research 59:744: 16.7 % of 738,233; Wilson's interval is narrower than the published one, which knows that colonies of one owner are not independent.
    [Fact]
    public void Winter_losses_of_a_survey()
    {
        const int Lost = 29_912 + 79_146 + 13_895;
        Assert.Equal([.041, .107, .019, .167], new[] { 29_912, 79_146, 13_895, Lost }.Select(lost => Math.Round(LossRate.Overall([new LostOf(lost, 738_233)]), 3)));
        var (lower, upper) = Proportion.Wilson(Lost, 738_233);
        Assert.Equal((16.57, 16.74), (Math.Round(100 * lower, 2), Math.Round(100 * upper, 2)));
    }

    [Theory]
    [InlineData(-1, 10, .95)]
    [InlineData(11, 10, .95)]
    [InlineData(0, 0, .95)]
    [InlineData(1, 10, 1)]
    public void Nonsense_is_refused(int hits, int of, double level)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Proportion.Wilson(hits, of, level));
        Assert.Throws<ArgumentOutOfRangeException>(() => Proportion.ClopperPearson(hits, of, level));
    }

    // American Bee Journal, April 2020 ('36 %'): a colony at 1 % shows no mite in 100 bees; and in 300.
    [Theory]
    [InlineData(.01, 100, .366)]
    [InlineData(.01, 300, .049)]
    [InlineData(.05, 20, .3585)] // BEEBOOK vol. I, Pirk et al. 2013, 2.2: 64.15 % see one; the printed '65 %' is loose.
    [InlineData(.05, 30, .2146)]
    public void None_seen(double share, int seen, double chance) => Assert.Equal(chance, Detection.ChanceOfNone(share, seen), chance.ToString(System.Globalization.CultureInfo.InvariantCulture).Length - 2);

    [Theory(DisplayName = "BEEBOOK vol. I, statistics, Pirk et al. 2013, J. Apic. Res. 52(4), 2.2")]
    [InlineData(.05, .95, 59)]
    [InlineData(.01, .99, 459)]
    public void Bees_needed(double share, double level, int needed) => Assert.Equal(needed, Detection.Needed(share, level));

    [Theory(DisplayName = "Cannon and Roe 1982, Livestock Disease Surveys, table 1 (the last row as printed, the others by the exact hypergeometric in R)")]
    [InlineData(100, 10, .95, 25)]
    [InlineData(100, 5, .95, 45)]
    [InlineData(100, 2, .95, 78)]
    [InlineData(100, 1, .95, 95)]
    [InlineData(500, 25, .95, 56)]
    [InlineData(500, 5, .95, 225)]
    [InlineData(1000, 50, .95, 57)]
    [InlineData(1000, 10, .95, 258)]
    [InlineData(1600, 16, .99, 399)]
    [InlineData(24, 12, .95, 4)]
    [InlineData(24, 6, .95, 9)]
    [InlineData(24, 5, .95, 10)]
    [InlineData(24, 4, .95, 12)]
    [InlineData(24, 3, .95, 15)]
    [InlineData(24, 2, .95, 19)]
    [InlineData(24, 1, .95, 23)]
    [InlineData(50, 3, .95, 31)] // 5 % of 50 is 2.5 colonies: rounded up,
    [InlineData(50, 2, .95, 39)] // or down. Whoever rounds says which.
    public void Colonies_needed_of_a_yard(int all, int affected, double level, int needed) => Assert.Equal(needed, Detection.NeededOf(all, affected, level));
}
