using System.CommandLine;
using ColonyLineage.Command.Commands;

namespace ColonyLineage.Command;

/// <summary>The command line as a whole.</summary>
public static class CommandLine
{
    /// <summary>Runs it: 0 done, 1 failed, 2 usage, 3 input refused.</summary>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error, CancellationToken cancel = default)
    {
        var parsed = Root().Parse(args);
        if (parsed.Errors.Count > 0 && parsed.Action is not Help)
        {
            foreach (var problem in parsed.Errors) await error.WriteLineAsync(problem.Message);
            await error.WriteLineAsync($"Say 'lineage {PathOf(parsed)}--help' to see how it goes.");
            return Exit.Usage;
        }

        return await parsed.InvokeAsync(new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false }, cancel);
    }

    private static RootCommand Root()
    {
        var root = new RootCommand("The history and genealogy of the colonies of one outfit: entries in, answers out.") { Shared.Outfit, Shared.Verbose };
        root.Subcommands.Add(Serve.Command());
        root.Subcommands.Add(Import.Command());
        root.Subcommands.Add(AskQuestion.Command());
        root.Subcommands.Add(Record.Command());
        root.Subcommands.Add(VoidThem.Command());
        root.Subcommands.Add(FillDemo.Command());
        root.Subcommands.Add(RebuildTables.Command());
        root.Subcommands.Add(Export.Command());
        root.Subcommands.Add(Status.Command());
        root.Subcommands.Add(Relate.Command());
        root.Subcommands.Add(FitModel.Command());
        root.Subcommands.Add(Pedigrees.Export());
        root.Subcommands.Add(Pedigrees.Import());
        Help.Install(root);
        return root;
    }

    private static string PathOf(ParseResult parsed) => parsed.CommandResult.Command is RootCommand ? "" : parsed.CommandResult.Command.Name + " ";
}
