using System.Diagnostics;
using ColonyLineage.Entries;

namespace ColonyLineage.Simulation;

/// <summary>
/// Tries the laws on many invented histories. Exit 0 where all hold, 1 where one fails (with the failing history made small), 2 on
/// wrong usage.
/// </summary>
internal static class Program
{
    private const string Usage = """
        usage: simulate --count N [--seed S] [--threads T]
               simulate --replay FILE [--seed S]
               simulate --lines N [--seed S]

          --count N      how many histories to invent and try, 1 or more
          --seed S       the first seed, 0 or more; history number i has seed S + i; drawn by chance where it is missing
          --lines N      lines with known effects, and equal ones, compared N times each: do intervals cover, is anything claimed falsely?
          --threads T    how many to try at once; as many as there are processors where it is missing
          --replay FILE  tries the one history in a file that an earlier failure wrote

        example: simulate --count 2000 --seed 7
        """;

    private static int Main(string[] words)
    {
        ulong? seed = null;
        int count = 0, lines = 0, threads = Environment.ProcessorCount;
        string? replay = null;
        for (var i = 0; i < words.Length; i += 2)
        {
            var value = i + 1 < words.Length ? words[i + 1] : "";
            var fine = words[i] switch
            {
                "--count" => int.TryParse(value, out count) && count > 0,
                "--lines" => int.TryParse(value, out lines) && lines > 0,
                "--threads" => int.TryParse(value, out threads) && threads > 0,
                "--seed" => ulong.TryParse(value, out var given) && (seed = given) is not null,
                "--replay" => (replay = value).Length > 0,
                _ => false,
            };
            if (!fine) return WrongUsage();
        }

        if (lines > 0) return LineRuns.Tell(lines, seed ?? (ulong)Random.Shared.NextInt64(1_000_000_000), threads);
        if (replay is not null) return Replay(replay, seed ?? 0);
        return count == 0 ? WrongUsage() : Run(count, seed ?? (ulong)Random.Shared.NextInt64(1_000_000_000), threads);
    }

    private static int WrongUsage()
    {
        Console.Error.WriteLine(Usage);
        return 2;
    }

    private static int Run(int count, ulong seed, int threads)
    {
        Console.WriteLine($"{count} histories from seed {seed}, {threads} at a time");
        var clock = Stopwatch.StartNew();
        var done = 0;
        (ulong Seed, Failure Failure)? found = null;
        var step = Math.Max(1, count / 20);
        var entries = 0L;
        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = threads }, (i, loop) =>
        {
            var own = seed + (ulong)i;
            var history = Generator.Make(own);
            if (new Checks(Folds.Real, own).Find(history) is { } failure)
            {
                found ??= (own, failure);
                loop.Stop();
            }

            Interlocked.Add(ref entries, history.Count);
            var tried = Interlocked.Increment(ref done);
            if (tried % step == 0) Console.WriteLine($"{tried,9} of {count}  {clock.Elapsed:hh\\:mm\\:ss}");
        });
        Console.WriteLine($"{entries} entries in all");
        if (found is { } first) return Tell(Generator.Make(first.Seed), first.Seed, first.Failure, done);
        Console.WriteLine($"{count} histories, 0 failures");
        return 0;
    }

    private static int Replay(string file, ulong seed)
    {
        var history = HistoryText.Read(File.ReadAllText(file));
        if (new Checks(Folds.Real, seed).Find(history) is { } failure) return Tell(history, seed, failure, 1);
        Console.WriteLine("1 histories, 0 failures");
        return 0;
    }

    private static int Tell(IReadOnlyList<Recorded> history, ulong seed, Failure failure, int tried)
    {
        Console.WriteLine(Report.Of(Folds.Real, history, seed, failure, out var json));
        var file = Path.GetFullPath($"history-{seed}.json");
        File.WriteAllText(file, json);
        Console.WriteLine($"\nas JSON in {file}\nagain: simulate --replay {file} --seed {seed}");
        Console.WriteLine($"{tried} histories, 1 failures");
        return 1;
    }
}
