namespace ColonyLineage.Projections.Relationship;

/// <summary>What can be said of two bees from their coancestry θ. Which of these a number is has always to be said.</summary>
public static class Relatedness
{
    /// <summary>Additive relationship of two females, A = 2θ.</summary>
    public static double Additive(double coancestry) => 2 * coancestry;

    /// <summary>Regression relatedness R(actor → recipient) = θxy / θxx.</summary>
    public static double Regression(double coancestry, double actorWithSelf) => coancestry / actorWithSelf;

    /// <summary>Life-for-life relatedness: R × ploidy of the recipient / ploidy of the actor.</summary>
    /// <param name="recipientDrone">A drone is haploid.</param>
    public static double LifeForLife(double regression, bool actorDrone, bool recipientDrone) => regression * (recipientDrone ? 1 : 2) / (actorDrone ? 1 : 2);

    /// <summary>Super sisters share mother and father drone, full sisters mother and mating, half sisters only the one or the other.</summary>
    public static string Sisters(bool sameMother, bool sameMating, bool sameDrone) =>
        sameMother && sameDrone ? "super sisters"
        : sameMother && sameMating ? "full sisters"
        : sameMother ? "half sisters by the mother"
        : sameDrone ? "half sisters by the drone"
        : "no sisters";

    /// <summary>1/Σp², the drones that would give as many patrilines of one size.</summary>
    public static double EffectiveMatings(IReadOnlyList<int> patrilines) => 1 / SumOfSquares(patrilines);

    /// <summary>The same put right for a sample: (n − 1) / (n Σp² − 1). Pamilo 1993, Heredity 70:472 (formula from memory).</summary>
    public static double EffectiveMatingsByPamilo(IReadOnlyList<int> patrilines) => patrilines.Sum() is var n ? (n - 1) / ((n * SumOfSquares(patrilines)) - 1) : 0;

    /// <summary>(n − 1)² / ((n + 1)(n − 2) Σp² + 3 − n). Nielsen, Tarpy and Reeve 2003, Molecular Ecology 12:3157 (formula from memory).</summary>
    public static double EffectiveMatingsByNielsen(IReadOnlyList<int> patrilines)
    {
        double n = patrilines.Sum();
        return (n - 1) * (n - 1) / (((n + 1) * (n - 2) * SumOfSquares(patrilines)) + 3 - n);
    }

    private static double SumOfSquares(IReadOnlyList<int> patrilines)
    {
        double n = patrilines.Sum();
        return patrilines.Sum(workers => workers / n * (workers / n));
    }
}
