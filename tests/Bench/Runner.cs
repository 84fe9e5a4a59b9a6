using System.Globalization;
using ColonyLineage.Command.Demo;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Ledger.Postgres;
using ColonyLineage.Server;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace ColonyLineage.Bench;

/// <summary>
/// Ratios measured in one run on a fresh private PostgreSQL that flushes to disk: figures on standard output, one line each, and how they
/// came about on standard error.
/// </summary>
internal static class Runner
{
    private const string Outfit = "bench";
    private static readonly DateOnly DemoDay = new(2026, 11, 25);

    public static async Task<int> RunAsync(string[] args)
    {
        if (!TryRead(args, out var entries, out var pairs, out var only))
        {
            await Console.Error.WriteLineAsync("Usage: tools/bench [--entries N] [--pairs N] [--only inbreeding|rebuild|visit]   (500000 entries, at least 7 pairs)");
            return 2;
        }

        if (only is null or "inbreeding") await Genetics.InbreedingAsync(pairs);
        if (only is "inbreeding") return 0;
        var home = Path.Combine(Path.GetTempPath(), $"lineage-bench-{Environment.ProcessId}");
        var options = new PostgresOptions { Home = home };
        try
        {
            var postgres = await PrivatePostgres.FindOrStartAsync(options);
            await postgres.EnsureDatabaseAsync(Outfit);
            await MeasureAsync(postgres.ConnectionString(Outfit), entries, pairs, only);
            return 0;
        }
        finally
        {
            NpgsqlConnection.ClearAllPools();
            await PrivatePostgres.StopAsync(options);
            Directory.Delete(home, recursive: true);
        }
    }

    private static async Task MeasureAsync(string connectionString, int entries, int pairs, string? only)
    {
        Loaded loaded;
        await using (var ledger = await OutfitLedger.OpenAsync(connectionString, Outfit, new LedgerOptions(), default))
        {
            loaded = await LoadAsync(ledger, entries);
            if (only is null) await Size.MeasureAsync(connectionString, Outfit, loaded.Entries);
            if (only is null or "rebuild") await Rebuilds.MeasureAsync(ledger, connectionString, pairs);
        }

        if (only is "rebuild") return;

        // The server's day is the one after the last that the books hold, so that 'seasons back' means what it says.
        var now = loaded.Last.AddDays(1);
        await using var app = await LineageServer.BuildAsync(
            new ServerOptions { ConnectionString = connectionString, Outfit = Outfit, Urls = "http://127.0.0.1:0", Time = new FixedTime(now) });
        await app.StartAsync();
        using var http = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
        await using var source = NpgsqlDataSource.Create(connectionString);
        var books = app.Services.GetRequiredService<OutfitLedger>();
        var bench = new Against(http, source, books, Outfit, DateOnly.FromDateTime(now.UtcDateTime), pairs);
        await new Visits(bench).MeasureAsync();
        if (only is null)
        {
            await new Asking(bench, loaded).MeasureAsync();
            await Genetics.LinesAsync(bench);
            await new Work(bench, loaded).MeasureAsync();
        }

        await app.StopAsync();
    }

    /// <summary>Loads the entries, and lets go of them: nothing that is measured afterwards shall pay for keeping them in memory.</summary>
    private static async Task<Loaded> LoadAsync(OutfitLedger ledger, int entries)
    {
        Say("Making the demo outfit ...");
        var recorded = Make(entries);
        Say($"Loading {recorded.Count} entries ...");
        await ledger.LoadAsync(recorded, default);
        var facts = recorded.Select(one => one.Entry);
        return new Loaded(recorded.Count, recorded[^1].At, facts.OfType<LineStarted>().First().Breeder, facts.OfType<ColonyEstablished>().First().Colony);
    }

    /// <summary>
    /// As many entries as asked for, in the order in which they were recorded, whole acts, of the demo outfit over ten seasons: 5,000 colonies
    /// for 500,000 entries, and in proportion. They end about half way, in the fifth season.
    /// </summary>
    private static List<Recorded> Make(int entries)
    {
        var demo = DemoOutfit.Make(new DemoOptions { Colonies = Math.Max(120, entries / 100), Yards = null, Seasons = 10, Today = DemoDay });
        var count = Math.Min(entries, demo.Count);
        while (count < demo.Count && demo[count].Entry.Act == demo[count - 1].Entry.Act) count++;
        return [.. demo.Take(count)];
    }

    /// <summary>One figure.</summary>
    public static void Report(string name, double value, double? target) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: {(target is null && value >= 100 ? value.ToString("0", CultureInfo.InvariantCulture) : value.ToString("0.00", CultureInfo.InvariantCulture))}{(target is { } x ? $" (target {x:0.##} x)" : "")}"));

    /// <summary>A ratio, with how it came about.</summary>
    public static void Report(string name, Measured measured, double? target)
    {
        Say($"  {name}: {measured.Details}");
        Report(name, measured.Ratio, target);
    }

    public static void Say(string text) => Console.Error.WriteLine(text);

    private static bool TryRead(string[] args, out int entries, out int pairs, out string? only)
    {
        (entries, pairs, only) = (500_000, 7, null);
        for (var i = 0; i < args.Length; i += 2)
        {
            if (i + 1 < args.Length && args[i] == "--only" && args[i + 1] is "inbreeding" or "rebuild" or "visit")
            {
                only = args[i + 1];
                continue;
            }

            if (i + 1 >= args.Length || !int.TryParse(args[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return false;
            if (args[i] == "--entries" && number is >= 1000 and <= 5_000_000) entries = number;
            else if (args[i] == "--pairs" && number is >= 7 and <= 1000) pairs = number;
            else return false;
        }

        return true;
    }

    private sealed class FixedTime(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}

/// <summary>What is in the books: how many entries, when the last was recorded, the breeder of the first line, and some colony.</summary>
internal sealed record Loaded(int Entries, DateTimeOffset Last, QueenId Breeder, ColonyId Colony);

/// <summary>What the measurements share.</summary>
internal sealed record Against(HttpClient Http, NpgsqlDataSource Source, OutfitLedger Books, string Outfit, DateOnly Today, int Pairs);
