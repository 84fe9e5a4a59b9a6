using System.CommandLine;
using System.Globalization;

namespace ColonyLineage.Command.Commands;

/// <summary>How the books stand.</summary>
internal static class Status
{
    public static System.CommandLine.Command Command()
    {
        var check = new Option<bool>("--check") { Description = "Compare every read table with a plain fold of the entries, and name what differs." };
        var command = new System.CommandLine.Command("status", "How the books stand: entries, read tables, what waits for a person.") { check };
        command.Does(async (parsed, cancel) =>
        {
            await using var ledger = await Shared.OpenAsync(parsed, make: false, cancel);
            var status = await ledger.StatusAsync(parsed.GetValue(check), cancel);
            var output = parsed.InvocationConfiguration.Output;
            await Line("outfit", ledger.Outfit);
            await Line("entries", Number(status.Entries));
            await Line("not yet in the read tables", Number(status.Waiting));
            await Line("kept aside", Number(status.KeptAside));
            await Line("on disk", $"{Number(status.BytesOnDisk / 1_000_000)} MB");
            foreach (var table in status.Tables)
            {
                await Line(table.Name, $"{Number(table.Rows)} rows{(parsed.GetValue(check) ? table.Differing.Count == 0 ? ", as folded" : $", {table.Differing.Count} subjects differ" : "")}");
                foreach (var key in table.Differing.Take(20)) await output.WriteLineAsync($"    differs: {key}");
            }

            foreach (var advice in status.Advice) await output.WriteLineAsync(advice);
            return status.Tables.All(table => table.Differing.Count == 0) ? Exit.Done : Exit.Failed;

            Task Line(string name, string value) => output.WriteLineAsync($"{name + ":",-28}{value}");
        });
        return Help.WithExample(command, "lineage status --check");
    }

    private static string Number(long number) => number.ToString("N0", CultureInfo.InvariantCulture);
}
