using System.Net;
using System.Text.RegularExpressions;
using ColonyLineage.Entries;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;
using static ColonyLineage.Desk.Tests.Said;

namespace ColonyLineage.Desk.Tests;

/// <summary>
/// The pages of owed work, of the load list and of stores over two yards on 1 Oct 2026. North: a nuc in its box, and a feeder on. South: six colonies that had
/// one dose of two; it is planned first, because a ford floods. Four doses are at hand.
/// </summary>
public sealed partial class OwedWorkPageTests(Browser browser) : IAsyncLifetime
{
    private static readonly DateOnly Today = new(2026, 10, 1);
    private readonly MemoryOffice _office = new(Facts(), Today);
    private DeskHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await DeskHost.StartAsync(_office);

    public async ValueTask DisposeAsync()
    {
        await _host.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Yards_come_in_the_order_of_the_round_with_the_owners_reason_and_each_item_says_why()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(_host.Root + "/owed-work");
        var yards = page.Locator("section.owing");
        Assert.Equal(["South", "North", "West"], await yards.Locator("h2").AllInnerTextsAsync());
        Holds(await yards.Nth(0).InnerTextAsync(), "Planned for 2 Oct 2026: stop 1 of the round autumn, van.", "Why before the next: the ford floods after rain.");
        var nuc = yards.Nth(1).Locator("li.item").Filter(new LocatorFilterOptions { HasText = "nuc to transfer" });
        // Late is a word, not a colour alone.
        Assert.Equal("late", (await nuc.Locator(".tag").InnerTextAsync()).Trim());
        Holds(await nuc.InnerTextAsync(), "1 colony N1. Set in its nuc box on 1 Sep 2026.", "From 2 Sep 2026 on. 1 visit passed it by. Opened 1 Sep 2026");
        Holds(await yards.Nth(1).Locator("li.item").Filter(new LocatorFilterOptions { HasText = "feeder to take off" }).InnerTextAsync(), "now", "From 27 Sep 2026 by 18 Oct 2026.");
        await nuc.Locator(".why").First.ClickAsync();
        Holds(await page.Locator("main").InnerTextAsync(), "Why: nuc to transfer, spot 1, colony N1, North", "Colony established");
    }

