using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Support;

namespace ColonyLineage.Server.Tests;

/// <summary>Whatever is sent, the answer is a receipt or a problem with a name, and never that the server failed.</summary>
public class FuzzTests(RunningServer server) : IClassFixture<RunningServer>
{
    private static readonly HttpStatusCode[] Fine =
        [HttpStatusCode.OK, HttpStatusCode.BadRequest, HttpStatusCode.Conflict, HttpStatusCode.RequestEntityTooLarge, HttpStatusCode.UnsupportedMediaType, HttpStatusCode.UnprocessableEntity];

    [Fact]
    public async Task Thousands_of_broken_bodies()
    {
        const int Seed = 20260901;
        var random = new Random(Seed);
        var samples = Directory.GetFiles(Path.Combine(Repository.Root, "tests", "Core", "Entries", "Samples"), "*.json").Order(StringComparer.Ordinal)
            .Select(file => Entry(file)).ToList();
        var told = new Told();
        await server.RecordAsync(told.Opened("Fuzz"), told.Colony("z1", "1", out var colony), told.Colony("z2", "2", out _));
        var requests = Requests(told, colony).ToList();
        var failures = new List<string>();
        for (var i = 0; i < 4000 && failures.Count < 5; i++)
        {
            var (path, body) = random.Next(3) > 0
                ? ("/entries", (JsonNode)new JsonArray(samples[random.Next(samples.Count)].DeepClone()))
                : requests[random.Next(requests.Count)] is var request ? (request.Path, request.Body.DeepClone()) : default;
            for (var n = random.Next(1, 4); n > 0; n--) body = Mutate(random, body);
            var bytes = Encoding.UTF8.GetBytes(body.ToJsonString());
            if (random.Next(4) == 0) bytes = Break(random, bytes);
            var (response, text) = await server.PostAsync(path, bytes);
            if (!Fine.Contains(response.StatusCode) || (response.StatusCode != HttpStatusCode.OK && response.Content.Headers.ContentType?.MediaType != "application/problem+json"))
                failures.Add($"seed {Seed}, number {i}: {path} {(int)response.StatusCode} {Encoding.UTF8.GetString(bytes)} -> {text}");
        }

        Assert.Empty(failures);
        // And whatever was taken in, the pages and answers still work.
        foreach (var path in new[] { "/", "/queens-by-age", "/queens-by-age?format=csv", "/register?format=json", "/conflicts?format=json", "/entries?format=csv", "/kept-aside" })
            Assert.Equal(HttpStatusCode.OK, (await server.GetAsync(path)).Response.StatusCode);
    }

    [Fact]
    public async Task Hundreds_of_broken_addresses()
    {
        const int Seed = 20260902;
        var random = new Random(Seed);
        string[] names = ["yard", "spot", "colony", "queen", "season", "as-of", "known-at", "seasons-back", "few", "sure", "since", "contacts-of", "descendants-of", "kind", "act", "state", "course", "of", "page"];
        string[] values = ["", "1", "-1", "yes", "%00", "%", "%ff", "%ed%a0%80", "9999-12-31", "0001-01-01", "2999-12-31T23:59:59Z", "99999999999999999999", "'", "\"; drop", "😀", new string('x', 300), "2026-02-30", "NaN", "Kiln", "all"];
        for (var i = 0; i < 600; i++)
        {
            var question = Answers.Answering.Names[random.Next(Answers.Answering.Names.Count)];
            var query = string.Join('&', Enumerable.Range(0, random.Next(1, 4)).Select(_ => $"{names[random.Next(names.Length)]}={values[random.Next(values.Length)]}"));
            var (response, text) = await server.GetAsync($"/{question}?{query}&format={(random.Next(2) == 0 ? "json" : "csv")}");
            Assert.True(response.StatusCode is HttpStatusCode.OK or HttpStatusCode.BadRequest, $"seed {Seed}, number {i}: {question}?{query} {(int)response.StatusCode} {text}");
        }
    }

    private static JsonObject Entry(string file)
    {
        var sample = JsonNode.Parse(File.ReadAllBytes(file))!.AsObject();
        sample["kind"] ??= Path.GetFileNameWithoutExtension(file);
        return sample;
    }

