using ColonyLineage.Entries;
using ColonyLineage.Projections.Sums;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums;

/// <summary>Sugar and syrup, against published tables and arithmetic on them.</summary>
public class SugarTests
{
    // S for the table; above 50 % the polynomial is known to lie up to 0.0003 beside it.
    [Theory(DisplayName = "Density at 20 °C: NBS Circular 440, as in the CRC Handbook")]
    [InlineData(.10, 1.0381, 1e-4)]
    [InlineData(.20, 1.0810, 1e-4)]
    [InlineData(.30, 1.1270, 1e-4)]
    [InlineData(.40, 1.1765, 1e-4)]
    [InlineData(.50, 1.2296, 1e-4)]
    [InlineData(.60, 1.2865, 3e-4)]
    [InlineData(.70, 1.3472, 3e-4)]
    [InlineData(.45, 1.202540, 1e-4)] // These four: Korean Food Code 12.7, after NBS C440 and Plato.
    [InlineData(.48, 1.218643, 1e-4)]
    [InlineData(.50, 1.229567, 1e-4)]
    [InlineData(.52, 1.240641, 1e-4)]
    public void Density(double share, double expected, double within) => Near(expected, Sugar.Density(share), within, "NBS Circular 440");

    // C: the polynomial of Bubník et al. 1995, p. 164, worked out in R 4.2.2.
    [Theory]
    [InlineData(.6, 20, 1.28661)]
    [InlineData(.7, 20, 1.34748)]
    public void Density_by_the_polynomial(double share, double celsius, double expected) => Near(expected, Sugar.Density(share, celsius), 6e-6, "Bubník et al. 1995");

    // Kell 1975, Journal of Chemical and Engineering Data 20:97 (from memory).
    [Theory]
    [InlineData(0, .9998)]
    [InlineData(10, .9997)]
    [InlineData(40, .9922)]
    public void Water_alone(double celsius, double expected) => Near(expected, Sugar.Density(0, celsius), 5e-5, "Kell 1975");

    // S2, C: the table as quoted by Mohos 2010, Confectionery and Chocolate Engineering.
    [Fact]
    public void Solubility()
    {
        Near(.6709, Sugar.Soluble(20), 5e-5, "Mohos 2010");
        Near(203.9, 100 * Sugar.Soluble(20) / (1 - Sugar.Soluble(20)), .05, "Mohos 2010");
        Near(197.0, 100 * Sugar.Soluble(15) / (1 - Sugar.Soluble(15)), .05, "Mohos 2010");
        // 'About 17.2' is the straight line between the two rows.
        Near(17.2, Sugar.CrystallisesBelow(2 / 3.0), .1, "Mohos 2010, by interpolation");
        Near(20, Sugar.CrystallisesBelow(Sugar.Soluble(20)), 1e-9, "its own inverse");
        Assert.Null(Sugar.CrystallisesBelow(.5));
    }

    // C: the density table × 3.785411784 L.
    [Theory(DisplayName = "Pounds of sugar in a US gallon of syrup, and pounds of the gallon")]
    [InlineData(1, 2, 3.18, 9.54)]
    [InlineData(1, 1, 5.13, 10.26)]
    [InlineData(3, 2, 6.44, 10.74)]
    [InlineData(5, 3, 6.79, 10.86)]
    [InlineData(2, 1, 7.38, 11.07)]
    public void A_gallon_of_syrup(double sugar, double water, double pounds, double gallon)
    {
        var syrup = Syrup.Filling((double)new Quantity(1, "gal-us").InLitres()!, Syrup.ShareOf(sugar, water, PartsBy.Weight));
        var pound = (double)new Quantity(1, "lb").InKilograms()!;
        Near(pounds, syrup.Sugar / pound, .0051, "NBS Circular 440");
        Near(gallon, (syrup.Sugar + syrup.Water) / pound, .0051, "NBS Circular 440");
        Near((double)new Quantity(1, "gal-us").InLitres()!, syrup.Litres, 1e-9, "what was asked for");
    }

    // C: the same table.
    [Theory]
    [InlineData(8.33, 1.6235, true)]
    [InlineData(16.66, 2.257, true)]
    [InlineData(20, 2.5, false)] // 70.6 %, over the 67 % that dissolves at 20 °C; its volume is no row of the table.
    public void A_gallon_of_water_and_sugar_is_more_than_a_gallon(double pounds, double gallons, bool dissolves)
    {
        var syrup = Syrup.Of(new Quantity((decimal)pounds, "lb"), new Quantity(1, "gal-us"));
        if (dissolves) Near(gallons, syrup.Litres / 3.785411784, 5e-4, "NBS Circular 440");
        else Near(.706, syrup.Share, 5e-4, "20 / (20 + 8.33)");
        Assert.Equal(dissolves, syrup.Dissolves);
        Near(3.785411784, syrup.WaterLitres, 1e-9, "what was put in");
    }

    // By hand: 845 g of poured sugar to a litre of water of 998.2 g are 45.8 %, not 50 %.
    [Fact]
    public void By_volume_is_not_by_weight()
    {
        Near(.845 / (.845 + .9982), Syrup.ShareOf(1, 1, PartsBy.Volume), 1e-5, "arithmetic");
        Assert.Equal(.5, Syrup.ShareOf(1, 1, PartsBy.Weight));
        Assert.Throws<ArgumentOutOfRangeException>(() => Syrup.ShareOf(0, 0, PartsBy.Weight));
        Assert.Throws<ArgumentException>(() => Syrup.Of(new Quantity(1, "L"), new Quantity(1, "L")));
    }
}
