using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Ledger.Import;
using ColonyLineage.Projections;

namespace ColonyLineage.Server.Import;

/// <summary>Field sheets against the books: what would be recorded, and recording it.</summary>
public static class Sheets
{
    /// <summary>Plans the import of a sheet into these books. Nothing is recorded.</summary>
    /// <exception cref="RefusedException">The mapping or the sheet as a whole cannot be read.</exception>
    public static async Task<ImportPlan> PlanAsync(
        OutfitLedger ledger, Stream csv, Mapping map, DateOnly today, SheetLimits? limits = null, IProgress<long>? progress = null, CancellationToken cancel = default)
    {
        var register = await ledger.RowsAsync(Questions.Register, Ask.Everything, cancel);
        var known = new KnownNames
        {
            Yards = Once(register, SubjectKind.Yard, id => new YardId(id)),
            Colonies = Once(register, SubjectKind.Colony, id => new ColonyId(id)),
            Queens = Once(register, SubjectKind.Queen, id => new QueenId(id)),
        };
        return SheetImport.Plan(csv, map, today, known, limits, progress);
    }

    /// <summary>The reasons of bad cells as refusals, each at its row and column; at most <paramref name="most"/> of them.</summary>
    public static IReadOnlyList<Refusal> Refusals(ImportPlan plan, int most = 200) =>
        [.. plan.Bad.Take(most).Select(cell => new Refusal(cell.Name, cell.Column.Length == 0 ? $"row {cell.Row}" : $"row {cell.Row}, {cell.Column}", cell.Message))];

    /// <summary>What came of recording a plan, in words. Who voids an import and means to run it again must not be left to wonder why nothing comes.</summary>
    public static async Task<string> OutcomeAsync(OutfitLedger ledger, ImportPlan plan, Receipt receipt, CancellationToken cancel)
    {
        var said = string.Create(CultureInfo.InvariantCulture, $"{receipt.New.Count:N0} entries recorded from {plan.GoodRows:N0} rows; {receipt.Known.Count:N0} were there before.");
        var struck = receipt.Known.Count == 0 ? 0 : (await ledger.EntriesAsync(receipt.Known, cancel)).Count(line => line.Void is not null);
        return struck == 0 ? said : said + string.Create(CultureInfo.InvariantCulture, $" {struck:N0} of those are voided and stay so: to record them again, give the mapping another name.");
    }

    /// <summary>A plan as the desk's pages show it.</summary>
    public static Desk.SheetPlan ForDesk(ImportPlan plan, int mostFaults = 1000) => new(
        plan.Act, plan.Entries, plan.GoodRows, plan.BadRows.Count, [.. plan.Bad.Take(mostFaults).Select(cell => new Desk.SheetFault(cell.Row, cell.Column, cell.Value, cell.Message))], plan.UnusedColumns);

    // A name that two things bear tells nothing; the sheet then has to establish its own.
    private static Dictionary<string, TId> Once<TId>(IEnumerable<Projections.Register.RegisterRow> register, SubjectKind kind, Func<Guid, TId> id) =>
        register.Where(row => row.Kind == kind).GroupBy(row => row.Name).Where(group => group.Count() == 1).ToDictionary(group => group.Key, group => id(group.First().Id));
}
