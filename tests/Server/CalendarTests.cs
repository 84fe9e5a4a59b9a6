using System.Net;
using ColonyLineage.Entries;
using Ical.Net;
using Ical.Net.CalendarComponents;

namespace ColonyLineage.Server.Tests;

/// <summary>Owed work as a calendar by RFC 5545, read back by a parser. Today is 1 Sep 2026.</summary>
public class CalendarTests(RunningServer server) : IClassFixture<RunningServer>
{
    private static readonly DateOnly Boxed = new(2026, 8, 10);

    [Fact]
    public async Task An_item_for_each_yard_and_kind_of_work_and_the_same_twice()
    {
        var told = new Told();
        ColonyEstablished[] nucs = [Nuc(told, "c1", "1"), Nuc(told, "c2", "2"), Nuc(told, "c3", "3")];
        await server.RecordAsync([told.Opened("Many"), .. nucs, told.Colony("c4", "4", out var fed), new FeederPutOn { Id = Told.Id(), On = new DateOnly(2026, 8, 20), Act = told.Act, Colony = fed, Order = 90 }]);
        var (response, text) = await server.GetAsync("/owed-work.ics?yard=Many");
        Assert.Equal("text/calendar", response.Content.Headers.ContentType!.MediaType);
        var calendar = Calendar.Load(text)!;
        Assert.Equal(["Many: feeder to take off, colony c4", "Many: nuc to transfer, 3 colonies"], calendar.Events.Select(one => one.Summary!).Order());
        var nuc = calendar.Events.Single(one => one.Summary!.Contains("nuc"));
        var opened = nucs.Select(one => one.Id.Value).Min();
        Assert.Equal($"{told.Yard.Value}.transfer.{opened}@colony-lineage", nuc.Uid);
        Assert.Contains("spot 2, colony c2: set in its nuc box on 10 Aug 2026", nuc.Description);
        Assert.EndsWith($"{server.Root}/owed-work?yard=Many&work=transfer", nuc.Description);
        Assert.Equal(new Uri($"{server.Root}/owed-work?yard=Many&work=transfer"), nuc.Url);
        // From the day after; without a last day it reaches to today, whole days long.
        Assert.Equal((new DateOnly(2026, 8, 11), new DateOnly(2026, 9, 2), false), (nuc.Start!.Date, nuc.End!.Date, nuc.Start.HasTime));
        var feeder = calendar.Events.Single(one => one.Summary!.Contains("feeder"));
        Assert.Equal((new DateOnly(2026, 8, 27), new DateOnly(2026, 9, 18)), (feeder.Start!.Date, feeder.End!.Date));
        Assert.Equal(text, (await server.GetAsync("/owed-work.ics?yard=Many")).Body);
    }

    [Fact]
    public async Task To_dos_say_from_when_and_by_when()
    {
        var told = new Told();
        await server.RecordAsync(told.Opened("Tasks"), told.Colony("t1", "1", out var fed), new FeederPutOn { Id = Told.Id(), On = new DateOnly(2026, 8, 20), Act = told.Act, Colony = fed, Order = 90 });
        var calendar = Calendar.Load((await server.GetAsync("/owed-work.ics?yard=Tasks&as=to-dos")).Body)!;
        Assert.Empty(calendar.Events);
        var task = Assert.Single(calendar.Todos);
        Assert.Equal((new DateOnly(2026, 8, 27), new DateOnly(2026, 9, 17), "NEEDS-ACTION"), (task.Start!.Date, task.Due!.Date, task.Status));
    }

    [Fact]
    public async Task What_is_put_off_moves_to_its_day_and_stays_the_same_item()
    {
        var told = new Told();
        var (first, second) = (Nuc(told, "p1", "1"), Nuc(told, "p2", "2"));
        await server.RecordAsync(told.Opened("Later"), first);
        var before = Assert.Single(await EventsAsync("Later"));
        var act = new Told();
        await server.RecordAsync(new WorkPutOff { Id = Told.Id(), On = new DateOnly(2026, 9, 1), Act = act.Act, Work = "transfer", Opened = first.Id, Colony = first.Colony, Until = new DateOnly(2027, 3, 20), Why = "winters in its box" });
        var after = Assert.Single(await EventsAsync("Later"));
        Assert.Equal((before.Uid, new DateOnly(2027, 3, 20)), (after.Uid, after.Start!.Date));
        Assert.Equal("Later: nuc to transfer, colony p1, put off until 20 Mar 2027", after.Summary);

        // Another nuc there that is not put off is an item of its own.
        await server.RecordAsync(second with { Act = new Told().Act });
        var both = await EventsAsync("Later");
        Assert.Equal([new DateOnly(2026, 8, 11), new DateOnly(2027, 3, 20)], both.Select(one => one.Start!.Date));
        Assert.Equal(2, both.Select(one => one.Uid).Distinct().Count());
    }

    /// <summary>RFC 5545, 3.3.11: in a text a line break, a comma, a semicolon and a backslash are escaped.</summary>
    [Fact]
    public async Task What_is_written_in_the_books_begins_no_line_of_its_own()
    {
        const string Name = "A\nBEGIN:VEVENT\nUID:theirs; x, y\\n";
        var told = new Told();
        await server.RecordAsync(told.Opened("Hill; north, \\ south\nEND:VCALENDAR"), Nuc(told, Name, "1"));
        var text = (await server.GetAsync($"/owed-work.ics?yard={told.Yard.Value}")).Body;
        Assert.Equal(1, text.Split("\r\n").Count(line => line == "BEGIN:VEVENT"));
        Assert.Equal(1, text.Split("\r\n").Count(line => line == "END:VCALENDAR"));
        Assert.DoesNotContain('\n', text.Replace("\r\n", ""));
        Assert.DoesNotContain('\r', text.Replace("\r\n", ""));
        var read = Assert.Single(Calendar.Load(text)!.Events);
        Assert.Equal($"Hill; north, \\ south\nEND:VCALENDAR: nuc to transfer, colony {Name}", read.Summary);
    }

    [Theory]
    [InlineData("as=pictures", "as")]
    [InlineData("state=soon", "state")]
    [InlineData("yrad=Kiln", "yrad")]
    [InlineData("round=nobody's", "round")]
    public async Task What_cannot_be_asked_is_refused_by_name(string query, string field)
    {
        var (response, body) = await server.GetAsync($"/owed-work.ics?{query}");
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal(field, Told.Problem(body).Fields.Single());
    }

    [Fact]
    public async Task It_is_guarded_as_every_other_address()
    {
        using var foreign = new HttpRequestMessage(HttpMethod.Get, "/owed-work.ics");
        foreign.Headers.Host = "books.example";
        Assert.Equal(HttpStatusCode.MisdirectedRequest, (await server.SendAsync(foreign)).Response.StatusCode);
        var (response, _) = await server.GetAsync("/owed-work.ics");
        Assert.Equal(("no-store", "nosniff"), (response.Headers.CacheControl!.ToString(), response.Headers.GetValues("X-Content-Type-Options").Single()));
    }

    private async Task<List<CalendarEvent>> EventsAsync(string yard) =>
        [.. Calendar.Load((await server.GetAsync($"/owed-work.ics?yard={yard}")).Body)!.Events.OrderBy(one => one.Start!.Date)];

    private static ColonyEstablished Nuc(Told told, string number, string spot) => told.Made(number, spot, out _) with { On = Boxed, How = HowEstablished.Bought, Housing = Housing.NucBox };
}