    [Fact]
    public async Task Many_of_one_kind_in_a_yard_are_one_line_that_unfolds()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(_host.Root + "/owed-work");
        var many = page.Locator("details").Filter(new LocatorFilterOptions { HasText = "doses missing to a course" });
        Holds(await many.Locator("summary").InnerTextAsync(), "doses missing to a course: 6 colonies", "6 late", "by 15 Sep 2026");
        Assert.False(await many.Locator("li.item").First.IsVisibleAsync());
        await many.Locator("summary").ClickAsync();
        Holds(await many.Locator("li.item").First.InnerTextAsync(), "1 colony S1. 1 of 2 full doses of formic missing");
        // Where nothing else is asked for it is unfolded.
        await page.GotoAsync(_host.Root + "/owed-work?yard=South&work=course");
        Assert.True(await page.Locator("li.item").Nth(5).IsVisibleAsync());
    }

    [Theory]
    [InlineData("work=feeder-off", 1)]
    [InlineData("state=late", 7)]
    [InlineData("state=late&yard=North", 1)]
    [InlineData("round=autumn", 8)]
    [InlineData("on=2026-10-02", 8)]
    [InlineData("on=2026-10-03", 9)]
    [InlineData("as-of=2026-08-01", 0)]
    public async Task It_is_filtered_by_yard_work_state_day_and_round(string filter, int items)
    {
        var html = await TextAsync($"/owed-work?{filter}");
        Assert.Equal(items, html.Split("class=\"item\"").Length - 1);
    }

    [Fact]
    public async Task A_round_that_is_not_planned_is_said() => Holds(await TextAsync("/owed-work?round=summer"), "There is no round 'summer'. Take one of autumn.");

    [Fact]
    public async Task Work_is_put_off_to_a_day_and_what_is_refused_is_said_at_its_blank()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(_host.Root + "/owed-work?yard=North&work=transfer");
        await page.Locator("li.item a", new PageLocatorOptions { HasText = "put off" }).ClickAsync();
        Holds(await page.Locator("main").InnerTextAsync(), "Put off", "Spot 1, colony N1. Set in its nuc box on 1 Sep 2026.");
        await page.Locator("button", new PageLocatorOptions { HasText = "Put it off" }).ClickAsync();
        // Each refusal at its blank.
        Holds(await page.Locator("#f-until-wrong").InnerTextAsync(), "Say from which day on");
        await page.FillAsync("#f-until", "2026-09-30");
        await page.FillAsync("#f-why", "winters in its box");
        await page.Locator("button", new PageLocatorOptions { HasText = "Put it off" }).ClickAsync();
        Holds(await page.Locator("#f-until-wrong").InnerTextAsync(), "A day after today");
        Assert.Equal("winters in its box", await page.InputValueAsync("#f-why"));
        await page.FillAsync("#f-until", "2027-03-20");
        await page.Locator("button", new PageLocatorOptions { HasText = "Put it off" }).ClickAsync();
        Assert.Contains("/owed-work?yard=North", page.Url, StringComparison.Ordinal);
        Holds(await page.Locator("main").InnerTextAsync(), "put off", "Until 20 Mar 2027; due from 2 Sep 2026 on.");
        Holds(await page.Locator(".done").InnerTextAsync(), "Recorded. 1 entry of one act.");
        var put = Assert.Single(_office.Recorded, one => one.Entry is WorkPutOff).Entry as WorkPutOff;
        Assert.Equal(("transfer", _office.Recorded.Single(one => one.Entry is ColonyEstablished { Number: "N1" }).Entry.Id, "winters in its box"), (put!.Work, put.Opened, put.Why));
    }

    [Theory, InlineData("put-off", "transfer", "North"), InlineData("elsewhere", "transfer", "North"), InlineData("elsewhere", "course", "South")]
    public async Task A_form_sent_twice_records_once(string answer, string work, string yard)
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync($"{_host.Root}/owed-work/answer?do={answer}&work={work}&yard={SmallOutfit.YardNamed(yard).Value}");
        if (answer == "put-off") await page.FillAsync("#f-until", "2027-03-20");
        await page.FillAsync("#f-why", "winters in its box");
        var sent = await page.EvaluateAsync<string>("async () => { const f = document.querySelector('form.act'); const one = await fetch(f.action, { method: 'post', body: new FormData(f) }); const two = await fetch(f.action, { method: 'post', body: new FormData(f) }); return one.status + ' ' + two.status + ' ' + two.redirected; }");
        Assert.Equal("200 200 true", sent);
        Assert.Equal(work == "course" ? 6 : 1, _office.Recorded.Count(one => one.Entry is OwedEntry));
    }

    [Fact]
    public async Task All_of_one_kind_in_a_yard_are_closed_in_one_act()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(_host.Root + "/owed-work?yard=South&work=course");
        await page.Locator("a", new PageLocatorOptions { HasText = "all done elsewhere" }).ClickAsync();
        Holds(await page.Locator("main").InnerTextAsync(), "Doses missing to a course.", "6 colonies");
        await page.Locator("button", new PageLocatorOptions { HasText = "Close it" }).ClickAsync();
        Holds(await page.Locator("#f-why-wrong").InnerTextAsync(), "missing");
        await page.FillAsync("#f-why", "sold as they stand");
        await page.Locator("button", new PageLocatorOptions { HasText = "Close it" }).ClickAsync();
        var closed = _office.Recorded.Select(one => one.Entry).OfType<WorkDoneElsewhere>().ToList();
        Assert.Equal(6, closed.Count);
        Assert.Single(closed.Select(entry => entry.Act).Distinct());
        Assert.Equal(0, await page.Locator("section.owing").CountAsync());
    }

    [Fact]
    public async Task What_is_not_owed_has_no_form()
    {
        using var http = new HttpClient { BaseAddress = new Uri(_host.Root) };
        var answer = await http.GetAsync($"/owed-work/answer?do=put-off&work=transfer&opened={Guid.NewGuid()}&colony={Guid.NewGuid()}", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task A_round_is_planned_changed_and_taken_back()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(_host.Root + "/rounds");
        Holds(await page.Locator("main").InnerTextAsync(), "autumn", "South, 2 Oct 2026, van: the ford floods after rain");
        await page.FillAsync("#f-round", "last look");
        await page.SelectOptionAsync("select[name='stops[0].yard']", new SelectOptionValue { Label = "West" });
        await page.FillAsync("input[name='stops[1].why']", "it is close");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Plan it" }).ClickAsync();
        // The line says something, but not where.
        Holds(await page.Locator(".refused").InnerTextAsync(), "Say which yard.");
        await page.SelectOptionAsync("select[name='stops[1].yard']", new SelectOptionValue { Label = "North" });
        await page.FillAsync("input[name='stops[1].on']", "2026-10-05");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Plan it" }).ClickAsync();
        Assert.Contains("/load-list?round=last%20look", page.Url, StringComparison.Ordinal);
        Assert.Equal(["1. West", "2. North Mon 5 Oct 2026"], (await page.Locator(".stops h3").AllInnerTextsAsync()).Select(text => text.ReplaceLineEndings(" ")));

        // What is planned stands in the form; without any yard it is taken back.
        await page.Locator("a", new PageLocatorOptions { HasText = "Change this round" }).ClickAsync();
        Assert.Equal("it is close", await page.InputValueAsync("input[name='stops[1].why']"));
        foreach (var line in new[] { 0, 1 }) await page.SelectOptionAsync($"select[name='stops[{line}].yard']", "");
        await page.FillAsync("input[name='stops[1].on']", "");
        await page.FillAsync("input[name='stops[1].why']", "");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Plan it" }).ClickAsync();
        Assert.DoesNotContain("last look", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal([2, 0], _office.Recorded.Select(one => one.Entry).OfType<RoundPlanned>().Where(plan => plan.Round == "last look").Select(plan => plan.Stops.Count));
    }

    [Fact]
    public async Task The_load_list_is_of_the_next_planned_day_yard_by_yard_with_what_runs_short()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(_host.Root + "/load-list");
        var text = await page.Locator("main").InnerTextAsync();
        Holds(text, "Fri 2 Oct 2026: 2 yards, in the order of the round.", "doses missing to the course the owner chose; the label binds", "the ford floods after rain");
        Assert.Equal(["1. South", "2. North"], await page.Locator(".stops h3").AllInnerTextsAsync());
        Holds(await page.Locator(".stops > li").Nth(0).InnerTextAsync(), "6 full doses of formic");
        Holds(await page.Locator(".stops > li").Nth(1).InnerTextAsync(), "1 box nuc to transfer");
        Holds(await page.Locator("tr", new PageLocatorOptions { HasText = "doses, formic" }).InnerTextAsync(), "6 full doses", "4 full doses", "short of 2 full doses");
        Holds(await page.Locator("tr", new PageLocatorOptions { HasText = "boxes" }).InnerTextAsync(), "not counted", "not known");
        // Two trucks: each has its own sum.
        Assert.Equal(["Truck: van", "Truck: flatbed"], await page.Locator("section.truck h2").AllInnerTextsAsync());
        // Without a plan for the day, all yards for which something is to be loaded, by name.
        await page.GotoAsync(_host.Root + "/load-list?on=2026-10-09");
        Holds(await page.Locator(".lead").InnerTextAsync(), "no round is planned for it");
        Assert.Equal(["North", "South", "West"], await page.Locator(".stops h3").AllInnerTextsAsync());
    }

    [Fact]
    public async Task The_load_list_prints_on_one_page_without_the_menu_and_with_a_box_to_tick_at_each_line()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(_host.Root + "/load-list");
        var sheet = System.Text.Encoding.Latin1.GetString(await page.PdfAsync(new PagePdfOptions { Format = "A4", PreferCSSPageSize = true }));
        Assert.Single(PageOfPdf().Matches(sheet));
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.False(await page.Locator(".menu").IsVisibleAsync());
        Assert.False(await page.Locator(".filters").First.IsVisibleAsync());
        var lines = await page.Locator(".load li").CountAsync();
        Assert.True(lines > 0);
        Assert.Equal(lines, await page.Locator(".load li input[type=checkbox]:visible").CountAsync());
        Assert.Equal("rgb(0, 0, 0)", await page.Locator(".load li input").First.EvaluateAsync<string>("one => getComputedStyle(one).borderTopColor"));
    }

    [Theory]
    [InlineData("/owed-work")]
    [InlineData("/owed-work?yard=South&work=course")]
    [InlineData("/owed-work/answer?do=put-off&work=course&yard=SOUTH")]
    [InlineData("/load-list")]
    [InlineData("/stores-and-feed?mix=x")]
    public async Task The_pages_are_fit_for_all_eyes_and_widths(string path)
    {
        await using var opened = await browser.OpenAsync(360, dark: true);
        var page = opened.Page;
        await page.GotoAsync(_host.Root + path.Replace("SOUTH", SmallOutfit.YardNamed("South").Value.ToString(), StringComparison.Ordinal));
        Assert.Equal(1, await page.Locator("h1").CountAsync());
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 360, path);
        foreach (var (width, scheme) in new[] { (360, ColorScheme.Dark), (1280, ColorScheme.Light) })
        {
            await page.SetViewportSizeAsync(width, 900);
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
            var found = await page.RunAxe();
            Assert.True(found.Violations.Length == 0, string.Join("\n", found.Violations.SelectMany(one => one.Nodes.Select(node => $"{one.Id}: {node.Html}"))));
        }
    }

    private static List<Recorded> Facts()
    {
        var facts = new List<Recorded>();
        var (order, act) = (0, new ActId(Guid.CreateVersion7()));
        Put("2026-03-01", (id, on) => new OutfitDescribed { Id = id, On = on, Act = act, Order = order, Name = "Three yards" });
        Put("2026-03-01", (id, on) => new CourseDefined { Id = id, On = on, Act = act, Order = order, Course = "formic", FullDoses = 2, DaysBetweenAtLeast = 7, DaysBetweenAtMost = 14 });
        foreach (var name in new[] { "North", "South", "West" })
            Put("2026-03-02", (id, on) => new YardOpened { Id = id, On = on, Act = act, Order = order, Yard = SmallOutfit.YardNamed(name), Name = name });
        Begin("N1", "2026-09-01", "North", "1", Housing.NucBox);
        Put("2026-09-10", (id, on) => new Inspected { Id = id, On = on, Act = act, Order = order, Colony = SmallOutfit.ColonyNamed("N1"), FramesOfBees = 4, EggsSeen = true });
        Begin("N2", "2026-05-01", "North", "2", Housing.Single);
        Put("2026-09-20", (id, on) => new FeederPutOn { Id = id, On = on, Act = act, Order = order, Colony = SmallOutfit.ColonyNamed("N2"), Feeder = "tray", Holds = new Quantity(8, "L") });
        for (var i = 1; i <= 6; i++)
        {
            Begin($"S{i}", "2026-05-01", "South", $"{i}", Housing.Single);
            Put("2026-09-01", (id, on) => new Treated { Id = id, On = on, Act = act, Order = order, Colony = SmallOutfit.ColonyNamed($"S{i}"), Course = "formic", Doses = 1 });
        }

        Begin("W1", "2026-09-20", "West", "1", Housing.NucBox);
        Put("2026-09-25", (id, on) => new StockCounted { Id = id, On = on, Act = act, Order = order, Of = StockOf.Doses, Which = "formic", Amount = new Quantity(4, "piece") });
        Put("2026-09-28", (id, on) => new RoundPlanned
        {
            Id = id, On = on, Act = act, Order = order, Round = "autumn",
            Stops = [new RoundStop(SmallOutfit.YardNamed("South"), new DateOnly(2026, 10, 2), "van", "the ford floods after rain"), new RoundStop(SmallOutfit.YardNamed("North"), new DateOnly(2026, 10, 2), "flatbed")],
        });
        return facts;

        void Put(string day, Func<EntryId, Occurred, Entry> make)
        {
            var on = DateOnly.ParseExact(day, "yyyy-MM-dd");
            order++;
            facts.Add(new Recorded(make(new EntryId(Guid.CreateVersion7()), on), new DateTimeOffset(on, TimeOnly.MinValue, TimeSpan.Zero)));
        }

        void Begin(string name, string day, string yard, string spot, Housing housing) =>
            Put(day, (id, on) => new ColonyEstablished { Id = id, On = on, Act = act, Order = order, Colony = SmallOutfit.ColonyNamed(name), Number = name, How = HowEstablished.Nuc, At = new Spot(SmallOutfit.YardNamed(yard), spot), Housing = housing });
    }

    private async Task<string> TextAsync(string path)
    {
        using var http = new HttpClient { BaseAddress = new Uri(_host.Root) };
        return WebUtility.HtmlDecode(await http.GetStringAsync(path, TestContext.Current.CancellationToken));
    }

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex PageOfPdf();
}
