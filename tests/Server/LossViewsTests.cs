using System.Net;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Losses;
using ColonyLineage.Projections.MiteWatch;

namespace ColonyLineage.Server.Tests;

/// <summary>Losses, how long colonies and queens last, what a treatment did and when mites will have grown: as data.</summary>
public sealed class LossViewsTests(RunningServer server) : IClassFixture<RunningServer>
{
    public static TheoryData<string, string> Views => new()
    {
        { "wintering", Columns<LossRow>() }, { "paradox", Columns<ParadoxRow>() }, { "queens-last", Columns<StretchRow>() },
        { "how-long", "curve,days,how,at_risk,lost,share,lower,upper,entries" }, { "efficacy", Columns<EfficacyRow>() }, { "mite-forecast", Columns<ForecastRow>() },
    };

    [Theory, MemberData(nameof(Views))]
    public async Task Every_view_answers_as_JSON_and_as_CSV_under_the_names_of_its_columns(string view, string columns)
    {
        await LossesAsync();
        await WashesAsync();
        foreach (var row in await server.RowsAsync($"/{view}?format=json")) Assert.Equal(columns, string.Join(',', row!.AsObject().Select(field => field.Key)));
        var (csv, text) = await server.GetAsync($"/{view}?format=csv");
        Assert.Equal("text/csv", csv.Content.Headers.ContentType!.MediaType);
        Assert.Equal(columns, text.Split("\r\n")[0]);
    }

    /// <summary>
    /// 10 colonies in the yard; 3 found dead in January, 1 on 8 April, when the outfit's own winter is over. Wilson's interval of 3 in 10: R 4.2.2,
    /// prop.test(3, 10, correct = FALSE), 0.1078 to 0.6032.
    /// </summary>
    [Fact]
    public async Task Rates_of_the_outfits_own_winter_its_summer_and_the_year()
    {
        var yard = await LossesAsync();
        var rows = await server.RowsAsync($"/wintering?yard={yard}&winter=2025&format=json");
        Assert.Equal(
            [("winter", 10, 3, 0.3m, 0.1078m, 0.6032m), ("summer", 7, 1, 0.1429m, 0.0257m, 0.5131m), ("year", 10, 4, 0.4m, 0.1682m, 0.6873m)],
            rows.Select(row => (Said(row, "period"), Whole(row, "at_risk"), Whole(row, "lost"), Number(row, "overall_rate"), Number(row, "overall_wilson_lower"), Number(row, "overall_wilson_upper"))));
        Assert.All(rows, row => Assert.Equal(("yard", yard), (Said(row, "by"), Said(row, "group"))));
        Assert.Equal(("2025-11-01", "2026-03-31"), (Said(rows[0], "from"), Said(rows[0], "to")));
        Assert.All(await server.RowsAsync("/wintering?period=winter&by=queenAge&format=json"), row => Assert.Equal(("winter", "queenAge"), (Said(row, "period"), Said(row, "by"))));
        // By what was known before the winter nothing of it can be told.
        Assert.Empty(await server.RowsAsync($"/wintering?yard={yard}&winter=2025&as-of=2025-10-15&format=json"));
    }

    [Fact]
    public async Task A_row_over_many_colonies_names_the_entries_of_the_lost_first_and_not_all()
    {
        var yard = await LossesAsync(of: 200);
        var row = Assert.Single(await server.RowsAsync($"/wintering?yard={yard}&winter=2025&period=winter&format=json"));
        var named = row!["entries"]!.AsArray().Select(id => id!.GetValue<string>()).ToList();
        Assert.Equal(60, named.Count);
        var dead = (await server.RowsAsync($"/losses?yard={yard}&format=json")).Where(life => Said(life, "ended") is { } on && on.StartsWith("2026-01", StringComparison.Ordinal)).ToList();
        Assert.Equal(3, dead.Count);
        Assert.All(dead.SelectMany(life => life!["entries"]!.AsArray()), id => Assert.Contains(id!.GetValue<string>(), named));
    }

