namespace ColonyLineage.Projections.Relationship;

/// <summary>A bee of a pedigree in which every drone is recorded.</summary>
/// <param name="Drone">A drone has no father.</param>
/// <param name="Mother">Its place in the list; null where unknown.</param>
public sealed record RecordedBee(string Id, bool Drone, int? Mother, int? Father);

/// <summary>Coancestry where every drone is recorded, as after instrumental insemination or in textbooks.</summary>
public static class DronePedigree
{
    /// <summary>θ of all with all. A drone: θ(b,x) = θ(m,x), θ(b,b) = 1. A female: θ(i,x) = ½ [θ(m,x) + θ(d,x)], θ(i,i) = ½ (1 + θ(m,d)).</summary>
    /// <param name="bees">Parents before offspring.</param>
    public static double[,] Table(IReadOnlyList<RecordedBee> bees)
    {
        var table = new double[bees.Count, bees.Count];
        for (var i = 0; i < bees.Count; i++)
        {
            var (mother, father) = (bees[i].Mother, bees[i].Father);
            if (mother >= i || father >= i) throw new ArgumentException($"{bees[i].Id} stands before a parent.", nameof(bees));
            for (var x = 0; x < i; x++)
            {
                var (by, with) = (mother is { } m ? table[m, x] : 0, father is { } d ? table[d, x] : 0);
                table[i, x] = table[x, i] = bees[i].Drone ? by : (by + with) / 2;
            }

            table[i, i] = bees[i].Drone ? 1 : (1 + (mother is { } queen && father is { } drone ? table[queen, drone] : 0)) / 2;
        }

        return table;
    }
}
