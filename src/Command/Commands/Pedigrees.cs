using System.CommandLine;
using System.Globalization;
using System.Text;
using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Ledger.Import;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Relationship;
using ColonyLineage.Server;
using ColonyLineage.Server.Answers;

namespace ColonyLineage.Command.Commands;

/// <summary>The pedigree of the books out to sheets, and a pedigree from sheets into the books.</summary>
internal static class Pedigrees
{
    private static readonly AnswerColumn[] QueenColumns = [new("id", ColumnType.Text), new("mother", ColumnType.Text), new("mating", ColumnType.Text), new("birth", ColumnType.Text)];

    private static readonly AnswerColumn[] MatingColumns = [new("mating", ColumnType.Text), new("queen", ColumnType.Text), new("dpqs", ColumnType.Text), new("n", ColumnType.Number)];

    public static System.CommandLine.Command Export()
    {
        var queens = new Argument<FileInfo>("QUEENS") { Description = "The file for the queens: id, mother, mating, birth." };
        var matings = new Argument<FileInfo>("MATINGS") { Description = "The file for the matings: mating, queen, dpqs (divided by ';'), n." };
        var ids = new Option<bool>("--ids") { Description = "Queens by their ids in place of their names, to be joined with other answers, for instance traits." };
        var command = new System.CommandLine.Command("export-pedigree", "Write the pedigree of the books as two sheets, the form that 'relate', 'fit' and 'import-pedigree' read.") { queens, matings, ids };
        command.Does(async (parsed, cancel) =>
        {
            await using var ledger = await Shared.OpenAsync(parsed, make: false, cancel);
            var register = (await ledger.RowsAsync(Questions.Register, Ask.Everything, cancel)).Where(row => row.Kind == SubjectKind.Queen).ToDictionary(row => row.Id);
            var books = new BooksPedigree(await ledger.RowsAsync(Questions.Lineage, Ask.Everything, cancel), register.Values.Select(queen => (queen.Id, queen.Name)));
            // A name that two queens bear gets the end of the id behind it.
            var twice = books.Queens.GroupBy(books.NameOf).Where(same => same.Count() > 1).Select(same => same.Key).ToHashSet();
            string Name(Guid queen) => parsed.GetValue(ids) ? $"{queen}" : twice.Contains(books.NameOf(queen)) ? $"{books.NameOf(queen)} {Projections.Cards.Names.Short(queen)}" : books.NameOf(queen);
            var mothers = books.Queens.Select(books.MotherOf).OfType<Projections.Lineage.LinkRow>().Select(link => link.FromId).Distinct().Order().ToList();
            Write(parsed.GetValue(queens)!, new Answer(QueenColumns, [.. books.Queens.Select(queen => (object?[])[Name(queen), books.MotherOf(queen) is { } link ? Name(link.FromId) : "", books.MotherOf(queen) is { } mother ? $"of {Name(mother.FromId)}" : "", Birth(books, register, queen)])]));
            Write(parsed.GetValue(matings)!, new Answer(MatingColumns, [.. mothers.Select(mother => (object?[])[$"of {Name(mother)}", Name(mother), string.Join(';', books.DronesOf(mother).Select(link => Name(link.FromId))), books.EffectiveDrones(mother)])]));
            await parsed.InvocationConfiguration.Output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{books.Queens.Count:N0} queens and {mothers.Count:N0} matings written."));
            return Exit.Done;
        });
        return Help.WithExample(command, "lineage --outfit demo export-pedigree queens.csv matings.csv\nlineage relate queens.csv --matings matings.csv\nlineage --outfit demo export-pedigree queens.csv matings.csv --ids");
    }

    public static System.CommandLine.Command Import()
    {
        var queens = new Argument<FileInfo>("QUEENS") { Description = "CSV of the queens: id, mother, and where known mating and birth (a day, days between as 2026-05-10/2026-07-02, or a year)." };
        var matings = new Option<FileInfo?>("--matings") { Description = "CSV of the matings: mating, queen, dpqs (divided by ';'; none: open), n (empty: 12).", HelpName = "FILE" };
        var command = new System.CommandLine.Command("import-pedigree", "Record the queens of a pedigree with their mothers and matings, all or nothing. Twice adds nothing; queens that the books know keep what is known of them.") { queens, matings };
        command.Does(async (parsed, cancel) =>
        {
            var sheet = Relate.Read(parsed.GetValue(queens)!);
            await using var ledger = await Shared.OpenAsync(parsed, make: true, cancel);
            var register = (await ledger.RowsAsync(Questions.Register, Ask.Everything, cancel)).Where(row => row.Kind == SubjectKind.Queen).ToList();
            var books = new BooksPedigree(await ledger.RowsAsync(Questions.Lineage, Ask.Everything, cancel), register.Select(queen => (queen.Id, queen.Name)));
            var known = register.GroupBy(queen => queen.Name).Where(same => same.Count() == 1).ToDictionary(same => same.Key, same => new QueenId(same.First().Id));
            var (entries, refusals) = PedigreeEntries.Of(Relate.Queens(sheet, parsed.GetValue(matings) is not null), parsed.GetValue(matings) is { } second ? Relate.Matings(Relate.Read(second)) : [], Births(sheet), known, books, new Clock(TimeProvider.System).Today);
            if (refusals.Count > 0) throw new RefusedException(refusals);
            // What was recorded from this sheet on an earlier day stays as it was then.
            var there = (await ledger.EntriesAsync([.. entries.Select(entry => entry.Id)], cancel)).Select(line => line.Entry.Id).ToHashSet();
            List<Entry> fresh = [.. entries.Where(entry => !there.Contains(entry.Id))];
            var receipt = fresh.Count == 0 ? new Ledger.Receipt([], [], []) : await ledger.RecordAsync(fresh, cancel);
            if (receipt.Refusals.Count > 0) throw new RefusedException(receipt.Refusals);
            await parsed.InvocationConfiguration.Output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{receipt.New.Count:N0} entries recorded from {sheet.Rows.Count:N0} queens; {there.Count:N0} were there before."));
            if (receipt.New.Count > 0) await parsed.InvocationConfiguration.Output.WriteLineAsync($"All of it is one act: lineage void --act {entries[0].Act} --why … takes it back.");
            return Exit.Done;
        });
        return Help.WithExample(command, "lineage import-pedigree queens.csv --matings matings.csv");
    }

    private static List<BirthLine> Births(Sheet sheet) =>
        sheet.Columns.Contains("birth") && sheet.At("birth") is var birth && sheet.At("id") is var id ? [.. sheet.Rows.Select(row => new BirthLine(row.Row, row.Cells[id], row.Cells[birth]))] : [];

    private static string Birth(BooksPedigree books, Dictionary<Guid, Projections.Register.RegisterRow> register, Guid queen) =>
        books.MotherOf(queen) is { OnTo: { } day } link ? new Occurred(day, link.OnFrom < day ? link.OnFrom!.Value.AddDays(-1) : null).ToString()
        : register.GetValueOrDefault(queen)?.Began is { } began ? new Occurred(began).ToString() : "";

    private static void Write(FileInfo file, Answer answer)
    {
        using var writer = new StreamWriter(file.FullName, append: false, new UTF8Encoding(false));
        AnswerCsv.Write(writer, answer);
    }
}
