using System.Net;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.OwedWork;
using ColonyLineage.Projections.StoresAndFeed;
using ColonyLineage.Projections.TreatmentRecord;
using ColonyLineage.Projections.WinterReadiness;

namespace ColonyLineage.Server.Tests;

/// <summary>Owed work, the load list, readiness and the treatment record as data, over a real PostgreSQL.</summary>
public sealed class WorkViewsTests(RunningServer server) : IClassFixture<RunningServer>
{
    public static TheoryData<string, string> Views => new()
    {
        { "owed-work", Columns<OwedRow>() }, { "load-list", Columns<LoadRow>() }, { "next-round", Columns<RoundFeedRow>() }, { "winter-readiness", Columns<ReadinessRow>() },
        { "readiness-truth", Columns<TruthRow>() }, { "treatment-record", Columns<TreatmentRow>() },
    };

    [Theory, MemberData(nameof(Views))]
    public async Task Every_view_answers_as_JSON_and_as_CSV_and_by_both_clocks(string view, string columns)
    {
        await YardAsync();
        var rows = await server.RowsAsync($"/{view}?format=json");
        foreach (var row in rows) Assert.Equal(columns, string.Join(',', row!.AsObject().Select(field => field.Key)));
        var (csv, text) = await server.GetAsync($"/{view}?format=csv");
        Assert.Equal(("text/csv", columns), (csv.Content.Headers.ContentType!.MediaType, text.Split("\r\n")[0]));
        // Known at a time that is to come is all that is known now: the same rows, folded anew.
        Assert.Equal(rows.ToJsonString(), (await server.RowsAsync($"/{view}?format=json&known-at=2999-01-01")).ToJsonString());
    }

    /// <summary>O2 over HTTP, before and after its wash is voided, and a round that is planned for a day to come.</summary>
    [Fact]
    public async Task A_high_wash_makes_the_whole_yard_due_until_it_is_voided_and_the_round_says_what_to_load()
    {
        var (yard, wash) = await YardAsync();
        var due = Assert.Single(await server.RowsAsync($"/owed-work?yard={yard}&work=treat-yard&format=json"))!;
        Assert.Equal((2, wash.ToString(), yard), (due["of"]!.GetValue<int>(), due["opened_by"]!.GetValue<string>(), due["yard"]!.GetValue<string>()));
        var load = await server.RowsAsync($"/load-list?round={yard}&format=json");
        var doses = load.Single(row => row!["yard"]?.GetValue<string>() == yard && row["thing"]!.GetValue<string>() == "doses")!;
        Assert.Equal(("T", 3m, "full dose", "flatbed", "the ford floods"), (doses["which"]!.GetValue<string>(), doses["amount"]!.GetValue<decimal>(), doses["unit"]!.GetValue<string>(), doses["truck"]!.GetValue<string>(), doses["why"]!.GetValue<string>()));
        var total = load.Single(row => row!["yard"] is null && row["thing"]!.GetValue<string>() == "doses")!;
        Assert.Equal((2m, 1m), (total["at_hand"]!.GetValue<decimal>(), total["short"]!.GetValue<decimal>()));
        await server.PostAsync("/voids", new JsonObject { ["entries"] = new JsonArray(wash.ToString()), ["why"] = "counted on another colony" });
        Assert.Empty(await server.RowsAsync($"/owed-work?yard={yard}&work=treat-yard&format=json"));
    }

    [Fact]
    public async Task The_record_keeps_what_was_voided_and_says_who_and_why()
    {
        var (yard, _) = await YardAsync();
        var uses = await server.RowsAsync($"/treatment-record?yard={yard}&format=json");
        Assert.Equal([false], uses.Select(row => row!["voided"]!.GetValue<bool>()));
        var entry = uses[0]!["entries"]!.AsArray()[0]!.GetValue<string>();
        await server.PostAsync("/voids", new JsonObject { ["entries"] = new JsonArray(entry), ["why"] = "wrong line of the sheet", ["by"] = "Nell" });
        var gone = Assert.Single(await server.RowsAsync($"/treatment-record?yard={yard}&format=json"))!;
        Assert.Equal((true, "wrong line of the sheet"), (gone["voided"]!.GetValue<bool>(), gone["voided_why"]!.GetValue<string>()));
        Assert.Empty(await server.RowsAsync($"/treatment-record?yard={yard}&season=2020&format=json"));
        Assert.Empty(await server.RowsAsync($"/treatment-record?yard={yard}&course=other&format=json"));
    }

    [Fact]
    public async Task Readiness_is_asked_by_the_outfits_own_criteria()
    {
        var (yard, _) = await YardAsync();
        await server.RecordAsync(new ReadinessSet { Id = Told.Id(), On = new DateOnly(2026, 1, 1), Act = new(Guid.NewGuid()), FramesOfBeesAtLeast = 5, MitesAtMost = 2 });
        var rows = await server.RowsAsync($"/winter-readiness?yard={yard}&format=json");
        Assert.Equal(["bees notKnown", "bees notKnown", "mites notKnown", "mites notMet"], rows.Select(row => $"{row!["criterion"]!.GetValue<string>()} {row["met"]!.GetValue<string>()}").Order());
    }

    [Theory]
    [InlineData("owed-work?format=json&round=never", Refusals.NotFound, "round")]
    [InlineData("owed-work?format=json&state=perhaps", Refusals.UnknownWord, "state")]
    [InlineData("owed-work?format=json&on=someday", Refusals.NotReadable, "on")]
    [InlineData("load-list?format=json&course=T", ServerRefusals.UnknownParameter, "course")]
    [InlineData("winter-readiness?format=json&work=transfer", ServerRefusals.UnknownParameter, "work")]
    public async Task What_cannot_be_asked_is_refused_by_name(string address, string name, string field)
    {
        var (response, body) = await server.GetAsync("/" + address);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal((name, field), (Told.Problem(body).Name, Told.Problem(body).Fields.Single()));
    }

    /// <summary>Two colonies; one had one dose of two, and a wash of 9; the other nothing. Two doses at hand, and a round planned.</summary>
    private async Task<(string Yard, EntryId Wash)> YardAsync()
    {
        var told = new Told();
        var name = $"Work {told.Act.Value:N}"[..20];
        var opened = told.Opened(name);
        var one = told.Colony("one", "1", out var colony);
        var two = told.Colony("two", "2", out _);
        var dose = told.Dose(colony, 1);
        var wash = told.Wash(colony, mites: 9);
        await server.RecordAsync(
            opened, one, two, new CourseDefined { Id = Told.Id(), On = new DateOnly(2026, 1, 1), Act = told.Act, Course = "T", FullDoses = 2 }, dose, wash,
            new StockCounted { Id = Told.Id(), On = new DateOnly(2026, 8, 1), Act = told.Act, Of = StockOf.Doses, Which = "T", Amount = new Quantity(2, Units.Piece) },
            new RoundPlanned { Id = Told.Id(), On = new DateOnly(2026, 8, 21), Act = told.Act, Round = name, Stops = [new RoundStop(told.Yard, null, "flatbed", "the ford floods")] });
        return (name, wash.Id);
    }

    private static string Columns<TRow>() where TRow : IRow => string.Join(',', Column.Of<TRow>().Select(column => column.Name));
}
