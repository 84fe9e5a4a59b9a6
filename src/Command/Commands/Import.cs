using System.CommandLine;
using System.Globalization;
using ColonyLineage.Command.Output;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Ledger.Import;
using ColonyLineage.Server;
using ColonyLineage.Server.Import;

namespace ColonyLineage.Command.Commands;

/// <summary>A field sheet into the books.</summary>
internal static class Import
{
    private const int Most = 200;

    public static System.CommandLine.Command Command()
    {
        var sheet = new Argument<FileInfo>("SHEET") { Description = "The sheet, as CSV." };
        var map = new Option<FileInfo>("--map") { Description = "What its columns mean: see the README.", Required = true, HelpName = "MAP" };
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would be recorded and what is wrong, and record nothing." };
        var skipBad = new Option<string?>("--skip-bad")
        {
            Description = "Record the good rows where others are bad, and write the bad ones to FILE (SHEET with .bad.csv where none is named).", Arity = ArgumentArity.ZeroOrOne, HelpName = "FILE",
        };
        var command = new System.CommandLine.Command("import", "Record what a field sheet says, all of it or nothing. Twice adds nothing.") { sheet, map, dryRun, skipBad };
        command.Does(async (parsed, cancel) =>
        {
            var (file, output, error) = (parsed.GetValue(sheet)!, parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            Mapping mapping;
            await using (var from = parsed.GetValue(map)!.OpenRead()) mapping = Mapping.Read(from);
            await using var csv = file.OpenRead();
            await using var ledger = await Shared.OpenAsync(parsed, make: true, cancel);
            return await Progress.RunAsync(error, "reading the sheet", async progress =>
            {
                var bytes = new Bytes(progress, file.Length);
                var plan = await Sheets.PlanAsync(ledger, csv, mapping, new Clock(TimeProvider.System).Today, progress: bytes, cancel: cancel);
                var skips = parsed.GetResult(skipBad) is not null;
                foreach (var refusal in Sheets.Refusals(plan, Most)) await error.WriteLineAsync($"refused {refusal.Name} at {refusal.Field}: {refusal.Message}");
                if (plan.Bad.Count > Most) await error.WriteLineAsync($"… and {plan.Bad.Count - Most} more.");
                if (parsed.GetValue(dryRun))
                {
                    await Say(output, plan);
                    return plan.Bad.Count > 0 ? Exit.Refused : Exit.Done;
                }

                if (plan.Bad.Count > 0 && !skips)
                {
                    await error.WriteLineAsync("Nothing was recorded: mend the cells, or keep the good rows with --skip-bad.");
                    return Exit.Refused;
                }

                if (plan.BadRows.Count > 0)
                {
                    var to = parsed.GetValue(skipBad) ?? Path.ChangeExtension(file.FullName, ".bad.csv");
                    await using (var bad = File.Create(to)) plan.WriteBadRows(bad);
                    await output.WriteLineAsync($"{plan.BadRows.Count} bad rows written to {to}");
                }

                progress.Report(("recording", 0.5));
                var receipt = plan.Entries.Count == 0 ? new Receipt([], [], []) : await ledger.RecordAsync(plan.Entries, cancel);
                if (receipt.Refusals.Count > 0) throw new RefusedException(receipt.Refusals);
                await output.WriteLineAsync(await Sheets.OutcomeAsync(ledger, plan, receipt, cancel));
                await output.WriteLineAsync($"All of it is one act: lineage void --act {plan.Act} --why … takes it back.");
                return Exit.Done;
            });
        });
        return Help.WithExample(command, "lineage import washes.csv --map washes.map.json --dry-run\nlineage import washes.csv --map washes.map.json");
    }

    private static async Task Say(TextWriter output, ImportPlan plan)
    {
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{plan.GoodRows:N0} good rows, {plan.BadRows.Count:N0} bad ones. Would be recorded:"));
        foreach (var (kind, count) in plan.Counts) await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{count,8:N0}  {kind}"));
        if (plan.UnusedColumns.Count > 0) await output.WriteLineAsync($"Columns not read: {string.Join(", ", plan.UnusedColumns)}");
    }

    private sealed class Bytes(IProgress<(string Step, double Done)> progress, long all) : IProgress<long>
    {
        public void Report(long value) => progress.Report(("reading the sheet", all == 0 ? 0 : 0.5 * value / all));
    }
}
