using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using ColonyLineage.Command.Output;
using ColonyLineage.Entries;
using ColonyLineage.Server.Answers;

namespace ColonyLineage.Command.Commands;

/// <summary>Everything out of the books, in a form that needs no program of ours.</summary>
internal static class Export
{
    public static System.CommandLine.Command Command()
    {
        var file = new Argument<string>("FILE") { Description = "Where to; - for standard output." };
        var command = new System.CommandLine.Command("export", "Write every entry ever recorded, voids included: a line of JSON each, with when it was recorded. 'record --restore' loads it back.") { file };
        command.Does(async (parsed, cancel) =>
        {
            var path = parsed.GetValue(file)!;
            var output = parsed.InvocationConfiguration.Output;
            await using var ledger = await Shared.OpenAsync(parsed, make: false, cancel);
            if (path == "-")
            {
                await WriteAsync(output);
                await output.FlushAsync(cancel);
                return Exit.Done;
            }

            // Under another name until it is whole, so that a file that is there is complete.
            var part = path + ".part";
            var all = (await ledger.StatusAsync(false, cancel)).Entries;
            var count = await Progress.RunAsync(parsed.InvocationConfiguration.Error, "exporting", async progress =>
            {
                await using var to = new StreamWriter(part);
                return await WriteAsync(to, written => progress.Report(("exporting", all == 0 ? 1 : (double)written / all)));
            });
            File.Move(part, path, overwrite: true);
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{count:N0} entries written to {path}"));
            return Exit.Done;

            async Task<long> WriteAsync(TextWriter to, Action<long>? written = null)
            {
                var lines = 0L;
                await foreach (var (entry, at) in ledger.ReadAllAsync(cancel))
                {
                    await to.WriteAsync(new JsonObject { ["recorded"] = AnswerJson.Text(at), ["entry"] = EntryJson.WriteTagged(entry) }.ToJsonString(AnswerJson.Plain));
                    await to.WriteAsync('\n');
                    if (++lines % 1000 == 0) written?.Invoke(lines);
                }

                return lines;
            }
        });
        return Help.WithExample(command, "lineage export books.jsonl\nlineage --outfit copy record --restore books.jsonl");
    }
}
