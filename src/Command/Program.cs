using ColonyLineage.Command;

return await CommandLine.RunAsync(args, Console.Out, Console.Error);
