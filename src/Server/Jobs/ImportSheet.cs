using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Ledger.Import;
using ColonyLineage.Server.Import;

namespace ColonyLineage.Server.Jobs;

/// <summary>Record what a field sheet says.</summary>
/// <param name="Job">The job's id.</param>
/// <param name="Sheet">The sheet as it was uploaded.</param>
/// <param name="Map">Its mapping.</param>
/// <param name="SkipBad">Record the good rows where others are bad.</param>
public sealed record ImportSheet(Guid Job, byte[] Sheet, string Map, bool SkipBad)
{
    /// <summary>What it does, in words.</summary>
    public static string What(Mapping map) => $"Import the sheet '{map.Name}'";
}

/// <summary>Handles <see cref="ImportSheet"/>.</summary>
public static class ImportSheetHandler
{
    /// <summary>Plans it again by the books as they are now, and records it as one act.</summary>
    public static Task HandleAsync(ImportSheet message, OutfitLedger ledger, JobBoard board, Clock clock, CancellationToken cancel)
    {
        var map = Mapping.Read(message.Map);
        return board.RunAsync(message.Job, ImportSheet.What(map), async progress =>
        {
            progress.Report(("reading the sheet", 0));
            using var sheet = new MemoryStream(message.Sheet);
            var plan = await Sheets.PlanAsync(ledger, sheet, map, clock.Today, cancel: cancel);
            if (plan.Bad.Count > 0 && !message.SkipBad) throw new RefusedException(Sheets.Refusals(plan));
            progress.Report(("recording", 0.3));
            var receipt = await ledger.RecordAsync(plan.Entries, cancel);
            if (receipt.Refusals.Count > 0) throw new RefusedException(receipt.Refusals);
            return $"{await Sheets.OutcomeAsync(ledger, plan, receipt, cancel)} Act {plan.Act}.";
        });
    }
}