    /// <summary>A queen born and given on 1 June 2025, seen on 1 August, superseded by 1 May 2026: after 61 days of reign and up to 334. Of one the estimate puts all there.</summary>
    [Fact]
    public async Task How_long_colonies_and_queens_last()
    {
        var told = new Told();
        QueenId old = new(Guid.NewGuid()), young = new(Guid.NewGuid());
        await server.RecordAsync(
            told.Opened("Reigns"), told.Raised(old, "r-old", new DateOnly(2025, 6, 1)),
            told.Colony("r1", "1", out var colony, old) with { On = new DateOnly(2025, 6, 1), How = HowEstablished.Nuc },
            new Inspected { Id = Told.Id(), On = new DateOnly(2025, 8, 1), Act = told.Act, Colony = colony, FramesOfBees = 5, Queen = QueenFinding.Seen },
            new SupersedureSeen { Id = Told.Id(), On = new DateOnly(2026, 5, 1), Act = told.Act, Colony = colony, Queen = young, Old = old });
        var stretch = Assert.Single(await server.RowsAsync("/queens-last?yard=Reigns&format=json"));
        Assert.Equal((61, 334, 1m, 0m), (Whole(stretch, "after_days"), Whole(stretch, "up_to_days"), Number(stretch, "superseded"), Number(stretch, "lives_on")));

        // 10 colonies of unknown age, in the books since 1 May 2024: none is counted from its beginning.
        var yard = await LossesAsync();
        Assert.Empty(await server.RowsAsync($"/how-long?yard={yard}&format=json"));
        var rows = await server.RowsAsync($"/how-long?yard={yard}&counted=books&format=json");
        // 10 January 2026 is day 619, 8 April 707.
        Assert.Equal(
            [("notLost", 619m, 0.7m), ("notLost", 707m, 0.6m), ("ended", 619m, 0.3m), ("ended", 707m, 0.4m)],
            rows.Select(row => (Said(row, "curve"), Number(row, "days"), Number(row, "share"))));
        Assert.Equal("dead", Said(rows[^1], "how"));
    }

    /// <summary>
    /// 30 mites of 300 bees before and 3 after; of the untreated 15 and 30: 100 (1 - 3/30 x 15/30) = 95 % (Henderson and Tilton 1955, Journal of
    /// Economic Entomology 48:157). From 1 to 3 per 100 at 2.1 % a day: ln 3 / 0.021 = 52.3 days.
    /// </summary>
    [Fact]
    public async Task What_a_treatment_did_and_when_mites_will_have_grown()
    {
        var (treated, untreated) = await WashesAsync();
        var row = Assert.Single(await server.RowsAsync($"/efficacy?yard={treated}&season=2026&format=json"));
        Assert.Equal((95m, 90m), (Number(row, "percent"), Number(row, "naive_percent")));
        Assert.Contains(untreated, row!["control_yards"]!.AsArray().Select(name => name!.GetValue<string>()));
        Assert.Empty(await server.RowsAsync($"/efficacy?yard={treated}&season=2025&format=json"));
        Assert.Empty(await server.RowsAsync($"/efficacy?yard={untreated}&format=json"));
        var forecast = Assert.Single(await server.RowsAsync($"/mite-forecast?yard={treated}&format=json"));
        Assert.Equal((52, "2026-10-11"), (Whole(forecast, "days_by_mean"), Said(forecast, "on_by_mean")));
        Assert.NotEmpty(forecast!["assumptions"]!.AsArray());
    }

