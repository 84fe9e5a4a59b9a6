using ColonyLineage.Core.Tests.Projections.Sums.Mixed;
using ColonyLineage.Projections.Relationship;
using ColonyLineage.Projections.Sums.Mixed;
using MathNet.Numerics.LinearAlgebra;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Relationship;

/// <summary>Coancestry, inbreeding and relatedness, against Golden/pedigree (see its SOURCE.md), to 1e-12.</summary>
public class RelationshipTests
{
    private const double Within = 1e-12;
    private const string Source = "Golden/pedigree/SOURCE.md";

    [Fact]
    public void Textbook_cases_with_recorded_drones()
    {
        var bees = PedigreeGolden.WithDrones();
        var here = DronePedigree.Table(bees);
        var table = new Table("pedigree/pedA_theta.csv");
        for (var row = 0; row < bees.Count; row++)
            for (var column = 0; column < bees.Count; column++) Near(table.Numbers(bees[column].Id)[row], here[row, column], Within, Source);
        // F = 2 θ(i,i) − 1.
        Near(.25, (2 * here[9, 9]) - 1, Within, "F of a queen and her brother's daughter");
        Near(.3125, (2 * here[11, 11]) - 1, Within, Source);
        Near(.46875, here[9, 11], Within, Source);
    }

    [Fact]
    public void Which_relatedness_a_number_is()
    {
        var bees = PedigreeGolden.WithDrones();
        var here = DronePedigree.Table(bees);
        var table = new Table("pedigree/pedA_relatedness.csv");
        int At(string id) => bees.ToList().FindIndex(bee => bee.Id == id);
        for (var row = 0; row < table.Count; row++)
        {
            var (actor, recipient) = (At(table.Texts("actor")[row]), At(table.Texts("recipient")[row]));
            var regression = Relatedness.Regression(here[actor, recipient], here[actor, actor]);
            Near(table.Numbers("theta")[row], here[actor, recipient], Within, Source);
            Near(table.Numbers("A")[row], Relatedness.Additive(here[actor, recipient]), Within, Source);
            Near(table.Numbers("regression")[row], regression, Within, Source);
            Near(table.Numbers("lifeforlife")[row], Relatedness.LifeForLife(regression, bees[actor].Drone, bees[recipient].Drone), Within, Source);
        }
    }

    [Theory]
    [InlineData(DroneShares.Equal, "pedigree/pedE_theta_expected.csv", .4427083333)]
    [InlineData(DroneShares.AtRandom, "pedigree/pedE_theta_expected_random_drones.csv", .4537760417)]
    public void Queens_with_matings(DroneShares shares, string file, double sisters)
    {
        var (pedigree, names) = PedigreeGolden.WithMatings(shares);
        var (table, filled) = (new Table(file), pedigree.Table());
        for (var row = 0; row < names.Length; row++)
            for (var column = 0; column < names.Length; column++)
            {
                var expected = table.Numbers(names[column])[row];
                Near(expected, filled[row, column], Within, Source);
                Near(expected, pedigree.Coancestry(row, column), Within, Source);
            }

        Near(.1458333333, pedigree.Inbreeding(6), 1e-10, "F of Q4");
        Near(.2916666667, Relatedness.Additive(pedigree.Coancestry(2, 3)), 1e-10, "A of Q1 and Q2");
        Near(.6708333333, Relatedness.Additive(pedigree.Coancestry(6, 7)), 1e-10, "A of Q4 and Q5");
        Near(sisters, Relatedness.Additive(pedigree.Coancestry(8, 9)), 1e-10, "A of Q6 and Q7");
    }

