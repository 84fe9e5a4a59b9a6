using MathNet.Numerics.Distributions;

namespace ColonyLineage.Projections.Relationship;

/// <summary>
/// The share of fertilised eggs that become diploid drones, which the workers take away: a queen has two unlike sex alleles, and half of what she has
/// by a drone that carries one of them is diploid drones. With n drones and k alleles, all as common (or an effective number of them), the drones that match are binomial (n, 2/k).
/// </summary>
public static class SexAlleles
{
    /// <summary>A share of empty cells that other causes make of themselves: eggs that do not hatch, cleaning. From memory; a setting.</summary>
    public const double OtherCauses = .10;

    /// <summary>The share expected of unrelated drones: 1/k.</summary>
    public static double Mean(double alleles) => Matching(alleles) / 2;

    /// <summary>Its standard deviation between queens: ½ √((2/k)(1 − 2/k)/n).</summary>
    public static double Deviation(double alleles, int drones) => Spread(Matching(alleles), drones);

    /// <summary>The chance that it is at least so much.</summary>
    public static double AtLeast(double share, double alleles, int drones)
    {
        // So many drones must match at least; a half of a thousandth of a drone is what the division lost.
        var least = (int)Math.Ceiling((2 * drones * share) - 1e-9);
        return least <= 0 ? 1 : least > drones ? 0 : 1 - Binomial.CDF(Matching(alleles), drones, least - 1);
    }

    /// <summary>
    /// The share expected where drones are related to the queen: F of the brood by descent, and chance for the rest. A drone has a copy of one of her two genes with 2F;
    /// at this place she is never homozygous, so it is never more than a half.
    /// </summary>
    /// <param name="inbreeding">F of the brood, 0 to 1.</param>
    public static double Related(double inbreeding, double alleles) => Math.Min(.5, inbreeding + (Math.Max(0, 1 - (2 * inbreeding)) * Mean(alleles)));

    /// <summary>Standard deviation of the same between queens, at least: drones of one producer are more alike than that.</summary>
    public static double RelatedDeviation(double inbreeding, double alleles, int drones) => Spread(2 * Related(inbreeding, alleles), drones);

    /// <summary>The share of empty cells in sealed brood: 1 − (1 − e)(1 − d).</summary>
    public static double Empty(double diploid, double otherCauses = OtherCauses) => 1 - ((1 - otherCauses) * (1 - diploid));

    /// <summary>The chance that so many or more of some cells are empty.</summary>
    public static double ChanceOfEmpty(int empty, int cells, double diploid, double otherCauses = OtherCauses) =>
        empty <= 0 ? 1 : 1 - Binomial.CDF(Empty(diploid, otherCauses), cells, empty - 1);

    private static double Matching(double alleles)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(alleles, 2);
        return 2.0 / alleles;
    }

    private static double Spread(double matching, int drones) => Math.Sqrt(matching * (1 - matching) / drones) / 2;
}
