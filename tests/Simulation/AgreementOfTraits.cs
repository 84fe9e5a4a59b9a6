using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Simulation.Oracle;

namespace ColonyLineage.Simulation;

public static partial class Agreement
{
    private static string? Traits(List<TraitRow> rows, OracleBooks oracle)
    {
        var theirs = oracle.Traits();
        if (rows.Count != theirs.Count)
            return $"{rows.Count} rows against the oracle's {theirs.Count}: {string.Join(", ", rows.Select(row => $"{row.Colony} {row.Season} {row.QueenId}"))} against {string.Join(", ", theirs.Select(row => $"{oracle.NameOf(row.Colony)} {row.Season} {row.Queen}"))}";
        foreach (var right in theirs)
        {
            // Queens that nobody named are told apart by the days on which something was seen under them, and by where these fall alike by what the row rests on.
            var own = rows.FindAll(row => row.ColonyId == right.Colony && row.Season == right.Season && row.QueenId == right.Queen);
            if (own.Count == 0) return $"colony {right.Colony}, {right.Season}, queen {right.Queen}: no row";
            var differences = own.ConvertAll(row => Measured(row, right, oracle));
            if (differences.TrueForAll(difference => difference is not null)) return $"colony {right.Colony}, {right.Season}, queen {right.Queen}: {differences[0]}";
            rows.Remove(own[differences.FindIndex(difference => difference is null)]);
        }

        return null;
    }

    private static string? Measured(TraitRow row, OracleTraitRow right, OracleBooks oracle) =>
        Place(row.YardId, row.Yard, row.Spot, right.At, oracle) ?? Differ("colony", row.Colony, oracle.NameOf(right.Colony))
        ?? Differ("seen from", row.SeenFrom, right.Seen[0].On.Day) ?? Differ("seen to", row.SeenTo, right.Seen[^1].On.Day)
        ?? Differ("queen's name", row.Queen, right.Queen is { } queen ? oracle.NameOf(queen) : null)
        ?? Differ("mother", row.MotherId, right.Mother?.Mother) ?? Differ("mother's name", row.Mother, right.Mother is { } mother ? oracle.NameOf(mother.Mother) : null)
        ?? Differ("mother is", row.MotherIs, right.Mother?.Sure) ?? Differ("line", row.Line, right.Line) ?? Differ("queen's age", row.QueenAge, right.QueenAge)
        ?? Differ("maker", row.Maker, right.Maker) ?? Differ("new", row.New, right.New) ?? Differ("taken out", row.TakenOut, right.TakenOut) ?? Differ("treatments", row.Treatments, right.Treatments)
        ?? Differ("frames of bees", row.FramesOfBees, right.FramesOfBees) ?? Differ("temper", row.Temper, right.Temper) ?? Differ("brood pattern", row.BroodPattern, right.BroodPattern)
        ?? Differ("patterns too soon", row.PatternsTooSoon, right.PatternsTooSoon) ?? Differ("honey", row.HoneyKg, right.HoneyKg)
        ?? Differ("first wash", row.FirstWash, right.FirstWash?.On.Day) ?? Differ("first per 100", row.FirstPer100Bees, Per100(right.FirstWash))
        ?? Differ("last wash", row.LastWash, right.LastWash?.On.Day) ?? Differ("last per 100", row.LastPer100Bees, Per100(right.LastWash)) ?? Differ("dosed between", row.DosedBetween, right.DosedBetween)
        ?? (right.Rests.IsSubsetOf(row.Entries) ? null : "the row does not name all entries that it rests on");

    private static decimal? Per100(Entries.Washed? wash) => wash is null ? null : Math.Round(100m * wash.Mites / wash.Bees, 4);
}
