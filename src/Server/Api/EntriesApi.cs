using System.Text.Json;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Projections;
using ColonyLineage.Server.Answers;
using ColonyLineage.Server.Messages;
using Wolverine;

namespace ColonyLineage.Server.Api;

/// <summary>Entries in, as devices send them, and out, as the books hold them.</summary>
public sealed class EntriesApi(ServerOptions options)
{
    private const string Shape = "Send a list of entries of one act, each with its kind, or {\"acts\": [[…], […]]} with one such list an act.";

    internal void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/entries", Take);
        routes.MapGet("/entries/{id:guid}", One);
        routes.MapGet("/subjects/{kind}/{id:guid}/history", History);
    }

    private async Task Take(HttpContext context)
    {
        if (await Body.JsonAsync(context, options.BodyLimitBytes) is not { } body) return;
        switch (body)
        {
            case JsonArray entries:
                await OneAct(context, entries);
                break;
            case JsonObject { Count: 1 } wrapped when wrapped["acts"] is JsonArray acts && acts.All(act => act is JsonArray):
                await Acts(context, acts);
                break;
            case JsonObject entry when entry.ContainsKey("kind"):
                await OneAct(context, [entry.DeepClone()]);
                break;
            default:
                await Problem.Malformed(context, new Refusal(ServerRefusals.Malformed, "", Shape));
                break;
        }
    }

    private static async Task OneAct(HttpContext context, JsonArray entries)
    {
        var receipt = await Record(context, entries);
        if (receipt.Refusals.Count > 0) await Problem.Refused(context, receipt.Refusals);
        else await Receipts.Send(context, receipt);
    }

    // What one act is refused for says nothing of the others, so the answer is one for each.
    private static async Task Acts(HttpContext context, JsonArray acts)
    {
        var receipts = new List<(JsonNode? Act, Receipt Receipt)>();
        foreach (var act in acts)
            receipts.Add(((act as JsonArray)?.OfType<JsonObject>().FirstOrDefault()?["act"], await Record(context, (JsonArray)act!)));
        await Json.Send(context, json =>
        {
            json.WriteStartObject();
            json.WriteStartArray("acts");
            foreach (var (act, receipt) in receipts)
            {
                json.WriteStartObject();
                json.WritePropertyName("act");
                if (act is JsonValue value && value.TryGetValue(out string? id)) json.WriteStringValue(id);
                else json.WriteNullValue();
                Receipts.Write(json, receipt);
                if (receipt.Refusals.Count > 0)
                {
                    json.WritePropertyName("refusals");
                    Problem.Write(json, receipt.Refusals);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        });
    }

    private static async Task<Receipt> Record(HttpContext context, JsonArray tagged)
    {
        var (entries, refusals) = ReadAll(tagged);
        var receipt = refusals.Count > 0
            ? new Receipt([], [], refusals)
            : await context.RequestServices.GetRequiredService<IMessageBus>().InvokeAsync<Receipt>(new RecordAct(entries), context.RequestAborted);
        // The ledger itself keeps what bears an id that is taken; nonsense has nowhere else to be kept.
        if (receipt.Refusals.Count > 0 && receipt.Refusals.All(refusal => refusal.Name != Refusals.SameIdOtherContent))
            await KeepAside(context, tagged, receipt.Refusals);
        return receipt;
    }

    // Nothing of the act is recorded, so all of it is kept, the reasons beside the entries that they are about.
    private static async Task KeepAside(HttpContext context, JsonArray tagged, IReadOnlyList<Refusal> refusals)
    {
        var received = context.RequestServices.GetRequiredService<Clock>().Now.Instant;
        var kept = tagged.Select((entry, i) =>
        {
            var own = refusals.Where(refusal => refusal.Field == $"entries[{i}]" || refusal.Field.StartsWith($"entries[{i}].", StringComparison.Ordinal)).ToList();
            var (name, message) = own.Count > 0 ? (own[0].Name, string.Join(" ", own.Select(refusal => refusal.Message)))
                : (refusals[0].Name, $"Nothing of this act was recorded: {refusals[0].Message}");
            EntryId? id = entry is JsonObject one && one["id"] is JsonValue value && value.TryGetValue(out string? text) && Guid.TryParse(text, out var guid) ? new EntryId(guid) : null;
            return new KeptAside(id, received, name, WithoutControls(message), entry!.ToJsonString());
        });
        await context.RequestServices.GetRequiredService<OutfitLedger>().KeepAsideAsync([.. kept], context.RequestAborted);
    }

    // A message may repeat what was sent, and PostgreSQL's texts cannot hold all that JSON can.
    private static string WithoutControls(string message) => string.Concat(message.Select(c => char.IsControl(c) ? '\uFFFD' : c));

    /// <summary>Reads entries with their kinds; every one that cannot be read gives its reasons.</summary>
    public static (IReadOnlyList<Entry> Entries, IReadOnlyList<Refusal> Refusals) ReadAll(JsonArray tagged)
    {
        var entries = new List<Entry>(tagged.Count);
        var refusals = new List<Refusal>();
        for (var i = 0; i < tagged.Count; i++)
        {
            try
            {
                entries.Add(tagged[i] is JsonObject one ? EntryJson.ReadTagged(one) : throw new RefusedException(new Refusal(Refusals.NotReadable, "", "An entry is a JSON object.")));
            }
            catch (RefusedException refused)
            {
                refusals.AddRange(refused.Refusals.Select(refusal => refusal with { Field = $"entries[{i}].{refusal.Field}".TrimEnd('.') }));
            }
            catch (Exception problem) when (problem is FormatException or OverflowException or InvalidOperationException or ArgumentException)
            {
                refusals.Add(new Refusal(Refusals.NotReadable, $"entries[{i}]", "This cannot be read: a value is not of its kind."));
            }
        }

        return (entries, refusals);
    }

    private static async Task One(HttpContext context, Guid id, OutfitLedger ledger)
    {
        var lines = await ledger.EntriesAsync([new EntryId(id)], context.RequestAborted);
        if (lines.Count == 0) await Problem.Write(context, StatusCodes.Status404NotFound, Refusals.NotFound, "There is no such entry.", "The books hold no entry of this id.");
        else await Json.Send(context, json => Write(json, lines[0]));
    }

    private static async Task History(HttpContext context, string kind, Guid id, OutfitLedger ledger)
    {
        SubjectKind? known = kind switch { "colony" => SubjectKind.Colony, "queen" => SubjectKind.Queen, "yard" => SubjectKind.Yard, "outfit" => SubjectKind.Outfit, "store" => SubjectKind.Store, _ => null };
        if (known is not { } of)
        {
            await Problem.Write(context, StatusCodes.Status404NotFound, Refusals.NotFound, "There is no such kind of thing.", "Take one of colony, queen, yard, outfit, store.");
            return;
        }

        Asked asked;
        try
        {
            asked = Query.Read(Answering.History, context.Request.Query.SelectMany(pair => pair.Value, (pair, value) => KeyValuePair.Create(pair.Key, value)));
        }
        catch (RefusedException refused)
        {
            await Problem.Malformed(context, refused.Refusals[0]);
            return;
        }

        var lines = await ledger.HistoryAsync(of == SubjectKind.Outfit ? Subject.Outfit : of == SubjectKind.Store ? Subject.Store : new Subject(of, id), asked.Ask, context.RequestAborted);
        await Json.Send(context, json =>
        {
            json.WriteStartObject();
            json.WriteStartArray("entries");
            foreach (var line in lines) Write(json, line);
            json.WriteEndArray();
            json.WriteEndObject();
        });
    }

    private static void Write(Utf8JsonWriter json, HistoryLine line)
    {
        json.WriteStartObject();
        json.WritePropertyName("entry");
        EntryJson.WriteTagged(line.Entry).WriteTo(json);
        json.WriteString("recorded", AnswerJson.Text(line.Recorded.At));
        json.WritePropertyName("void");
        if (line.Void is { Entry: Voided @void } by)
        {
            json.WriteStartObject();
            json.WriteString("id", @void.Id.Value);
            json.WriteString("why", @void.Why);
            json.WriteString("by", @void.By);
            json.WriteString("recorded", AnswerJson.Text(by.At));
            json.WriteEndObject();
        }
        else
        {
            json.WriteNullValue();
        }

        json.WriteEndObject();
    }
}
