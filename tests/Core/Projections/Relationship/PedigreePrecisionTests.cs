using ColonyLineage.Core.Tests.Projections.Sums.Mixed;
using ColonyLineage.Projections.Relationship;
using ColonyLineage.Projections.Sums.Mixed;
using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Core.Tests.Projections.Relationship;

/// <summary>The inverse put together entry by entry against the inverse of it that a library works out: its part for the queens is the table of relationship.</summary>
public class PedigreePrecisionTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 30)];

    [Theory, MemberData(nameof(Seeds))]
    public void Its_inverse_is_the_relationship_of_the_queens(int seed)
    {
        var random = new Random(seed);
        var pedigree = Made(random, 12 + (seed % 20), seed % 2 == 0 ? DroneShares.Equal : DroneShares.AtRandom);
        var queens = Enumerable.Range(0, pedigree.Queens).Where(_ => random.Next(3) > 0).OrderBy(_ => random.Next()).ToList();
        var precision = PedigreePrecision.Of(pedigree, [.. queens.Select(queen => (int?)queen)]);
        var dense = Matrix<double>.Build.Dense(precision.Kinship.Count, precision.Kinship.Count);
        foreach (var (row, column, value) in precision.Entries) dense[row, column] = dense[column, row] = value;
        var (kinship, table) = (dense.Inverse(), pedigree.Table());
        for (var r = 0; r < precision.Kinship.Count; r++) Assert.Equal(kinship[r, r], precision.Kinship[r], 1e-9);
        for (var r = 0; r < queens.Count; r++)
            for (var c = 0; c < queens.Count; c++) Assert.Equal(2 * table[queens[r], queens[c]], kinship[r, c], 1e-9);

        Assert.Equal(Math.Log(dense.Determinant()), precision.LogDeterminant, 1e-6);
    }

    /// <summary>Broods are related as their daughters are; one that the pedigree does not know is related to nobody.</summary>
    [Theory, MemberData(nameof(Seeds))]
    public void Its_inverse_is_the_relationship_of_the_broods(int seed)
    {
        var random = new Random(seed);
        var pedigree = Made(random, 30, seed % 2 == 0 ? DroneShares.Equal : DroneShares.AtRandom);
        List<int?> matings = [.. Enumerable.Range(0, 30).Select(pedigree.MatingOf).OfType<int>().Distinct().OrderBy(_ => random.Next()).Select(mating => (int?)mating), null];
        var precision = PedigreePrecision.OfBroods(pedigree, matings);
        var dense = Matrix<double>.Build.Dense(precision.Kinship.Count, precision.Kinship.Count);
        foreach (var (row, column, value) in precision.Entries) dense[row, column] = dense[column, row] = value;
        var kinship = dense.Inverse();
        for (var r = 0; r < matings.Count; r++)
            for (var c = 0; c < matings.Count; c++)
                Assert.Equal(matings[r] is { } one && matings[c] is { } other ? 2 * pedigree.BetweenBroods(one, other) : r == c ? .5 : 0, kinship[r, c], 1e-9);
    }

    /// <summary>Some queens at random: founders, daughters of open matings and of drone producers, sisters, matings with one's own daughters.</summary>
    public static QueenPedigree Made(Random random, int queens, DroneShares shares)
    {
        var pedigree = new QueenPedigree(shares);
        var matings = new List<int>();
        for (var i = 0; i < queens; i++)
        {
            if (i < 3 || random.Next(6) == 0)
            {
                pedigree.AddFounder();
                continue;
            }

            if (matings.Count == 0 || random.Next(2) == 0)
            {
                int[] drones = [.. Enumerable.Range(0, random.Next(4)).Select(_ => random.Next(i)).Distinct()];
                matings.Add(pedigree.AddMating(random.Next(i), pedigree.AddDrones(drones), 1 + random.Next(15)));
            }

            pedigree.AddDaughter(matings[random.Next(matings.Count)]);
        }

        return pedigree;
    }
}
