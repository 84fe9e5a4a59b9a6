using System.CommandLine;
using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Ledger.Import;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Relationship;
using ColonyLineage.Server.Answers;

namespace ColonyLineage.Command.Commands;

/// <summary>The coancestry of a pedigree from a file, without any books.</summary>
internal static class Relate
{
    public static System.CommandLine.Command Command()
    {
        var file = new Argument<FileInfo>("PEDIGREE") { Description = "CSV, in one of two forms: 'id, sex (1 male, 2 female), mother, father' with every drone recorded, or 'id, mother, mating' with --matings." };
        var (matings, shares) = (MatingsOption(), SharesOption());
        var format = new Option<string>("--format") { Description = "csv (the default) or json.", DefaultValueFactory = _ => "csv", HelpName = "csv|json" };
        format.AcceptOnlyFromAmong("csv", "json");
        var command = new System.CommandLine.Command("relate", "The coancestry θ of all bees of a pedigree with all, from a file. For queens F = 2θ(i,i) − 1, and the additive relationship is 2θ.") { file, matings, shares, format };
        command.Does(async (parsed, cancel) =>
        {
            var sheet = Read(parsed.GetValue(file)!);
            var (names, table) = sheet.Columns.Contains("sex") && parsed.GetValue(matings) is null
                ? WithDrones(sheet)
                : WithMatings(sheet, parsed.GetValue(matings) is { } second ? Read(second) : null, parsed.GetValue(shares)!);
            await WriteAsync(parsed.InvocationConfiguration.Output, parsed.GetValue(format) == "json", names, table);
            return Exit.Done;
        });
        return Help.WithExample(command, "lineage relate bees.csv\nlineage relate queens.csv --matings matings.csv --shares random --format json");
    }

    internal static Sheet Read(FileInfo file)
    {
        using var csv = file.OpenRead();
        return Sheet.Read(csv);
    }

    private static (IReadOnlyList<string> Names, double[,] Table) WithDrones(Sheet sheet)
    {
        var (id, sex, mother, father) = (sheet.At("id"), sheet.At("sex"), sheet.At("mother"), sheet.At("father"));
        var (bees, refusals) = PedigreeSheet.WithDrones([.. sheet.Rows.Select(row => new BeeLine(row.Row, row.Cells[id], row.Cells[sex], row.Cells[mother], row.Cells[father]))]);
        return refusals.Count > 0 ? throw new RefusedException(refusals) : ([.. bees.Select(bee => bee.Id)], DronePedigree.Table(bees));
    }

    private static (IReadOnlyList<string> Names, double[,] Table) WithMatings(Sheet sheet, Sheet? second, string shares)
    {
        var (pedigree, names) = Queens(sheet, second, shares);
        return (names, pedigree.Table());
    }

    /// <summary>The queens of a pedigree with matings.</summary>
    /// <exception cref="RefusedException">It makes no sense.</exception>
    internal static (QueenPedigree Pedigree, IReadOnlyList<string> Names) Queens(FileInfo queens, FileInfo? matings, string shares) => Queens(Read(queens), matings is null ? null : Read(matings), shares);

    private static (QueenPedigree Pedigree, IReadOnlyList<string> Names) Queens(Sheet sheet, Sheet? second, string shares)
    {
        var (pedigree, names, refusals) = PedigreeSheet.WithMatings(Queens(sheet, second is not null), second is null ? [] : Matings(second), shares == "random" ? DroneShares.AtRandom : DroneShares.Equal);
        return pedigree is null ? throw new RefusedException(refusals) : (pedigree, names);
    }

    internal static Option<FileInfo?> MatingsOption() => new("--matings") { Description = "CSV of the matings: 'mating, queen, dpqs, n': drone-producing queens divided by ';' (none: open), effective number of drones (empty: 12).", HelpName = "FILE" };

    internal static Option<string> SharesOption()
    {
        var shares = new Option<string>("--shares") { Description = "Whether drone producers of one mating have equal shares of the drones, or each drone is of any of them at random.", DefaultValueFactory = _ => "equal", HelpName = "equal|random" };
        shares.AcceptOnlyFromAmong("equal", "random");
        return shares;
    }

    /// <summary>Without the sheet of matings the names of matings mean nothing.</summary>
    internal static List<QueenLine> Queens(Sheet sheet, bool withMatings)
    {
        var (id, mother, mating) = (sheet.At("id"), sheet.At("mother"), withMatings ? sheet.At("mating") : -1);
        return [.. sheet.Rows.Select(row => new QueenLine(row.Row, row.Cells[id], row.Cells[mother], mating < 0 ? "" : row.Cells[mating]))];
    }

    internal static List<MatingLine> Matings(Sheet sheet)
    {
        var (mating, queen, drones, effective) = (sheet.At("mating"), sheet.At("queen"), sheet.At("dpqs"), sheet.At("n"));
        return [.. sheet.Rows.Select(row => new MatingLine(row.Row, row.Cells[mating], row.Cells[queen], row.Cells[drones], row.Cells[effective]))];
    }

    /// <summary>The names of rows and columns first; numbers as they are, without rounding.</summary>
    private static async Task WriteAsync(TextWriter to, bool json, IReadOnlyList<string> names, double[,] table)
    {
        if (json)
        {
            var rows = Enumerable.Range(0, names.Count).Select(row => Enumerable.Range(0, names.Count).Select(column => table[row, column]));
            await to.WriteLineAsync(JsonSerializer.Serialize(new { names, coancestry = rows }));
            return;
        }

        var columns = names.Prepend("").Select(name => new AnswerColumn(name, ColumnType.Number)).ToArray();
        AnswerCsv.Write(to, new Answer(columns, [.. names.Select((name, row) => (object?[])[name, .. Enumerable.Range(0, names.Count).Select(column => (object)table[row, column])])]));
    }
}
