using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using ColonyLineage.Command.Output;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Server;
using ColonyLineage.Server.Acts;
using ColonyLineage.Server.Api;
using ColonyLineage.Server.Messages;

namespace ColonyLineage.Command.Commands;

/// <summary>Entries or an act from a file.</summary>
internal static class Record
{
    public static System.CommandLine.Command Command()
    {
        var file = new Argument<string>("FILE") { Description = "JSON: a list of entries, {\"acts\": [[…], […]]}, or the lines of an export; - for standard input." };
        var act = new Option<string?>("--do") { Description = $"FILE is the request of an act: {string.Join(", ", ActCatalogue.Names)}.", HelpName = "ACT" };
        act.AcceptOnlyFromAmong([.. ActCatalogue.Names]);
        var restore = new Option<bool>("--restore") { Description = "FILE is an export, and goes into an empty outfit as it was, recorded instants included." };
        var command = new System.CommandLine.Command("record", "Record entries or an act. Twice changes nothing.") { file, act, restore };
        command.Does(async (parsed, cancel) =>
        {
            var clock = new Clock(TimeProvider.System);
            var bytes = await ReadAsync(parsed.GetValue(file)!, cancel);
            if (parsed.GetValue(act) is { } name)
            {
                var request = ActsApi.Read(name, StrictJson.Parse(bytes));
                await using var books = await Shared.OpenAsync(parsed, make: true, cancel);
                return await Say(parsed, [await RunActHandler.HandleAsync(new RunAct(request), books, clock, cancel)]);
            }

            var acts = Acts(bytes);
            await using var ledger = await Shared.OpenAsync(parsed, make: true, cancel);
            if (parsed.GetValue(restore)) return await RestoreAsync(parsed, ledger, acts, cancel);
            return await Progress.RunAsync(parsed.InvocationConfiguration.Error, "recording", async progress =>
            {
                var receipts = new List<Receipt>();
                foreach (var recorded in acts)
                {
                    receipts.Add(await RecordActHandler.HandleAsync(new RecordAct([.. recorded.Select(one => one.Entry)]), ledger, clock, cancel));
                    progress.Report(("recording", (double)receipts.Count / acts.Count));
                }

                return await Say(parsed, receipts);
            });
        });
        return Help.WithExample(command, "lineage record visit.json\nlineage record --do combine combine.json\nlineage --outfit copy record --restore books.jsonl");
    }

    private static async Task<int> RestoreAsync(ParseResult parsed, OutfitLedger ledger, IReadOnlyList<IReadOnlyList<Recorded>> acts, CancellationToken cancel)
    {
        if (acts.SelectMany(act => act).Any(one => one.At == default))
            throw new RefusedException(new Refusal(Refusals.Missing, "recorded", "Only an export can be restored: each of its lines says when the entry was recorded."));
        await Empty.RequireAsync(ledger, cancel);
        await Progress.RunAsync(parsed.InvocationConfiguration.Error, "restoring", async progress =>
        {
            await ledger.LoadAsync(acts.SelectMany(act => act).OrderBy(one => one.At), progress, cancel);
            return true;
        });
        await parsed.InvocationConfiguration.Output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{acts.Sum(act => act.Count):N0} entries restored."));
        return Exit.Done;
    }

    private static async Task<int> Say(ParseResult parsed, IReadOnlyList<Receipt> receipts)
    {
        var refusals = receipts.SelectMany(receipt => receipt.Refusals).ToList();
        var (fresh, known) = (receipts.Sum(receipt => receipt.New.Count), receipts.Sum(receipt => receipt.Known.Count));
        if (fresh + known > 0 || refusals.Count == 0)
            await parsed.InvocationConfiguration.Output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{fresh:N0} entries recorded; {known:N0} were there before."));
        return refusals.Count > 0 ? throw new RefusedException(refusals) : Exit.Done;
    }

    private static async Task<byte[]> ReadAsync(string file, CancellationToken cancel)
    {
        if (file != "-") return await File.ReadAllBytesAsync(file, cancel);
        using var all = new MemoryStream();
        await using var input = Console.OpenStandardInput();
        await input.CopyToAsync(all, cancel);
        return all.ToArray();
    }

    /// <summary>The acts in a file, in the order in which they begin in it. Without an instant where the file gives none.</summary>
    private static IReadOnlyList<IReadOnlyList<Recorded>> Acts(byte[] bytes)
    {
        var nodes = IsLines(bytes) ? Lines(bytes) : StrictJson.Parse(bytes) switch
        {
            JsonArray list => list.ToList(),
            JsonObject { Count: 1 } wrapped when wrapped["acts"] is JsonArray acts && acts.All(act => act is JsonArray) => acts.SelectMany(act => (JsonArray)act!).ToList(),
            JsonObject one => [one],
            _ => throw new RefusedException(new Refusal(ServerRefusals.Malformed, "", "Give a list of entries, {\"acts\": [[…], […]]}, or the lines of an export.")),
        };
        var (entries, refusals) = EntriesApi.ReadAll(new JsonArray([.. nodes.Select(node => (node is JsonObject { } line && line["entry"] is JsonObject entry ? entry : node)?.DeepClone())]));
        if (refusals.Count > 0) throw new RefusedException(refusals);
        return [.. entries.Select((entry, i) => new Recorded(entry, InstantOf(nodes[i]))).GroupBy(one => one.Entry.Act).Select(act => act.ToList())];
    }

    // An export has one object on each line; any other JSON of ours begins with a bracket or stands on several lines.
    private static bool IsLines(byte[] bytes) => bytes.AsSpan().TrimStart(" \t\r\n"u8).StartsWith("{\"recorded\""u8);

    private static List<JsonNode?> Lines(byte[] bytes)
    {
        var nodes = new List<JsonNode?>();
        var text = Encoding.UTF8.GetString(bytes);
        var number = 0;
        foreach (var line in text.Split('\n'))
        {
            number++;
            if (string.IsNullOrWhiteSpace(line)) continue;
            try
            {
                nodes.Add(StrictJson.Parse(Encoding.UTF8.GetBytes(line)));
            }
            catch (RefusedException refused)
            {
                throw new RefusedException([.. refused.Refusals.Select(refusal => refusal with { Field = $"line {number}" })]);
            }
        }

        return nodes;
    }

    private static DateTimeOffset InstantOf(JsonNode? node) =>
        node is JsonObject line && line["recorded"] is JsonValue value && value.TryGetValue(out string? text)
        && DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var at) ? at : default;
}

/// <summary>Whether an outfit has anything in its books.</summary>
internal static class Empty
{
    /// <summary>Refuses books that hold something.</summary>
    public static async Task RequireAsync(OutfitLedger ledger, CancellationToken cancel)
    {
        if ((await ledger.StatusAsync(false, cancel)).Entries > 0)
            throw new RefusedException(new Refusal("outfit-not-empty", "outfit", $"The outfit '{ledger.Outfit}' has entries already. Name another with --outfit."));
    }
}
