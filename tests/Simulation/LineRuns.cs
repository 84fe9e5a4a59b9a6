using ColonyLineage.Entries;
using ColonyLineage.Projections.LineComparison;

namespace ColonyLineage.Simulation;

/// <summary>What became of many comparisons of invented lines.</summary>
/// <param name="Covered">Intervals that held the truth.</param>
/// <param name="FalseClaims">Runs with equal lines in which some pair was claimed to differ.</param>
/// <param name="TrueClaims">Pairs of unequal lines that were told apart, and rightly; <paramref name="WrongWay"/>: the wrong way round.</param>
public sealed record LineTally(int Runs, int Intervals, int Covered, int FalseClaims, int Pairs, int TrueClaims, int WrongWay)
{
    public double Coverage => (double)Covered / Intervals;

    public double FalseShare => (double)FalseClaims / Runs;
}

/// <summary>
/// Invents lines with known effects, mothers within them and colonies in yards, compares them as the program does, and looks whether what it says is true. As in the simulations behind
/// the rule (Golden/binomial/decision_rules.csv): error 1, mothers .4, lines .5, five colonies to a mother; but the mothers are two to four and the yards are not alike. Shares lost are
/// invented on the logit scale, with ten colonies to a mother, of which about one in five is lost.
/// </summary>
public static class LineRuns
{
    private const int Lines = 6;
    private const int Yards = 6;
    private const double OfMothers = .4;
    private const double OfLines = .5;

    private const double Logit = 1.8;

    /// <param name="shares">Noughts and ones in place of measures.</param>
    public static LineTally Run(int runs, ulong seed, int threads, bool shares = false)
    {
        var tallies = new LineTally[runs];
        Parallel.For(0, runs, new ParallelOptions { MaxDegreeOfParallelism = threads }, i => tallies[i] = One(seed + (ulong)i, shares));
        return new LineTally(
            runs, tallies.Sum(one => one.Intervals), tallies.Sum(one => one.Covered), tallies.Sum(one => one.FalseClaims), tallies.Sum(one => one.Pairs), tallies.Sum(one => one.TrueClaims), tallies.Sum(one => one.WrongWay));
    }

    /// <summary>Prints the tally; 0 where the intervals cover at 95 ± 1 % and at most 5.5 % of runs with equal lines claim something.</summary>
    public static int Tell(int runs, ulong seed, int threads)
    {
        bool[] kinds = [false, true];
        return kinds.Select(shares => Tell(runs, seed, threads, shares)).ToList().Max();
    }

    private static int Tell(int runs, ulong seed, int threads, bool shares)
    {
        Console.WriteLine($"{(shares ? "Shares lost" : "Measures")}: {runs} outfits of {Lines} lines with known effects, and as many with equal lines, from seed {seed}");
        var tally = Run(runs, seed, threads, shares);
        Console.WriteLine(FormattableString.Invariant($"intervals that cover the truth: {100 * tally.Coverage:0.00} % of {tally.Intervals} (target 95 ± 1)"));
        Console.WriteLine(FormattableString.Invariant($"equal lines told apart: {100 * tally.FalseShare:0.00} % of {runs} (target at most 5.5)"));
        Console.WriteLine(FormattableString.Invariant($"unequal pairs told apart: {100.0 * tally.TrueClaims / tally.Pairs:0.00} % of {tally.Pairs}, the wrong way round {100.0 * tally.WrongWay / tally.Pairs:0.000} %"));
        return tally.Coverage is >= .94 and <= .96 && tally.FalseShare <= .055 ? 0 : 1;
    }

    private static LineTally One(ulong seed, bool shares)
    {
        var random = new Random(unchecked((int)(seed * 2654435761)));
        var trait = shares ? Trait.WinterLosses : Trait.Strength;
        double[] effects = [.. Enumerable.Range(0, Lines).Select(_ => (shares ? Logit : 1) * OfLines * Normal(random))];
        var mean = effects.Average();
        var known = Comparing.Of(Records(random, effects, shares), trait, ComparedBy.Line);
        // Lines that share no yard with the others, or of which nothing could be fitted, have no interval.
        var intervals = known.Lines.Where(line => line.Lower is not null).ToList();
        var covered = intervals.Count(line => (double)line.Lower!.Value <= effects[line.Line[0] - 'A'] - mean && effects[line.Line[0] - 'A'] - mean <= (double)line.Upper!.Value);
        var claimed = known.Pairs.Where(pair => pair.Verdict == Verdict.Differ).ToList();
        var right = claimed.Count(pair => Math.Sign(pair.Difference!.Value) == Math.Sign(effects[pair.Line[0] - 'A'] - effects[pair.Other[0] - 'A']));
        var equal = Comparing.Of(Records(random, new double[Lines], shares), trait, ComparedBy.Line);
        return new LineTally(1, intervals.Count, covered, equal.Pairs.Any(pair => pair.Verdict == Verdict.Differ) ? 1 : 0, known.Pairs.Count, right, claimed.Count - right);
    }

    private static List<LineRecord> Records(Random random, double[] effects, bool shares)
    {
        var records = new List<LineRecord>();
        double[] yards = [.. Enumerable.Range(0, Yards).Select(_ => Normal(random))];
        for (var line = 0; line < Lines; line++)
            for (var mother = random.Next(2, 5); mother > 0; mother--)
            {
                var own = (shares ? Logit : 1) * OfMothers * Normal(random);
                for (var colony = 0; colony < (shares ? 10 : 5); colony++)
                {
                    var (yard, age) = (random.Next(Yards), random.Next(3));
                    var id = new Guid(records.Count + 1, 0, 0, new byte[8]);
                    records.Add(new LineRecord(
                        new ColonyId(id), $"{(char)('A' + line)}", $"{line}-{mother}", $"yard {yard}", $"yard {yard} 2026", $"{age}", "none",
                        shares ? random.NextDouble() < 1 / (1 + Math.Exp(1.5 - effects[line] - own - (yards[yard] / 2) - (.3 * age))) ? 1 : 0 : effects[line] + own + yards[yard] - (.3 * age) + Normal(random), false, false, [new EntryId(id)]));
                }
            }

        return records;
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
