using System.CommandLine;
using System.Globalization;
using ColonyLineage.Command.Demo;
using ColonyLineage.Command.Output;
using ColonyLineage.Entries;
using ColonyLineage.Server;

namespace ColonyLineage.Command.Commands;

/// <summary>An invented outfit to look at, and to measure with.</summary>
internal static class FillDemo
{
    private const string Usual = "demo";

    public static System.CommandLine.Command Command()
    {
        var usual = new DemoOptions { Today = default };
        var colonies = Number("--colonies", "Colonies that it goes into the winter with, about; 40 to 20,000.", usual.Colonies, 40, 20_000);
        var seasons = Number("--seasons", "Seasons, the running one included; 1 to 20.", usual.Seasons, 1, 20);
        var yards = new Option<int?>("--yards") { Description = "Yards, 4 to 1,000; one to every 30 colonies where none are named.", HelpName = "N" };
        yards.Validators.Add(result => Within(result, result.GetValue(yards), 4, 1000));
        var seed = new Option<int>("--seed") { Description = "What all chance grows from: the same seed gives the same outfit.", DefaultValueFactory = _ => usual.Seed, HelpName = "N" };
        var remove = new Option<bool>("--remove") { Description = "Remove it again, without trace." };
        var command = new System.CommandLine.Command("demo", "Fill the outfit 'demo' with invented colonies, four seasons of them.") { colonies, seasons, yards, seed, remove };
        command.Does(async (parsed, cancel) =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var outfit = Shared.OutfitOf(parsed, Usual);
            if (parsed.GetValue(remove))
            {
                await using var gone = await Shared.OpenAsync(parsed, make: false, cancel, Usual);
                // There is no way back, so only what this command filled is removed by it.
                if ((await gone.StatusAsync(false, cancel)).Entries > 0 && gone.OpenBooks(cancel).Outfit.Name != Places.Outfit)
                    throw new RefusedException(new Refusal("not-a-demo", "outfit", $"'{outfit}' was not filled by this command, and is left alone."));
                await gone.RemoveAsync(cancel);
                await output.WriteLineAsync($"The outfit '{outfit}' is removed.");
                return Exit.Done;
            }

            await using var ledger = await Shared.OpenAsync(parsed, make: true, cancel, Usual);
            await Empty.RequireAsync(ledger, cancel);
            var options = new DemoOptions
            {
                Colonies = parsed.GetValue(colonies), Seasons = parsed.GetValue(seasons), Seed = parsed.GetValue(seed), Today = new Clock(TimeProvider.System).Today,
                Yards = parsed.GetValue(yards) ?? (parsed.GetValue(colonies) == usual.Colonies ? usual.Yards : null),
            };
            var count = await Progress.RunAsync(parsed.InvocationConfiguration.Error, "inventing", async progress =>
            {
                var all = await Task.Run(() => DemoOutfit.Make(options), cancel);
                await ledger.LoadAsync(all, progress, cancel);
                return all.Count;
            });
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{count:N0} invented entries recorded in the outfit '{outfit}'."));
            return Exit.Done;
        });
        return Help.WithExample(command, "lineage demo\nlineage --outfit load demo --colonies 5000 --seasons 10\nlineage demo --remove");
    }

    private static Option<int> Number(string name, string description, int usual, int least, int most)
    {
        var option = new Option<int>(name) { Description = description, DefaultValueFactory = _ => usual, HelpName = "N" };
        option.Validators.Add(result => Within(result, result.GetValue(option), least, most));
        return option;
    }

    private static void Within(System.CommandLine.Parsing.OptionResult result, int? value, int least, int most)
    {
        if (value < least || value > most) result.AddError(string.Create(CultureInfo.InvariantCulture, $"{result.Option.Name}: from {least} to {most:N0}; this is {value}."));
    }
}