    private static IEnumerable<(string Path, JsonNode Body)> Requests(Told told, ColonyId colony)
    {
        JsonObject Of(params (string, JsonNode?)[] fields) =>
            new([KeyValuePair.Create<string, JsonNode?>("act", Guid.NewGuid().ToString()), KeyValuePair.Create<string, JsonNode?>("on", "2026-08-01"), .. fields.Select(field => KeyValuePair.Create(field.Item1, field.Item2))]);
        var (yard, id) = (told.Yard.ToString(), colony.ToString());
        yield return ("/acts/treat-yard", Of(("yard", yard), ("except", new JsonArray("2")), ("dose", new JsonObject { ["course"] = "T", ["doses"] = 0.5, ["amount"] = new JsonObject { ["amount"] = 5, ["unit"] = "g" } })));
        yield return ("/acts/combine", Of(("colony", id), ("into", Guid.NewGuid().ToString()), ("killed", "ofTheOneThatEnds")));
        yield return ("/acts/split", Of(("number", "n"), ("isNuc", true), ("makers", new JsonArray(new JsonObject { ["colony"] = id, ["framesOfBees"] = 3.5, ["framesOfBrood"] = 2 }))));
        yield return ("/acts/move-colonies", Of(("moves", new JsonArray(new JsonObject { ["colony"] = id, ["to"] = new JsonObject { ["yard"] = yard, ["number"] = "8" } }))));
        yield return ("/acts/visit-page", Of(("yard", yard), ("rows", new JsonArray(new JsonObject { ["spot"] = "1", ["look"] = new JsonObject { ["framesOfBees"] = 8, ["signs"] = new JsonArray("spots") }, ["wash"] = new JsonObject { ["mites"] = 2, ["bees"] = 300 } }))));
        yield return ("/acts/void-entries", Of(("entries", new JsonArray(Guid.NewGuid().ToString())), ("why", "wrong")));
        yield return ("/acts/record-one", EntryJson.WriteTagged(told.Wash(colony)));
        yield return ("/voids", new JsonObject { ["entries"] = new JsonArray(Guid.NewGuid().ToString()), ["why"] = "wrong" });
        yield return ("/entries", new JsonObject { ["acts"] = new JsonArray(RunningServer.Tagged(told.Wash(colony)), RunningServer.Tagged(told.Wash(colony))) });
    }

    /// <summary>Replaces, removes, doubles or adds one thing somewhere in it.</summary>
    private static JsonNode Mutate(Random random, JsonNode root)
    {
        var all = new List<JsonNode>();
        Collect(root, all);
        var at = all[random.Next(all.Count)];
        switch (at)
        {
            case JsonObject fields when random.Next(3) == 0:
                fields[random.Next(2) == 0 ? "extra" : "\u0000"] = Value(random);
                return root;
            case JsonObject { Count: > 0 } fields when random.Next(2) == 0:
                fields.Remove(fields.ElementAt(random.Next(fields.Count)).Key);
                return root;
            case JsonArray list when random.Next(2) == 0:
                list.Add(list.Count > 0 && random.Next(2) == 0 ? list[0]?.DeepClone() : Value(random));
                return root;
            case { Parent: null }:
                return random.Next(20) == 0 ? Value(random) ?? new JsonArray() : root;
            default:
                at.ReplaceWith(Value(random));
                return root;
        }
    }

    private static void Collect(JsonNode? node, List<JsonNode> all)
    {
        if (node is null) return;
        all.Add(node);
        if (node is JsonObject fields) foreach (var (_, field) in fields) Collect(field, all);
        else if (node is JsonArray list) foreach (var one in list) Collect(one, all);
    }

    private static JsonNode? Value(Random random) => random.Next(22) switch
    {
        0 => null, 1 => true, 2 => -1, 3 => 0.5, 4 => int.MaxValue, 5 => long.MinValue, 6 => 1e300, 7 => decimal.MaxValue, 8 => "", 9 => " ", 10 => "\u0000", 11 => "x\u0007y", 12 => new string('y', 5000),
        13 => "0001-01-01", 14 => "9999-12-31", 15 => "0001-01-01/9999-12-31", 16 => "00000000-0000-0000-0000-000000000000", 17 => Guid.NewGuid().ToString(), 18 => new JsonArray(), 19 => new JsonObject(),
        20 => new JsonArray(null, 1, "a"), _ => "'); drop schema tests cascade; --",
    };

    private static byte[] Break(Random random, byte[] bytes)
    {
        if (bytes.Length == 0) return [0xFF];
        switch (random.Next(4))
        {
            case 0: return bytes[..random.Next(bytes.Length)];
            case 1: bytes[random.Next(bytes.Length)] = (byte)random.Next(256); return bytes;
            case 2: return [.. bytes, .. bytes];
            default:
                var at = random.Next(bytes.Length);
                return [.. bytes[..at], .. "\\ud800"u8, .. bytes[at..]];
        }
    }
}
