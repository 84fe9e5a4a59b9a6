using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;

namespace ColonyLineage.Server.Tests;

/// <summary>Long work as jobs: taken on at once, done in the queue, seen at /jobs.</summary>
public class JobsTests(RunningServer server) : IClassFixture<RunningServer>
{
    private const string Map = """
        { "name": "jobs", "key": "{colony}", "dates": ["yyyy-MM-dd"], "create": ["colonies"],
          "entries": [ { "kind": "washed", "on": "{day}", "colony": "{colony}", "mites": "{mites}", "bees": "{bees}" } ] }
        """;

    [Fact]
    public async Task A_rebuild_runs_to_its_end()
    {
        var (response, body) = await server.PostAsync("/rebuild", new JsonObject());
        Assert.Equal(HttpStatusCode.Accepted, response.StatusCode);
        Assert.Equal("done", (await DoneAsync(response, body))["state"]!.GetValue<string>());
    }

    [Fact]
    public async Task A_sheet_is_tried_then_recorded_and_a_second_time_adds_nothing()
    {
        const string Sheet = "colony,day,mites,bees\r\nj1,2026-08-01,3,300\r\nj2,2026-08-01,0,310\r\n";
        var (response, body) = await ImportAsync(Sheet, Map, "?dry-run=yes");
        Assert.Equal((HttpStatusCode.OK, 2), (response.StatusCode, JsonNode.Parse(body)!["entries"]!["washed"]!.GetValue<int>()));
        Assert.Empty(await server.RowsAsync("/mite-watch?colony=j1&format=json"));

        (response, body) = await ImportAsync(Sheet, Map);
        Assert.Equal(HttpStatusCode.Accepted, response.StatusCode);
        Assert.StartsWith("4 entries recorded from 2 rows; 0 were there before. Act ", (await DoneAsync(response, body))["outcome"]!.GetValue<string>());
        Assert.Single(await server.RowsAsync("/mite-watch?colony=j1&format=json"));
        (response, body) = await ImportAsync(Sheet, Map);
        Assert.StartsWith("0 entries recorded from 2 rows; ", (await DoneAsync(response, body))["outcome"]!.GetValue<string>());
    }

    [Fact]
    public async Task Bad_cells_are_told_by_row_and_column_and_nothing_is_recorded_unless_they_are_skipped()
    {
        const string Sheet = "colony,day,mites,bees\r\nb1,2026-08-01,3,300\r\nb2,yesterday,0,310\r\n";
        var (response, body) = await ImportAsync(Sheet, Map.Replace("\"jobs\"", "\"bad\""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.Equal("row 3, day", Told.Problem(body).Fields.Single());
        Assert.Empty(await server.RowsAsync("/mite-watch?colony=b1&format=json"));
        (response, body) = await ImportAsync(Sheet, Map.Replace("\"jobs\"", "\"bad\""), "?skip-bad=yes");
        Assert.Equal("done", (await DoneAsync(response, body))["state"]!.GetValue<string>());
        Assert.Single(await server.RowsAsync("/mite-watch?colony=b1&format=json"));
    }

    [Fact]
    public async Task What_is_no_sheet_or_no_mapping_is_refused()
    {
        var (response, _) = await server.PostAsync("/import", new JsonObject());
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, response.StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await ImportAsync("a,b\r\n", Map)).Response.StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await ImportAsync("a,b\r\n1,2\r\n", "{")).Response.StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await ImportAsync(null, Map)).Response.StatusCode);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await ImportAsync(new string('x', 150_000), Map)).Response.StatusCode);
        var (broken, body) = await server.PostAsync("/import", "no form"u8.ToArray(), "multipart/form-data; boundary=x");
        Assert.Equal((HttpStatusCode.BadRequest, ServerRefusals.Malformed), (broken.StatusCode, Told.Problem(body).Name));
    }

    private async Task<(HttpResponseMessage Response, string Body)> ImportAsync(string? sheet, string map, string query = "")
    {
        using var form = new MultipartFormDataContent();
        if (sheet is not null) form.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(sheet)), "sheet", "sheet.csv");
        form.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(map)), "map", "map.json");
        using var request = new HttpRequestMessage(HttpMethod.Post, "/import" + query) { Content = form };
        return await server.SendAsync(request);
    }

    private async Task<JsonNode> DoneAsync(HttpResponseMessage response, string body)
    {
        Assert.True(response.StatusCode == HttpStatusCode.Accepted, body);
        while (true)
        {
            var job = JsonNode.Parse((await server.GetAsync(response.Headers.Location!.ToString())).Body)!;
            if (job["state"]!.GetValue<string>() is "done" or "failed") return job;
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }
    }
}
