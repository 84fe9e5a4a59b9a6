using ColonyLineage.Command.Output;

namespace ColonyLineage.Command.Commands;

/// <summary>Every read table anew.</summary>
internal static class RebuildTables
{
    public static System.CommandLine.Command Command()
    {
        var command = new System.CommandLine.Command("rebuild", "Make every read table anew from the entries. Answers stay available, and entries may keep arriving.");
        command.Does(async (parsed, cancel) =>
        {
            await using var ledger = await Shared.OpenAsync(parsed, make: false, cancel);
            await Progress.RunAsync(parsed.InvocationConfiguration.Error, "rebuilding", async progress =>
            {
                await ledger.RebuildAsync(progress, cancel);
                return true;
            });
            await parsed.InvocationConfiguration.Output.WriteLineAsync("All read tables are made anew.");
            return Exit.Done;
        });
        return Help.WithExample(command, "lineage rebuild");
    }
}
