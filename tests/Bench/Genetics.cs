using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Projections.Relationship;

namespace ColonyLineage.Bench;

/// <summary>Inbreeding of a million queens against a pass over the arrays that hold them; descendants in memory against the recursive SQL; lines compared against reading the cards.</summary>
internal static class Genetics
{
    private const int Seasons = 20;
    private const int OfASeason = 50_000;
    private const int Breeders = 100;
    private const int DroneSets = 5;
    private const int InASet = 8;

    /// <summary>F of every queen, and of a queen that comes later. No books are needed.</summary>
    public static async Task InbreedingAsync(int pairs)
    {
        Runner.Say($"Inbreeding of {Seasons * OfASeason} queens: {Seasons} seasons, {Breeders} breeders each, half of them mated to one of {DroneSets} sets of {InASet} drone producers ...");
        var queens = Make(7);
        QueenPedigree? last = null;
        var measured = await Pairs.RunAsync(pairs, _ => { last = Read(queens); return Task.CompletedTask; }, _ => { GC.KeepAlive(Pass(queens)); return Task.CompletedTask; }, warmUps: 2);
        Runner.Report("inbreeding of 1,000,000 queens in one pass / one pass over the same arrays", measured, 100);
        var mean = measured.Pairs.Select(pair => pair.Ours).Order().ElementAt(measured.Pairs.Count / 2);
        Runner.Say(FormattableString.Invariant($"  highest F {Enumerable.Range(0, last!.Queens).Max(last.Inbreeding):0.000}"));
        Runner.Report("queens a second, in millions", Seasons * OfASeason / mean / 1000, null);
        var watch = System.Diagnostics.Stopwatch.StartNew();
        for (var i = 0; i < 1000; i++) last.AddDaughter(last.AddMating(last.Queens - 1 - i, last.AddDrones([last.Queens - 2000, last.Queens - 3000])));
        Runner.Report("a new mating and its first daughter among 1,000,000 queens, microseconds", watch.Elapsed.TotalMilliseconds, null);
    }

    public static async Task DescendantsAsync(Against bench, Loaded loaded, string sql, Func<string, Task> query)
    {
        var graph = new Graph(await bench.Books.KeptRowsAsync(Questions.Lineage, default));
        Runner.Report(
            "descendants of a queen in memory / the recursive SQL",
            await Pairs.RunAsync(Math.Max(bench.Pairs, 15), _ => { GC.KeepAlive(graph.Descendants(loaded.Breeder.Value)); return Task.CompletedTask; }, _ => query(sql), warmUps: 3), .01);
    }

    /// <summary>All traits of the whole outfit against reading the cards of all its colonies, dead ones too.</summary>
    public static async Task LinesAsync(Against bench)
    {
        Runner.Say("Lines compared by all traits ...");
        var rows = await bench.Books.KeptRowsAsync(Questions.Traits, default);
        Runner.Say($"  {rows.Count} colonies in seasons");
        var measured = new Projections.LineComparison.Measured(rows, await bench.Books.KeptRowsAsync(Questions.Losses, default), await bench.Books.KeptRowsAsync(Questions.Reigns, default), new Projections.Cards.OutfitCard(), bench.Today);
        Runner.Report(
            "lines compared by all traits / reading the cards of all colonies",
            await Pairs.RunAsync(bench.Pairs, _ => { foreach (var trait in Enum.GetValues<Trait>()) GC.KeepAlive(Comparing.Of(Records.Of(measured, trait, ComparedBy.Line), trait, ComparedBy.Line)); return Task.CompletedTask; }, _ => CardsAsync(bench)), 100);
    }

    private static async Task CardsAsync(Against bench)
    {
        var colonies = (await bench.Books.KeptRowsAsync(Questions.Losses, default)).Select(row => row.ColonyId).ToList();
        var books = await bench.Books.OpenBooksAsync([Subject.Outfit, .. colonies.Select(colony => (Subject)colony)], default);
        GC.KeepAlive(colonies.Sum(colony => books.Colony(colony).Counted.Count));
    }

    /// <summary>A mother for every queen, and a set of drone producers for every mother: numbers into the same arrays.</summary>
    private static (int[] Mother, int[] Set, int[][] Sets) Make(int seed)
    {
        var random = new Random(seed);
        var (mother, set, sets) = (new int[Seasons * OfASeason], new int[Seasons * OfASeason], new List<int[]>());
        Array.Fill(mother, -1);
        Array.Fill(set, -1);
        for (var season = 1; season < Seasons; season++)
        {
            var before = (season - 1) * OfASeason;
            int Older() => before + random.Next(OfASeason);
            for (var i = 0; i < DroneSets; i++) sets.Add([.. Enumerable.Range(0, InASet).Select(_ => Older()).Distinct()]);
            var breeders = Enumerable.Range(0, Breeders).Select(_ => Older()).ToArray();
            foreach (var breeder in breeders) set[breeder] = random.Next(2) == 0 ? sets.Count - 1 - random.Next(DroneSets) : -1;
            for (var i = 0; i < OfASeason; i++) mother[(season * OfASeason) + i] = breeders[i % Breeders];
        }

        return (mother, set, [.. sets]);
    }

    private static QueenPedigree Read((int[] Mother, int[] Set, int[][] Sets) queens)
    {
        var pedigree = new QueenPedigree(capacity: queens.Mother.Length);
        var (matings, sets) = (new int[queens.Mother.Length], new Dictionary<int, int>());
        for (var queen = 0; queen < queens.Mother.Length; queen++)
        {
            var mother = queens.Mother[queen];
            if (mother < 0)
            {
                pedigree.AddFounder();
                continue;
            }

            var mating = matings[mother] - 1;
            if (mating < 0)
            {
                var drones = QueenPedigree.Open;
                if (queens.Set[mother] is >= 0 and var set && !sets.TryGetValue(set, out drones)) sets[set] = drones = pedigree.AddDrones(queens.Sets[set]);
                mating = pedigree.AddMating(mother, queens.Set[mother] >= 0 ? drones : QueenPedigree.Open);
                matings[mother] = mating + 1;
            }

            pedigree.AddDaughter(mating);
        }

        return pedigree;
    }

    private static long Pass((int[] Mother, int[] Set, int[][] Sets) queens)
    {
        long sum = 0;
        for (var queen = 0; queen < queens.Mother.Length; queen++) sum += queens.Mother[queen] ^ queens.Set[queen];
        return sum;
    }
}
