using System.CommandLine;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Rules;
using ColonyLineage.Server;
using ColonyLineage.Server.Acts;
using ColonyLineage.Server.Messages;

namespace ColonyLineage.Command.Commands;

/// <summary>Entries that were wrong.</summary>
internal static class VoidThem
{
    public static System.CommandLine.Command Command()
    {
        var entries = new Argument<Guid[]>("ENTRY") { Description = "The entries, by their ids.", Arity = ArgumentArity.ZeroOrMore };
        var act = new Option<Guid?>("--act") { Description = "All entries of an act, by its id.", HelpName = "ACT" };
        var why = new Option<string>("--why") { Description = "Why they are wrong.", Required = true, HelpName = "WHY" };
        var by = new Option<string?>("--by") { Description = "Who says so.", HelpName = "WHO" };
        var command = new System.CommandLine.Command("void", "Strike entries through, with a reason. They stay in the history.") { entries, act, why, by };
        command.Validators.Add(result =>
        {
            if (result.GetValue(entries) is null or { Length: 0 } == (result.GetValue(act) is null)) result.AddError("Name entries, or an act with --act.");
        });
        command.Does(async (parsed, cancel) =>
        {
            await using var ledger = await Shared.OpenAsync(parsed, make: false, cancel);
            var clock = new Clock(TimeProvider.System);
            IReadOnlyList<EntryId> wrong = parsed.GetValue(act) is { } whole
                ? [.. (await Voids.EntriesOfAsync(ledger, new ActId(whole), cancel)).Select(entry => entry.Id)]
                : [.. parsed.GetValue(entries)!.Select(id => new EntryId(id))];
            var request = new VoidEntries { Act = new ActId(Guid.CreateVersion7()), On = clock.Today, By = parsed.GetValue(by), Entries = wrong, Why = parsed.GetValue(why)! };
            var receipt = await RunActHandler.HandleAsync(new RunAct(request), ledger, clock, cancel);
            if (receipt.Refusals.Count > 0) throw new RefusedException(receipt.Refusals);
            await parsed.InvocationConfiguration.Output.WriteLineAsync(receipt.New.Count == 1 ? "1 entry voided." : $"{receipt.New.Count} entries voided.");
            return Exit.Done;
        });
        return Help.WithExample(command, "lineage void 0197c5a2-7b1e-7c3a-9a55-0e6b7a2f4c10 --why 'it was colony 40'\nlineage void --act 0197c5a2-7b1e-7c3a-9a55-0e6b7a2f4c11 --why 'wrong sheet'");
    }
}
