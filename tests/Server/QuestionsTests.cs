using System.Net;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Server.Tests;

/// <summary>Answers as data, at the addresses of the pages.</summary>
public class QuestionsTests(RunningServer server) : IClassFixture<RunningServer>
{
    public static TheoryData<string> Names => [.. Questions.All.Select(question => question.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Every_question_answers_as_JSON_and_as_CSV_under_the_names_of_its_columns(string question)
    {
        await Fill();
        var columns = Questions.All.Single(one => one.Name == question).Columns.Select(column => column.Name).ToList();
        var (json, body) = await server.GetAsync($"/{question}?format=json");
        Assert.Equal("application/json", json.Content.Headers.ContentType!.MediaType);
        var answer = JsonNode.Parse(body)!;
        Assert.Equal(question, answer["question"]!.GetValue<string>());
        foreach (var row in answer["rows"]!.AsArray()) Assert.Equal(columns, row!.AsObject().Select(field => field.Key));

        var (csv, text) = await server.GetAsync($"/{question}?format=csv");
        Assert.Equal("text/csv", csv.Content.Headers.ContentType!.MediaType);
        var lines = text.Split("\r\n");
        Assert.Equal(string.Join(',', columns), lines[0]);
        Assert.Equal("", lines[^1]);
        Assert.Equal(answer["rows"]!.AsArray().Count, lines.Length - 2);

        // Looking back to now folds the entries again, and gives the same.
        var (_, back) = await server.GetAsync($"/{question}?format=json&known-at=2999-01-01");
        Assert.Equal(answer["rows"]!.ToJsonString(), JsonNode.Parse(back)!["rows"]!.ToJsonString());
    }

    [Theory]
    [InlineData("text/html,application/xhtml+xml,*/*;q=0.8", "text/html")]
    [InlineData("*/*", "text/html")]
    [InlineData("application/json", "application/json")]
    [InlineData("text/csv", "text/csv")]
    public async Task The_page_and_the_data_have_one_address(string accept, string type)
    {
        var (response, _) = await server.GetAsync("/queens-by-age", accept);
        Assert.Equal((HttpStatusCode.OK, type), (response.StatusCode, response.Content.Headers.ContentType!.MediaType));
    }

    [Theory]
    [InlineData("queens-by-age?format=json&yrad=Kiln", ServerRefusals.UnknownParameter, "yrad")]
    [InlineData("queens-by-age?format=xml", Refusals.UnknownWord, "format")]
    [InlineData("queens-by-age?format=json&as-of=yesterday", Refusals.NotReadable, "as-of")]
    [InlineData("queens-by-age?format=json&season=0", Refusals.OutOfRange, "season")]
    [InlineData("queens-by-age?format=json&season=99999999999", Refusals.NotReadable, "season")]
    [InlineData("queens-by-age?format=json&yard=%00", Refusals.NotReadable, "yard")]
    [InlineData("queens-by-age?format=json&yard=a&yard=b", ServerRefusals.Malformed, "yard")]
    [InlineData("queens-by-age?format=json&sure=rather", Refusals.UnknownWord, "sure")]
    [InlineData("lineage?format=json&contacts-of=12", Refusals.Missing, "since")]
    [InlineData("lineage?format=json&descendants-of=nobody", Refusals.NotFound, "descendants-of")]
    [InlineData("entries?format=json&kind=dance", Refusals.UnknownKind, "kind")]
    public async Task What_cannot_be_asked_is_refused_by_name(string address, string name, string field)
    {
        var (response, body) = await server.GetAsync("/" + address);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal((name, field), (Told.Problem(body).Name, Told.Problem(body).Fields.Single()));
    }

    [Fact]
    public async Task A_name_that_looks_like_a_formula_is_a_text_in_CSV()
    {
        var told = new Told();
        await server.RecordAsync(told.Opened("=HYPERLINK(\"x\")"), told.Colony("@1, \"big\"", "-3", out _));
        var (_, csv) = await server.GetAsync("/spot-story?format=csv");
        Assert.Contains("\"'=HYPERLINK(\"\"x\"\")\",'-3,", csv);
        Assert.Contains(",\"'@1, \"\"big\"\"\",", csv);
        Assert.Contains("\"=HYPERLINK(\\\"x\\\")\"", (await server.GetAsync("/spot-story?format=json")).Body);
    }

    [Fact]
    public async Task Queens_two_seasons_back_with_how_surely_each_answers()
    {
        // Case Q1 and Q4 of the worked cases: a season starts on 1 March.
        var told = new Told();
        QueenId[] queens = [new(Guid.NewGuid()), new(Guid.NewGuid()), new(Guid.NewGuid())];
        await server.RecordAsync(
            told.Opened("Back"), told.Raised(queens[0], "old", new DateOnly(2024, 4, 20)), told.Raised(queens[1], "young", new DateOnly(2026, 5, 20)),
            told.Raised(queens[2], "either", new DateOnly(2025, 4, 1)) with { Born = new Occurred(new DateOnly(2025, 4, 1), new DateOnly(2024, 9, 1)) },
            told.Colony("b1", "1", out _, queens[0]), told.Colony("b2", "2", out _, queens[1]), told.Colony("b3", "3", out _, queens[2]), told.Colony("b4", "4", out _));
        var rows = await server.RowsAsync("/queens-by-age?yard=Back&seasons-back=2&format=json");
        Assert.Equal([("b1", "certain"), ("b3", "possible"), ("b4", "unknown")], rows.Select(row => (row!["colony"]!.GetValue<string>(), row["answers"]!.GetValue<string>())).Order());
        Assert.Equal(["b1"], (await server.RowsAsync("/queens-by-age?yard=Back&back=2&sure=certain&format=json")).Select(row => row!["colony"]!.GetValue<string>()));

        // A year earlier the old queen was one season back.
        Assert.Empty(await server.RowsAsync("/queens-by-age?yard=Back&seasons-back=2&sure=certain&as-of=2025-09-01&format=json"));
    }

    [Fact]
    public async Task Descendants_ancestors_and_contacts_by_name()
    {
        var told = new Told();
        QueenId[] queens = [new(Guid.NewGuid()), new(Guid.NewGuid()), new(Guid.NewGuid())];
        await server.RecordAsync(
            told.Opened("Kin"), told.Raised(queens[0], "Breeder K", new DateOnly(2023, 5, 1)), told.Raised(queens[1], "K1", new DateOnly(2024, 5, 1), queens[0]),
            told.Raised(queens[2], "K2", new DateOnly(2025, 5, 1), queens[1]), told.Colony("k1", "1", out var maker, queens[1]), told.Made("k2", "2", out var made), told.Split(maker, made));
        var down = await server.RowsAsync("/lineage?descendants-of=breeder k&format=json");
        Assert.Equal([("K1", 1, "Breeder K"), ("K2", 2, "K1")], down.Select(row => (row!["name"]!.GetValue<string>(), row["steps"]!.GetValue<int>(), row["by"]!.GetValue<string>())));
        Assert.Equal("Kin", down[0]!["yard"]!.GetValue<string>());
        Assert.All(down, row => Assert.NotEmpty(row!["entries"]!.AsArray()));
        Assert.Equal(["K1", "Breeder K"], (await server.RowsAsync($"/lineage?ancestors-of={queens[2]}&format=json")).Select(row => row!["name"]!.GetValue<string>()));
        var contacts = await server.RowsAsync("/lineage?contacts-of=k2&since=2026-01-01&format=json");
        Assert.Equal(["it was made from", "same yard"], contacts.Select(row => row!["how"]!.GetValue<string>()).Order());

        // What is recorded after the tree was kept shows at once.
        var later = new QueenId(Guid.NewGuid());
        await server.RecordAsync(new Told().Raised(later, "K3", new DateOnly(2026, 6, 1), queens[2]));
        Assert.Equal(3, (await server.RowsAsync("/lineage?descendants-of=Breeder K&format=json")).Count);
        // What narrows contacts narrows nothing where no kin are asked for: all links, as in CSV.
        Assert.NotEmpty(await server.RowsAsync("/lineage?how=yard&format=json"));
        // The page's own address.
        Assert.Equal(3, (await server.RowsAsync("/lineage?queen=Breeder K&all=yes&format=json")).Count);
    }

    [Fact]
    public async Task Entries_of_a_kind_with_their_fields_as_columns()
    {
        var told = new Told();
        await server.RecordAsync(told.Opened("Washes"), told.Colony("w1", "5", out var colony), told.Wash(colony, mites: 7));
        var row = Assert.Single(await server.RowsAsync("/entries?kind=washed&yard=Washes&format=json"))!;
        Assert.Equal(("w1", "Washes", "5", 7, 300), (row["colony"]!.GetValue<string>(), row["yard"]!.GetValue<string>(), row["spot"]!.GetValue<string>(), row["mites"]!.GetValue<int>(), row["bees"]!.GetValue<int>()));
        Assert.Equal(3, (await server.RowsAsync($"/entries?act={told.Act}&format=json")).Count);
    }

    [Fact]
    public async Task As_known_at_an_instant_and_as_of_a_day()
    {
        // Case D7: a dose voided later was there by what the books held before.
        var told = new Told();
        await server.RecordAsync(told.Opened("Clocks"), told.Colony("c1", "1", out var colony));
        var dose = new Told().Dose(colony, 1, new DateOnly(2026, 7, 20));
        await server.RecordAsync(dose);
        var recorded = JsonNode.Parse((await server.GetAsync($"/entries/{dose.Id}")).Body)!["recorded"]!.GetValue<string>();
        await Task.Delay(20, TestContext.Current.CancellationToken);
        await server.PostAsync("/voids", new JsonObject { ["entries"] = new JsonArray(dose.Id.ToString()), ["why"] = "it was on another" });
        Assert.Empty(await server.RowsAsync("/dose-completeness?yard=Clocks&format=json"));
        Assert.Single(await server.RowsAsync($"/dose-completeness?yard=Clocks&known-at={recorded}&format=json"));
        Assert.Empty(await server.RowsAsync("/queens-by-age?yard=Clocks&as-of=2024-04-30&format=json"));
        Assert.Single(await server.RowsAsync("/queens-by-age?yard=Clocks&as-of=2024-05-01&format=json"));
    }

    private async Task Fill()
    {
        var told = new Told();
        await server.RecordAsync(told.Opened("Fill"), told.Colony("f1", "1", out var colony), told.Made("f2", "1", out var made), told.Split(colony, made), told.Dose(colony, 1), told.Wash(colony));
    }
}