    [Fact]
    public void Blup_with_relationship()
    {
        var (pedigree, names) = PedigreeGolden.WithMatings();
        var table = new Table("pedigree/pedE_blup.csv");
        var filled = pedigree.Table();
        var a = Matrix<double>.Build.Dense(names.Length, names.Length, (r, c) => Relatedness.Additive(filled[r, c]));
        var recorded = Enumerable.Range(0, names.Length).Where(i => !double.IsNaN(table.Numbers("y")[i])).ToArray();
        var effect = new RandomEffect("queen", names, recorded, a);
        var fit = new MixedModel([.. recorded.Select(i => table.Numbers("y")[i])], FixedPart.Mean(recorded.Length), [effect]).At([10], 30);
        Near(36.775760, fit.Fixed()[0].Estimate, 5e-7, Source);
        foreach (var (queen, i) in fit.Predictions(0).Select((queen, i) => (queen, i)))
        {
            Assert.Equal(table.Texts("queen")[i], queen.Level);
            Near(table.Numbers("blup")[i], queen.Blup, 1e-10, Source);
            Near(table.Numbers("sePEV")[i], queen.StandardError, 1e-10, Source);
            Near(table.Numbers("reliability")[i], queen.Reliability, 1e-10, Source);
        }
    }

    // A drone's mother is the queen he is a copy of half of: a brother carries the genes of the queen's mother.
    [Fact]
    public void Queens_bred_back_again_and_again()
    {
        var bees = new List<RecordedBee> { new("Q0", false, null, null), new("D0", true, null, null), new("Q1", false, 0, 1) };
        var inbreeding = new List<double> { 0 };
        for (var generation = 0; generation < 5; generation++)
        {
            // The queen's brother is her mother's son.
            var queen = bees.Count - 1;
            bees.Add(new RecordedBee($"b{generation}", true, bees[queen].Mother, null));
            bees.Add(new RecordedBee($"q{generation}", false, queen, bees.Count - 1));
            inbreeding.Add((2 * DronePedigree.Table(bees)[bees.Count - 1, bees.Count - 1]) - 1);
        }

        foreach (var (expected, here) in new[] { 0, .25, .375, .5, .59375, .671875 }.Zip(inbreeding)) Near(expected, here, Within, Source);

        var pedigree = new QueenPedigree();
        var own = pedigree.AddFounder();
        foreach (var expected in new[] { .5, .75, .875 })
        {
            var mating = pedigree.AddMating(own, pedigree.AddDrones([own]), 1);
            Near(expected, pedigree.BroodInbreeding(mating), Within, "queen with her own sons, again and again");
            own = pedigree.AddDaughter(mating);
        }
    }

    /// <summary>What a planned mating would give. Drones of a super sister: recorded drones; a half sister, the mother's super sister: likewise.</summary>
    [Theory]
    [InlineData("own sons", .5)]
    [InlineData("brothers", .25)]
    [InlineData("drones of a super sister", .375)]
    [InlineData("drones of a half sister", .125)]
    [InlineData("drones of the mother's super sister", .1875)]
    public void Inbreeding_of_brood(string mates, double expected)
    {
        RecordedBee[] bees =
        [
            new("G", false, null, null), new("g", true, null, null), new("M", false, 0, 1), new("A", false, 0, 1), new("d", true, null, null), new("e", true, null, null),
            new("Q", false, 2, 4), new("S", false, 2, 4), new("H", false, 2, 5),
            new("own sons", true, 6, null), new("brothers", true, 2, null), new("drones of a super sister", true, 7, null), new("drones of a half sister", true, 8, null), new("drones of the mother's super sister", true, 3, null),
        ];
        Near(expected, DronePedigree.Table(bees)[6, Array.FindIndex(bees, bee => bee.Id == mates)], Within, Source);
    }

