using System.Net;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;

namespace ColonyLineage.Server.Tests;

/// <summary>Acts as requests: decided by the books, recorded whole.</summary>
public class ActsTests(RunningServer server) : IClassFixture<RunningServer>
{
    [Fact]
    public async Task Half_a_dose_on_all_of_a_yard_but_one_spot()
    {
        var told = new Told();
        await server.RecordAsync(told.Opened("Treated"), told.Colony("t1", "1", out _), told.Colony("t4", "4", out _), told.Colony("t9", "9", out _));
        var request = Treat(told, 0.5m, "4");
        var (response, body) = await server.PostAsync("/acts/treat-yard", request);
        Assert.True(response.IsSuccessStatusCode, body);
        Assert.Equal(2, JsonNode.Parse(body)!["recorded"]!.AsArray().Count);
        Assert.Equal("known", JsonNode.Parse((await server.PostAsync("/acts/treat-yard", request)).Body)!["outcome"]!.GetValue<string>());

        // Of a season the whole yard answers: who had nothing is there with nothing.
        var rows = await server.RowsAsync("/dose-completeness?yard=Treated&season=2026&format=json");
        Assert.Equal([("t1", 0.5m), ("t4", 0m), ("t9", 0.5m)], rows.Select(row => (row!["colony"]!.GetValue<string>(), row["had"]!.GetValue<decimal>())).Order());
    }

    [Fact]
    public async Task The_books_are_asked_as_of_the_day_of_the_act_without_its_own_entries()
    {
        var told = new Told();
        await server.RecordAsync(told.Opened("Fixed"), told.Colony("dud", "1", out var dud), told.Colony("nuc", "2", out var nuc));
        var request = new JsonObject
        {
            ["act"] = Guid.NewGuid().ToString(), ["on"] = "2026-08-10", ["spot"] = new JsonObject { ["yard"] = told.Yard.ToString(), ["number"] = "1" }, ["nuc"] = nuc.ToString(), ["why"] = "drone layer",
        };
        var (response, body) = await server.PostAsync("/acts/fix-spot-with-nuc", request);
        Assert.True(response.IsSuccessStatusCode, body);

        // Now the nuc stands there; sent again the act must still find the dud.
        Assert.Equal("known", JsonNode.Parse((await server.PostAsync("/acts/fix-spot-with-nuc", request)).Body)!["outcome"]!.GetValue<string>());
        var register = await server.RowsAsync("/register?format=json");
        Assert.Equal("givenUp", register.Single(row => row!["id"]!.GetValue<string>() == dud.ToString())!["fate"]!.GetValue<string>());
        Assert.Equal("1", register.Single(row => row!["id"]!.GetValue<string>() == nuc.ToString())!["spot"]!.GetValue<string>());
    }

    [Fact]
    public async Task What_is_wrong_is_told_at_the_fields_of_the_request()
    {
        var told = new Told();
        await server.RecordAsync(told.Opened("Wrong"), told.Colony("w1", "1", out _));
        var (response, body) = await server.PostAsync("/acts/treat-yard", Treat(told, 9, "7"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.Equal(["dose.doses", "except[0]"], Told.Problem(body).Fields.Order());
        var (_, nobody) = await server.PostAsync("/acts/treat-yard", Treat(new Told(), 1));
        Assert.Equal(Refusals.NotFound, Told.Problem(nobody).Name);
        var extra = Treat(told, 1);
        extra["yrad"] = "x";
        Assert.Equal(Refusals.NotReadable, Told.Problem((await server.PostAsync("/acts/treat-yard", extra)).Body).Name);
        var none = await server.PostAsync("/acts/dance", new JsonObject());
        Assert.Equal((HttpStatusCode.NotFound, ServerRefusals.NothingHere), (none.Response.StatusCode, Told.Problem(none.Body).Name));
    }

    [Fact]
    public async Task Named_twice_and_nobody_there()
    {
        var told = new Told();
        await server.RecordAsync(told.Opened("Split"), told.Colony("s1", "1", out var maker));
        JsonObject Maker() => new() { ["colony"] = maker.ToString() };
        var twice = new JsonObject { ["act"] = Guid.NewGuid().ToString(), ["on"] = "2026-06-01", ["number"] = "s2", ["makers"] = new JsonArray(Maker(), Maker()) };
        Assert.Equal(Refusals.NamedTwice, Told.Problem((await server.PostAsync("/acts/split", twice)).Body).Name);
        var page = new JsonObject
        {
            ["act"] = Guid.NewGuid().ToString(), ["on"] = "2026-06-01", ["yard"] = told.Yard.ToString(), ["rows"] = new JsonArray(new JsonObject { ["spot"] = "77", ["note"] = "light" }),
        };
        Assert.Equal(Refusals.NobodyThere, Told.Problem((await server.PostAsync("/acts/visit-page", page)).Body).Name);
    }

    [Fact]
    public async Task One_entry_by_itself_must_speak_of_what_is_in_the_books()
    {
        var wash = EntryJson.WriteTagged(new Told().Wash(new ColonyId(Guid.NewGuid())));
        var (response, body) = await server.PostAsync("/acts/record-one", wash);
        Assert.Equal((HttpStatusCode.UnprocessableEntity, Refusals.NotFound, "colony"), (response.StatusCode, Told.Problem(body).Name, Told.Problem(body).Fields.Single()));
    }

    private static JsonObject Treat(Told told, decimal doses, params string[] except) => new()
    {
        ["act"] = Guid.NewGuid().ToString(), ["on"] = "2026-08-01", ["yard"] = told.Yard.ToString(), ["except"] = new JsonArray([.. except.Select(spot => (JsonNode)spot)]),
        ["dose"] = new JsonObject { ["course"] = "T", ["doses"] = doses },
    };
}
