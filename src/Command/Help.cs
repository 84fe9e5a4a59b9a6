using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace ColonyLineage.Command;

/// <summary>The usual help, with an example of each command below it.</summary>
internal sealed class Help(HelpAction usual) : SynchronousCommandLineAction
{
    private static readonly Dictionary<string, string> Examples = [];

    /// <summary>A command with an example.</summary>
    public static System.CommandLine.Command WithExample(System.CommandLine.Command command, string example)
    {
        Examples[command.Name] = example;
        return command;
    }

    /// <summary>Makes the root, and with it every command, help this way.</summary>
    public static void Install(RootCommand root)
    {
        var option = root.Options.OfType<HelpOption>().Single();
        option.Action = new Help((HelpAction)option.Action!);
    }

    /// <inheritdoc/>
    public override int Invoke(ParseResult parsed)
    {
        usual.MaxWidth = 100;
        usual.Invoke(parsed);
        var output = parsed.InvocationConfiguration.Output;
        if (parsed.CommandResult.Command is RootCommand)
        {
            output.WriteLine("Example:");
            output.WriteLine("  lineage --outfit demo ask queens-by-age --seasons-back 2");
            output.WriteLine();
            output.WriteLine("The books lie in the PostgreSQL that COLONY_LINEAGE_DATABASE names (a connection string), else in a");
            output.WriteLine("private one under COLONY_LINEAGE_HOME. Exit: 0 done, 1 failed, 2 usage, 3 input refused.");
        }
        else if (Examples.TryGetValue(parsed.CommandResult.Command.Name, out var example))
        {
            output.WriteLine("Example:");
            foreach (var line in example.Split('\n')) output.WriteLine($"  {line.TrimEnd('\r')}");
        }

        return Exit.Done;
    }
}