    [Fact]
    public async Task Washes_of_one_season()
    {
        var (treated, _) = await WashesAsync();
        Assert.Equal(2, (await server.RowsAsync($"/mite-watch?yard={treated}&season=2026&format=json")).Count);
        Assert.Empty(await server.RowsAsync($"/mite-watch?yard={treated}&season=2025&format=json"));
        Assert.Equal(2, (await server.RowsAsync($"/mite-watch?yard={treated}&season=2026&rounds=yes&format=json")).Count);
        Assert.Empty(await server.RowsAsync($"/mite-watch?yard={treated}&season=2025&rounds=yes&format=json"));
        Assert.Empty(await server.RowsAsync($"/mite-watch?yard={treated}&season=2025&pooled=yes&format=json"));
        Assert.Single((await server.GetAsync($"/mite-watch?yard={treated}&season=2025&format=csv")).Body.TrimEnd().Split("\r\n"));
    }

    [Theory]
    [InlineData("wintering?period=autumn", Refusals.UnknownWord, "period")]
    [InlineData("wintering?winter=last", Refusals.NotReadable, "winter")]
    [InlineData("wintering?by=queen", Refusals.UnknownWord, "by")]
    [InlineData("wintering?season=2025", ServerRefusals.UnknownParameter, "season")]
    [InlineData("paradox?by=yard", Refusals.UnknownWord, "by")]
    [InlineData("paradox?yard=Kiln", ServerRefusals.UnknownParameter, "yard")]
    [InlineData("how-long?counted=today", Refusals.UnknownWord, "counted")]
    [InlineData("queens-last?by=line", ServerRefusals.UnknownParameter, "by")]
    public async Task What_cannot_be_asked_is_refused_by_name(string address, string name, string field)
    {
        var (response, body) = await server.GetAsync($"/{address}&format=json");
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal((name, field), (Told.Problem(body).Name, Told.Problem(body).Fields.Single()));
    }

    private async Task<string> LossesAsync(int of = 10)
    {
        var told = new Told();
        var name = $"Losses {told.Act}"[..20];
        List<Entry> entries =
        [
            new OutfitDescribed { Id = Told.Id(), On = new DateOnly(2024, 3, 1), Act = told.Act, WinterFrom = new MonthDay(11, 1), WinterTo = new MonthDay(3, 31) },
            told.Opened(name),
        ];
        for (var i = 1; i <= of; i++)
        {
            entries.Add(told.Colony($"{told.Act}"[..8] + $"-{i}", $"{i}", out var colony));
            if (i > 4) continue;
            // Seen on the day it was found dead: there is no doubt about the day.
            var day = i == 4 ? new DateOnly(2026, 4, 8) : new DateOnly(2026, 1, 10);
            entries.Add(new Inspected { Id = Told.Id(), On = day.AddDays(-1), Act = told.Act, Colony = colony, FramesOfBees = 2 });
            entries.Add(new FoundDead { Id = Told.Id(), On = day, Act = told.Act, Colony = colony });
        }

        await server.RecordAsync([.. entries]);
        return name;
    }

    private async Task<(string Treated, string Untreated)> WashesAsync()
    {
        var (one, other) = (new Told(), new Told());
        var (treated, untreated) = ($"Treated {one.Act}"[..20], $"Untreated {other.Act}"[..20]);
        await server.RecordAsync(
            one.Opened(treated), one.Colony($"t {one.Act}"[..10], "1", out var dosed), one.Wash(dosed, 30) with { On = new DateOnly(2026, 7, 1) }, one.Dose(dosed, 1, new DateOnly(2026, 7, 2)), one.Wash(dosed, 3));
        await server.RecordAsync(
            other.Opened(untreated), other.Colony($"u {other.Act}"[..10], "1", out var left), other.Wash(left, 15) with { On = new DateOnly(2026, 7, 3) }, other.Wash(left, 30));
        return (treated, untreated);
    }

    private static string Columns<T>() where T : IRow => string.Join(',', Column.Of<T>().Select(column => column.Name));

    private static string? Said(JsonNode? row, string field) => row![field]?.GetValue<string>();

    private static int Whole(JsonNode? row, string field) => row![field]!.GetValue<int>();

    private static decimal Number(JsonNode? row, string field) => row![field]!.GetValue<decimal>();
}
