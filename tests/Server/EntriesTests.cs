using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Support;

namespace ColonyLineage.Server.Tests;

/// <summary>Entries sent by devices, and what they are refused for. Problems are those of RFC 9457.</summary>
public class EntriesTests(RunningServer server) : IClassFixture<RunningServer>
{
    private static readonly string Cases = Path.Combine(Repository.Root, "tests", "Core", "Entries", "Refusals");

    public static TheoryData<string> RefusalCases => [.. Directory.GetFiles(Cases, "*.json").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)];

    [Fact]
    public async Task Sent_twice_changes_nothing_and_is_no_error()
    {
        var told = new Told();
        var body = RunningServer.Tagged(told.Opened("Twice"), told.Colony("tw1", "1", out _));
        var first = JsonNode.Parse((await server.PostAsync("/entries", body)).Body)!;
        var second = JsonNode.Parse((await server.PostAsync("/entries", body)).Body)!;
        Assert.Equal(("recorded", 2, 0), (first["outcome"]!.GetValue<string>(), first["recorded"]!.AsArray().Count, first["known"]!.AsArray().Count));
        Assert.Equal(("known", 0, 2), (second["outcome"]!.GetValue<string>(), second["recorded"]!.AsArray().Count, second["known"]!.AsArray().Count));
        Assert.Single(await server.RowsAsync("/register?yard=Twice&colony=tw1&format=json"), row => row!["name"]!.GetValue<string>() == "tw1");
    }

    [Fact]
    public async Task The_same_id_with_other_content_is_a_conflict_and_both_stay_visible()
    {
        var told = new Told();
        var colony = told.Colony("same1", "1", out _);
        await server.RecordAsync(told.Opened("Same"), colony);
        var (response, body) = await server.PostAsync("/entries", RunningServer.Tagged(colony with { Number = "same2" }));
        Assert.Equal(HttpStatusCode.Conflict, response.StatusCode);
        Assert.Equal(Refusals.SameIdOtherContent, Told.Problem(body).Name);
        Assert.Contains("same1", (await server.GetAsync($"/entries/{colony.Id}")).Body);
        var kept = JsonNode.Parse((await server.GetAsync("/kept-aside")).Body)!["kept_aside"]!.AsArray();
        Assert.Single(kept, one => one!["refusal"]!.GetValue<string>() == Refusals.SameIdOtherContent && one["payload"]!.GetValue<string>().Contains("same2"));
    }

    [Theory]
    [MemberData(nameof(RefusalCases))]
    public async Task Nonsense_is_refused_by_name_at_its_field_and_kept_aside(string name)
    {
        var wanted = JsonNode.Parse(File.ReadAllBytes(Path.Combine(Cases, name + ".json")))!;
        var (response, body) = await server.PostAsync("/entries", new JsonArray(wanted["entry"]!.DeepClone()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType!.MediaType);
        var (refusal, fields) = Told.Problem(body);
        Assert.Equal(name.Split('.')[0], refusal);
        Assert.Equal([$"entries[0].{wanted["field"]!.GetValue<string>()}".TrimEnd('.')], fields);
        var kept = JsonNode.Parse((await server.GetAsync("/kept-aside")).Body)!["kept_aside"]!.AsArray();
        Assert.Contains(kept, one => one!["refusal"]!.GetValue<string>() == refusal && JsonNode.DeepEquals(JsonNode.Parse(one["payload"]!.GetValue<string>()), wanted["entry"]));
    }

    [Fact]
    public async Task Of_an_act_with_one_bad_entry_nothing_is_recorded()
    {
        var told = new Told();
        var (opened, colony) = (told.Opened("None"), told.Colony("none1", "1", out var id));
        var (response, body) = await server.PostAsync("/entries", RunningServer.Tagged(opened, colony, told.Wash(id, mites: -1)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.Equal((Refusals.OutOfRange, "entries[2].mites"), (Told.Problem(body).Name, Told.Problem(body).Fields.Single()));
        Assert.Equal(HttpStatusCode.NotFound, (await server.GetAsync($"/entries/{colony.Id}")).Response.StatusCode);
    }

    [Fact]
    public async Task A_day_to_come_and_entries_of_several_acts_are_refused()
    {
        var told = new Told();
        var later = told.Opened("Later") with { On = new DateOnly(2026, 9, 3) };
        Assert.Equal(Refusals.DayInFuture, Told.Problem((await server.PostAsync("/entries", RunningServer.Tagged(later))).Body).Name);
        var several = await server.PostAsync("/entries", RunningServer.Tagged(new Told().Opened("One"), new Told().Opened("Two")));
        Assert.Equal(Refusals.SeveralActs, Told.Problem(several.Body).Name);
        Assert.Equal(Refusals.EmptyAct, Told.Problem((await server.PostAsync("/entries", new JsonArray())).Body).Name);
    }

    [Fact]
    public async Task Of_several_acts_each_has_its_own_outcome()
    {
        var (good, bad) = (new Told(), new Told());
        var acts = new JsonObject { ["acts"] = new JsonArray(RunningServer.Tagged(good.Opened("Good")), RunningServer.Tagged(bad.Opened("")), RunningServer.Tagged(good.Opened("Other"))) };
        var (response, body) = await server.PostAsync("/entries", acts);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        var answers = JsonNode.Parse(body)!["acts"]!.AsArray();
        Assert.Equal(["recorded", "refused", "recorded"], answers.Select(act => act!["outcome"]!.GetValue<string>()));
        Assert.Equal(bad.Act.ToString(), answers[1]!["act"]!.GetValue<string>());
        Assert.Equal("entries[0].name", answers[1]!["refusals"]![0]!["field"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("")]
    [InlineData("nothing")]
    [InlineData("null")]
    [InlineData("7")]
    [InlineData("{}")]
    [InlineData("{\"acts\":7}")]
    [InlineData("{\"acts\":[7]}")]
    [InlineData("[{\"kind\":\"washed.v1\",\"kind\":\"fed.v1\"}]")]
    [InlineData("[null]")]
    [InlineData("[{\"kind\":\"\\ud800\"}]")]
    [InlineData("[1] // twice")]
    [InlineData("[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]")]
    public async Task What_is_no_such_JSON_is_malformed(string text)
    {
        var (response, body) = await server.PostAsync("/entries", Encoding.UTF8.GetBytes(text));
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal(ServerRefusals.Malformed, Told.Problem(body).Name);
    }

    [Fact]
    public async Task Other_types_and_too_large_bodies_are_refused()
    {
        var (type, body) = await server.PostAsync("/entries", "[]"u8.ToArray(), "text/plain");
        Assert.Equal((HttpStatusCode.UnsupportedMediaType, ServerRefusals.WrongType), (type.StatusCode, Told.Problem(body).Name));
        var (large, told) = await server.PostAsync("/entries", Encoding.UTF8.GetBytes(new string(' ', 300_000) + "[]"));
        Assert.Equal((HttpStatusCode.RequestEntityTooLarge, ServerRefusals.TooLarge), (large.StatusCode, Told.Problem(told).Name));
        var (huge, most) = await server.PostAsync("/entries", new byte[3_000_000]);
        Assert.Equal((HttpStatusCode.RequestEntityTooLarge, ServerRefusals.TooLarge), (huge.StatusCode, Told.Problem(most).Name));
    }

    [Fact]
    public async Task What_is_not_there_and_methods_that_are_not_taken_are_told_as_problems()
    {
        var (none, body) = await server.GetAsync($"/entries/{Guid.NewGuid()}");
        Assert.Equal((HttpStatusCode.NotFound, Refusals.NotFound), (none.StatusCode, Told.Problem(body).Name));
        (none, body) = await server.GetAsync("/no/such/thing");
        Assert.Equal((HttpStatusCode.NotFound, ServerRefusals.NothingHere), (none.StatusCode, Told.Problem(body).Name));
        (none, body) = await server.PostAsync("/health", new JsonObject());
        Assert.Equal((HttpStatusCode.MethodNotAllowed, ServerRefusals.WrongMethod), (none.StatusCode, Told.Problem(body).Name));
    }

    [Fact]
    public async Task The_history_shows_a_voided_entry_with_the_void_and_answers_no_longer_count_it()
    {
        var told = new Told();
        await server.RecordAsync(told.Opened("Voids"), told.Colony("v1", "1", out var colony));
        var dose = new Told().Dose(colony, 1);
        await server.RecordAsync(dose);
        Assert.Single(await server.RowsAsync($"/dose-completeness?colony={colony}&format=json"));
        var (response, body) = await server.PostAsync("/voids", new JsonObject { ["entries"] = new JsonArray(dose.Id.ToString()), ["why"] = "it was colony 40", ["by"] = "Ida" });
        Assert.True(response.IsSuccessStatusCode, body);
        Assert.Empty(await server.RowsAsync($"/dose-completeness?colony={colony}&format=json"));
        var lines = JsonNode.Parse((await server.GetAsync($"/subjects/colony/{colony}/history")).Body)!["entries"]!.AsArray();
        var line = Assert.Single(lines, one => one!["entry"]!["kind"]!.GetValue<string>() == "treated.v1");
        Assert.Equal(("it was colony 40", "Ida"), (line!["void"]!["why"]!.GetValue<string>(), line["void"]!["by"]!.GetValue<string>()));

        // And the void itself cannot be voided.
        var voidId = line["void"]!["id"]!.GetValue<string>();
        (response, body) = await server.PostAsync("/voids", new JsonObject { ["entries"] = new JsonArray(voidId), ["why"] = "no" });
        Assert.Equal((HttpStatusCode.UnprocessableEntity, Refusals.VoidOfVoid), (response.StatusCode, Told.Problem(body).Name));
    }

    [Fact]
    public async Task A_whole_act_is_voided_once()
    {
        var told = new Told();
        await server.RecordAsync(told.Opened("Act"), told.Colony("a1", "1", out _), told.Colony("a2", "2", out _));
        var wrong = new JsonObject { ["ofAct"] = told.Act.ToString(), ["why"] = "wrong page" };
        var (response, body) = await server.PostAsync("/voids", wrong);
        Assert.True(response.IsSuccessStatusCode, body);
        Assert.Equal(3, JsonNode.Parse(body)!["recorded"]!.AsArray().Count);
        (response, body) = await server.PostAsync("/voids", wrong);
        Assert.Equal((HttpStatusCode.UnprocessableEntity, Refusals.NotFound), (response.StatusCode, Told.Problem(body).Name));
    }
}
