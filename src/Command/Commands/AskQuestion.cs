using System.CommandLine;
using System.Globalization;
using ColonyLineage.Command.Output;
using ColonyLineage.Server;
using ColonyLineage.Server.Answers;
using ColonyLineage.Server.Api;

namespace ColonyLineage.Command.Commands;

/// <summary>An answer on the terminal or for another program.</summary>
internal static class AskQuestion
{
    public static System.CommandLine.Command Command()
    {
        var question = new Argument<string>("QUESTION") { Description = string.Join(", ", Answering.Names) };
        question.AcceptOnlyFromAmong([.. Answering.Names]);
        var format = new Option<string>("--format") { Description = "table for people, json or csv with every column and the entries each row rests on.", DefaultValueFactory = _ => "table" };
        format.AcceptOnlyFromAmong("table", "json", "csv");
        Option[] options =
        [
            Text("--yard", "Y", "One yard, by name or id."), Text("--spot", "S", "One spot, by its number."), Text("--colony", "C", "One colony, by number or id."), Text("--queen", "Q", "One queen, by name or id."),
            Text("--season", "N", "One season, by the year in which it starts."), Text("--as-of", "DAY", "As things were at the end of a day, by what is known now."),
            Text("--known-at", "INSTANT", "By what the books held at an instant; a day means all of it."), Text("--seasons-back", "N", "queens-by-age: born N seasons back or more."),
            Flag("--few", "queens-by-age: colonies whose bees are few."), Text("--sure", "HOW", "queens-by-age: certain, possible or unknown."),
            Text("--of", "N", "queens-by-age: born in one season."),
            Text("--course", "COURSE", "dose-completeness: one course, by its name."), Text("--state", "STATE", "dose-completeness: owed, complete or too-many; conflicts: open or settled."),
            Text("--descendants-of", "X", "lineage: all that came of a queen or colony."), Text("--ancestors-of", "X", "lineage: all that a queen or colony came of."),
            Text("--contacts-of", "X", "lineage: every colony that shared frames, a yard or a parent with it since a day."), Text("--since", "DAY", "The first day of those contacts."),
            Flag("--living", "Of descendants and ancestors, and of queens compared: only those that live."), Text("--kind", "KIND", "entries: one kind, for instance washed."), Text("--act", "ACT", "entries: one act, by its id."),
            Flag("--rounds", "mite-watch: what the washes of each round say of a yard."),
            Flag("--groups", "mite-watch: the washes by what the colonies were given, and by first, second, third wash."),
            Flag("--pooled", "mite-watch: the washes pooled by yard and by first, second, third wash."),
            Text("--on", "DAY", "owed-work, load-list: for a day, which may be to come."), Text("--round", "ROUND", "owed-work, load-list: the yards of a planned round, in its order."),
            Text("--work", "WORK", "owed-work: one kind of work, for instance transfer."),
            Text("--period", "PERIOD", "wintering: winter, summer or year."), Text("--winter", "YEAR", "wintering, paradox: the winter that starts in a calendar year."),
            Text("--by", "WHAT", "wintering: all, yard, line, queenAge or treatment; paradox: the last three; line-comparison: line, mother, queen or maker."),
            Text("--trait", "TRAIT", "line-comparison, line-pairs: strength, honey, temper, broodPattern, mitesFirst, mitesLast, miteGrowth, winterLosses or queenGone."),
            Flag("--pedigree", "line-comparison by mother: predictions with mothers related as the pedigree has it (BLUP with A). By queen they always are."),
            Text("--with", "Q", "relationship: the other queen, by name or id; all that live where none is named."),
            Text("--drones", "QUEENS", "planned-mating: drone-producing queens by name or id, divided by ';'. None: in the open."),
            Text("--effective", "N", "planned-mating: effective number of drones (12)."), Text("--alleles", "K", "planned-mating: effective number of sex alleles (10)."),
            Text("--counted", "FROM", "how-long: from the beginning of colonies of known age, or of all from the day they came into the books."),
            Text("--count-by", "COLUMNS", "How many rows there are of each combination of these columns, with commas between them."),
        ];
        var command = new System.CommandLine.Command("ask", "Ask the books a question.") { question, format };
        foreach (var option in options) command.Options.Add(option);
        command.Does(async (parsed, cancel) =>
        {
            var name = parsed.GetValue(question)!;
            var asked = Query.Read(name, options.Select(option => KeyValuePair.Create(option.Name.TrimStart('-'), Said(parsed, option))));
            await using var ledger = await Shared.OpenAsync(parsed, make: false, cancel);
            var clock = new Clock(TimeProvider.System);
            var answer = await new Answering(ledger, new ReadCache(ledger), clock).AnswerAsync(name, asked, cancel);
            var output = parsed.InvocationConfiguration.Output;
            switch (parsed.GetValue(format))
            {
                case "json":
                    using (var buffer = new MemoryStream())
                    {
                        AnswerJson.Write(buffer, name, asked, clock.Today, answer);
                        await output.WriteLineAsync(System.Text.Encoding.UTF8.GetString(buffer.GetBuffer(), 0, (int)buffer.Length));
                    }

                    break;
                case "csv":
                    AnswerCsv.Write(output, answer);
                    break;
                default:
                    AnswerTable.Write(output, name, answer);
                    await parsed.InvocationConfiguration.Error.WriteLineAsync(answer.Rows.Count == 1 ? "1 row" : string.Create(CultureInfo.InvariantCulture, $"{answer.Rows.Count:N0} rows"));
                    break;
            }

            await output.FlushAsync(cancel);
            return Exit.Done;
        });
        return Help.WithExample(
            command,
            "lineage --outfit demo ask queens-by-age --seasons-back 2 --few\n"
            + "lineage --outfit demo ask dose-completeness --season 2026 --format csv\n"
            + "lineage --outfit demo ask lineage --contacts-of 118 --since 2026-05-01");
    }

    private static Option<string?> Text(string name, string help, string description) => new(name) { HelpName = help, Description = description };

    private static Option<bool> Flag(string name, string description) => new(name) { Description = description };

    private static string? Said(ParseResult parsed, Option option) => option switch
    {
        Option<bool> flag => parsed.GetValue(flag) ? "yes" : null,
        Option<string?> text => parsed.GetValue(text),
        _ => null,
    };
}