    [Fact]
    public void Workers_of_a_colony()
    {
        var table = new Table("pedigree/worker_relatedness_by_n.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var n = table.Numbers("n")[row];
            if (double.IsInfinity(n)) continue;
            var pedigree = new QueenPedigree();
            var (queen, other) = (pedigree.AddFounder(), pedigree.AddFounder());
            Near(table.Numbers("unrelated_drones")[row], 2 * pedigree.BetweenBrood(pedigree.AddMating(queen, QueenPedigree.Open, n)), Within, Source);
            Near(table.Numbers("one_DPQ")[row], 2 * pedigree.BetweenBrood(pedigree.AddMating(queen, pedigree.AddDrones([other]), n)), Within, Source);
            // Super sisters are the daughters of a mating with one drone.
            var sisters = pedigree.AddMating(other, QueenPedigree.Open, 1);
            int[] producers = [.. Enumerable.Range(0, (int)n).Select(_ => pedigree.AddDaughter(sisters))];
            Near(table.Numbers("supersister_DPQs_each_one_drone")[row], 2 * pedigree.BetweenBrood(pedigree.AddMating(queen, pedigree.AddDrones(producers), n)), Within, Source);
        }

        foreach (var (n, expected) in new[] { (1, .75), (2, .5), (5, .35), (10, .3), (12, .291667), (15, .283333), (20, .275) }) Near(expected, .25 + (.5 / n), 5e-7, "check values");
        foreach (var (n, expected) in new[] { (2, .625), (10, .525), (12, .520833) }) Near(expected, .5 + (.25 / n), 5e-7, "check values");
    }

    [Fact]
    public void Effective_matings()
    {
        int[] patrilines = [12, 8, 7, 5, 4, 3, 3, 2, 2, 1, 1];
        Near(7.067485, Relatedness.EffectiveMatings(patrilines), 5e-7, "arithmetic");
        Near(8.115108, Relatedness.EffectiveMatingsByPamilo(patrilines), 5e-7, "Pamilo 1993, formula from memory");
        Near(8.064241, Relatedness.EffectiveMatingsByNielsen(patrilines), 5e-7, "Nielsen et al. 2003, formula from memory");
    }

    [Fact]
    public void Sisters_have_names()
    {
        Assert.Equal("super sisters", Relatedness.Sisters(true, true, true));
        Assert.Equal("full sisters", Relatedness.Sisters(true, true, false));
        Assert.Equal("half sisters by the mother", Relatedness.Sisters(true, false, false));
        Assert.Equal("half sisters by the drone", Relatedness.Sisters(false, false, true));
        Assert.Equal("no sisters", Relatedness.Sisters(false, false, false));
    }

    /// <summary>The trace against the table, which share no step: random pedigrees, repeated with the seed that is printed.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void The_trace_agrees_with_the_table(int seed)
    {
        var random = new Random(seed);
        var pedigree = new QueenPedigree(seed % 2 == 0 ? DroneShares.Equal : DroneShares.AtRandom);
        for (var i = 0; i < 6; i++) pedigree.AddFounder();
        var matings = new List<int>();
        for (var i = 0; i < 40; i++)
        {
            int[] drones = [.. Enumerable.Range(0, random.Next(5)).Select(_ => random.Next(pedigree.Queens)).Distinct()];
            var mating = pedigree.AddMating(random.Next(pedigree.Queens), pedigree.AddDrones(drones), Math.Max(drones.Length, 1) + random.Next(10));
            matings.Add(mating);
            for (var daughter = random.Next(1, 4); daughter > 0; daughter--) pedigree.AddDaughter(mating);
        }

        var table = pedigree.Table();
        for (var a = 0; a < pedigree.Queens; a++)
            for (var b = 0; b < pedigree.Queens; b++) Near(table[a, b], pedigree.Coancestry(a, b), 1e-12, $"the table, seed {seed}, queens {a} and {b}");
        // Daughters that come later are as those before them; broods likewise.
        foreach (var mating in matings)
        {
            var (one, other) = (pedigree.AddDaughter(mating), pedigree.AddDaughter(matings[random.Next(matings.Count)]));
            var grown = pedigree.Coancestry(one, other);
            if (pedigree.MatingOf(one) is { } first && pedigree.MatingOf(other) is { } second) Near(grown, pedigree.BetweenBroods(first, second), 1e-12, $"seed {seed}");
        }
    }
}
