using ColonyLineage.Bench;

return await Runner.RunAsync(args);
