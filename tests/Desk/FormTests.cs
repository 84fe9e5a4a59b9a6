using ColonyLineage.Entries;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace ColonyLineage.Desk.Tests;

/// <summary>Forms, without a script, on books of their own so that no other test sees what is recorded here.</summary>
public sealed class FormTests(Browser browser) : IAsyncLifetime
{
    private readonly List<OpenedPage> _opened = [];

    public async ValueTask DisposeAsync()
    {
        foreach (var opened in _opened) await opened.DisposeAsync();
        await _host.DisposeAsync();
    }

    private static readonly Guid Alder = SmallOutfit.YardNamed("Alder Bottom").Value;
    private readonly MemoryOffice _office = new(SmallOutfit.Make().Recorded, SmallOutfit.Today);
    private DeskHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await DeskHost.StartAsync(_office);

    private async Task<IPage> OpenAsync(string path, int width = 1280, bool dark = false)
    {
        var opened = await browser.OpenAsync(width, dark);
        _opened.Add(opened);
        var page = opened.Page;
        await page.GotoAsync(_host.Root + path);
        return page;
    }

    [Fact]
    public async Task A_yard_is_treated_but_for_spots_and_the_page_says_so()
    {
        var page = await OpenAsync($"/record?act=treat-yard&yard={Alder}");
        await page.GetByLabel("Spots left out").FillAsync("2, 3");
        await page.GetByLabel("Course").FillAsync("thymol");
        await page.GetByLabel("Share of a full dose").FillAsync("0,5");
        await page.GetByLabel("By whom").FillAsync("Ine");
        await page.GetByRole(AriaRole.Button, new() { Name = "Record" }).ClickAsync();
        await Picture(page, "recorded");
        Assert.StartsWith($"{_host.Root}/yards/{Alder}", page.Url);
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Recorded.");
        var doses = _office.Recorded.Select(one => one.Entry).OfType<Treated>().Where(dose => dose.On.Day == SmallOutfit.Today).ToList();
        Assert.Equal(5, doses.Count);
        Assert.All(doses, dose => Assert.Equal((0.5m, "Ine"), (dose.Doses, dose.By)));
        await page.GetByRole(AriaRole.Link, new() { Name = "5 entries", Exact = true }).ClickAsync();
        Assert.Equal(5, await page.Locator("li.entry").CountAsync());
    }

    [Fact]
    public async Task What_is_refused_is_said_at_its_blank_and_every_value_is_kept()
    {
        var page = await OpenAsync($"/record?act=treat-yard&yard={Alder}");
        await page.GetByLabel("Spots left out").FillAsync("99");
        await page.GetByLabel("Course").FillAsync("thymol");
        await page.GetByLabel("Share of a full dose").FillAsync("9");
        await page.GetByLabel("Anything else").FillAsync("after the rain");
        await page.GetByRole(AriaRole.Button, new() { Name = "Record" }).ClickAsync();
        await Picture(page, "refused");
        var dose = page.GetByLabel("Share of a full dose");
        Assert.Equal("9", await dose.InputValueAsync());
        Assert.Equal("true", await dose.GetAttributeAsync("aria-invalid"));
        var said = (await dose.GetAttributeAsync("aria-describedby"))!.Split(' ')[0];
        await Assertions.Expect(page.Locator($"#{said}")).ToContainTextAsync("from 0.01 to 4");
        Assert.Equal("after the rain", await page.GetByLabel("Anything else").InputValueAsync());
        var summary = page.GetByRole(AriaRole.Alert);
        await Assertions.Expect(summary).ToContainTextAsync("spot 99");
        await summary.GetByRole(AriaRole.Link).First.ClickAsync();
        Assert.Equal("#f-except", await page.EvaluateAsync<string>("location.hash"));
        Assert.DoesNotContain(_office.Recorded, one => one.Entry is Treated { On.Day: var day } && day == SmallOutfit.Today);
    }

    [Fact]
    public async Task A_form_sent_twice_records_once()
    {
        var page = await OpenAsync($"/record?act=note&colony={SmallOutfit.ColonyNamed("4").Value}");
        var before = _office.Recorded.Count;
        await page.GetByLabel("Text").FillAsync("Leans to the left.");
        var sent = await page.EvaluateAsync<string>("async () => { const f = document.querySelector('form.act'); const one = await fetch(f.action, { method: 'post', body: new FormData(f) }); const two = await fetch(f.action, { method: 'post', body: new FormData(f) }); return one.status + ' ' + two.status + ' ' + two.redirected; }");
        Assert.Equal("200 200 true", sent);
        Assert.Equal(before + 1, _office.Recorded.Count);
        await page.GotoAsync($"{_host.Root}/colonies/{SmallOutfit.ColonyNamed("4").Value}");
        await Assertions.Expect(page.GetByText("Leans to the left.")).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData("look", 1)]
    [InlineData("requeen", 3)]
    [InlineData("split", 3)]
    [InlineData("combine", 2)]
    [InlineData("fix-spot", 1)]
    [InlineData("transfer", 1)]
    [InlineData("move", 1)]
    [InlineData("supersedure", 2)]
    [InlineData("dead-out", 1)]
    [InlineData("share-out", 3)]
    public async Task Every_act_can_be_recorded(string act, int entries)
    {
        var page = await OpenAsync($"/record?act={act}&colony={SmallOutfit.ColonyNamed("4").Value}");
        var before = _office.Recorded.Count;
        foreach (var (name, value) in Fill(act))
        {
            var blank = page.Locator($"[name=\"{name}\"]");
            await page.Locator("details").EvaluateAllAsync<bool>("all => { all.forEach(one => one.open = true); return true; }");
            if (value is "tick") await blank.First.CheckAsync();
            else if (await blank.EvaluateAsync<string>("one => one.tagName") == "SELECT") await blank.SelectOptionAsync(value);
            else await blank.FillAsync(value);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Record" }).ClickAsync();
        Assert.True(page.Url.Contains("recorded="), await page.Locator("main").InnerTextAsync());
        Assert.Equal(before + entries, _office.Recorded.Count);
    }

    private static IEnumerable<(string, string)> Fill(string act) => act switch
    {
        "look" => [("rows[0].look.framesOfBees", "8")],
        "requeen" => [("rows[0].name", "26-77"), ("rows[0].mark", "White"), ("rows[0].oldQueen", "Killed"), ("raised.batch", "late grafts")],
        "split" => [("makers[0].framesOfBees", "2"), ("number", "N26-20"), ("at.number", "12"), ("cell.batch", "late grafts")],
        "combine" => [("into", "6"), ("killed", "OfTheOneThatEnds")],
        "fix-spot" => [("spot.number", "11"), ("nuc", "N26-9")],
        "transfer" => [("others", "4")],
        "move" => [("moves[0].to.yard", SmallOutfit.YardNamed("Riverside").Value.ToString()), ("moves[0].to.number", "R1")],
        "supersedure" => [("after", "2026-08-20"), ("look.eggsSeen", "yes")],
        "dead-out" => [("cause", "few bees")],
        "share-out" => [("why", "dud"), ("killQueen", "tick"), ("frames[1].to", "6"), ("frames[1].frames", "4"), ("frames[1].of", "Brood")],
        _ => [],
    };

    [Fact]
    public async Task More_lines_keep_what_is_written()
    {
        var page = await OpenAsync($"/record?act=split&yard={Alder}");
        await page.Locator("[name=\"makers[2].colony\"]").FillAsync("4");
        await page.GetByRole(AriaRole.Button, new() { Name = "More lines" }).ClickAsync();
        Assert.Equal(8, await page.Locator("table.fill tbody tr").CountAsync());
        Assert.Equal("4", await page.Locator("[name=\"makers[2].colony\"]").InputValueAsync());
        // Enter records; it does not ask for more lines. Here it is refused, since the number is missing.
        await page.Locator("[name=\"makers[2].colony\"]").PressAsync("Enter");
        await Assertions.Expect(page.Locator("#f-number-wrong")).ToContainTextAsync("missing");
    }

    [Fact]
    public async Task A_void_strikes_through()
    {
        var page = await OpenAsync($"/colonies/{SmallOutfit.ColonyNamed("7").Value}");
        var entry = page.Locator("li.entry", new() { HasText = "14 mites" });
        await entry.GetByRole(AriaRole.Link, new() { NameRegex = new("^void") }).ClickAsync();
        await Picture(page, "void");
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike through this entry" }).ClickAsync();
        await Assertions.Expect(page.Locator("#f-why-wrong")).ToContainTextAsync("missing");
        await page.GetByLabel("Why it was wrong").FillAsync("It was counted twice.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike through this entry" }).ClickAsync();
        await Assertions.Expect(page.Locator("li.entry.void", new() { HasText = "14 mites" })).ToContainTextAsync("It was counted twice.");
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Voided.");
    }

    [Fact]
    public async Task A_conflict_is_let_stand_with_a_reason()
    {
        var page = await OpenAsync("/conflicts");
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new("^settle or void") }).First.ClickAsync();
        await Picture(page, "settle");
        await page.GetByLabel("Why both may stand").FillAsync("The dose was in the box before anybody looked.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Let it stand" }).ClickAsync();
        await Assertions.Expect(page.Locator("section", new() { Has = page.Locator("#conflicts") })).ToContainTextAsync("settled: The dose was in the box");
    }

    [Fact]
    public async Task A_paper_page_is_caught_up_on()
    {
        var page = await OpenAsync($"/catch-up?yard={Alder}&on=2026-09-28");
        foreach (var (i, bees) in new[] { (0, "9"), (1, "7.5"), (2, "6") }) await page.Locator($"[name=\"rows[{i}].look.framesOfBees\"]").FillAsync(bees);
        await page.Locator("[name=\"rows[1].wash.mites\"]").FillAsync("2");
        await page.GetByRole(AriaRole.Button, new() { Name = "Record the page" }).ClickAsync();
        await Assertions.Expect(page.Locator("#f-rows-1--wash-bees-wrong")).ToContainTextAsync("how many bees");
        await Picture(page, "page-refused");
        Assert.Equal("7.5", await page.Locator("[name=\"rows[1].look.framesOfBees\"]").InputValueAsync());
        await page.Locator("[name=\"rows[1].wash.bees\"]").FillAsync("300");
        await page.GetByRole(AriaRole.Button, new() { Name = "Record the page" }).ClickAsync();
        Assert.StartsWith($"{_host.Root}/yards/{Alder}", page.Url);
        var on = _office.Recorded.Select(one => one.Entry).Where(entry => entry.On.Day == new DateOnly(2026, 9, 28)).ToList();
        Assert.Equal((3, 1), (on.OfType<Inspected>().Count(), on.OfType<Washed>().Count()));
    }

    private const string Map = """{ "name": "spring", "key": "{colony}", "entries": [ { "kind": "washed", "on": "{day}", "colony": "{colony}", "mites": "{mites}", "bees": "{bees}" }, { "kind": "moved", "on": "{day}", "colony": "{colony}", "to": { "yard": "{yard}", "number": "{spot}" } } ] }""";

    [Fact]
    public async Task A_sheet_is_looked_at_first_and_recorded_then()
    {
        var page = await OpenAsync("/import");
        await page.GetByRole(AriaRole.Button, new() { Name = "Preview" }).ClickAsync();
        await Assertions.Expect(page.Locator("#f-sheet-wrong")).ToContainTextAsync("CSV");
        var before = _office.Recorded.Count;
        await UploadAsync(page, "colony,day,mites,bees,yard,spot\n31,2026-09-25,4,300,Riverside,R1\n32,2026-09-25,many,300,Riverside,R2\n33,2026-09-25,1,300,,\n");
        await Assertions.Expect(page.GetByRole(AriaRole.Region, new() { Name = "Bad cells" })).ToContainTextAsync("many");
        await Assertions.Expect(page.GetByRole(AriaRole.Region, new() { Name = "Colonies by yard" })).ToContainTextAsync("Riverside");
        await Picture(page, "import-preview");
        await page.GetByRole(AriaRole.Button, new() { Name = "Record 3 entries" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("tick that they are left out");
        Assert.Equal(before, _office.Recorded.Count);
        await page.GetByLabel("Leave the 1 bad row").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Record 3 entries" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("3 entries");
        Assert.Equal(before + 3, _office.Recorded.Count);
        // The same upload, sent again from another tab after the server has forgotten it, is told so and records nothing.
        var forgotten = await OpenAsync("/import");
        await UploadAsync(forgotten, "colony,day,mites,bees,yard,spot\n34,2026-09-25,4,300,,\n");
        await forgotten.EvaluateAsync("document.querySelector('[name=key]').value = 'gone'");
        await forgotten.GetByRole(AriaRole.Button, new() { Name = "Record 1 entry" }).ClickAsync();
        await Assertions.Expect(forgotten.GetByRole(AriaRole.Alert)).ToContainTextAsync("upload it again");
        Assert.Equal(before + 3, _office.Recorded.Count);
        await page.GetByRole(AriaRole.Link, new() { Name = "Was that wrong? Void it" }).ClickAsync();
        await page.GetByLabel("Why it was wrong").FillAsync("The wrong sheet.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike through these 3 entries" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Voided.");
        Assert.Equal(before + 6, _office.Recorded.Count);
    }

    private static async Task UploadAsync(IPage page, string sheet)
    {
        await page.GetByLabel("Sheet (CSV)").SetInputFilesAsync(new FilePayload { Name = "sheet.csv", MimeType = "text/csv", Buffer = System.Text.Encoding.UTF8.GetBytes(sheet) });
        await page.Locator("[name=map]").FillAsync(Map);
        await page.GetByRole(AriaRole.Button, new() { Name = "Preview" }).ClickAsync();
    }

    [Theory]
    [InlineData("4", "section:first-of-type li:first-child a", "4")]
    [InlineData("alder bottom 5", "section:has(h2:text('Spots')) a", "Alder Bottom 5")]
    [InlineData("26-03", "section:has(h2:text('Queens')) a", "26-03")]
    [InlineData("riverside", "section:has(h2:text('Yards')) a", "Riverside")]
    [InlineData("GIVE A CELL", "li.entry .said >> nth=0", "2026")]
    [InlineData("june grafts", ".entries", "June grafts")]
    public async Task Search_finds(string words, string where, string what)
    {
        var page = await OpenAsync($"/search?q={Uri.EscapeDataString(words)}");
        // A name is found as it is: '34' would contain '4'.
        if (where.StartsWith("section", StringComparison.Ordinal)) await Assertions.Expect(page.Locator(where).First).ToHaveTextAsync(what);
        else await Assertions.Expect(page.Locator(where).First).ToContainTextAsync(what);
    }

    private static async Task Picture(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("COLONY_LINEAGE_PICTURES") is { } folder)
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"form-{name}.png"), FullPage = true });
    }

    /// <summary>Every page with a form, by a name for a picture.</summary>
    public static TheoryData<string, string> Pages
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var (name, path) in All) data.Add(name, path);
            return data;
        }
    }

    private static IEnumerable<(string Name, string Path)> All =>
    [
        ("record", $"/record?yard={Alder}"),
        ("catch-up", $"/catch-up?yard={Alder}"),
        ("import", "/import"),
        ("rounds", "/rounds"),
        ("search", "/search?q=4"),
        ("void", $"/void?act={SmallOutfit.Make().Recorded.First(one => one.Entry is Washed).Entry.Act}"),
        // Forms laid out from a kind's fields are alike: two that have every sort of blank between them stand for all.
        .. Forms.Acts.ActForms.All.Where(form => form is not Forms.Acts.KindForm || form.Name is "course-defined" or "fed").Select(form => ($"record-{form.Name}", $"/record?act={form.Name}&colony={SmallOutfit.ColonyNamed("N26-9").Value}")),
    ];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task A_form_is_fit_for_all_eyes_and_widths(string name, string path)
    {
        var page = await OpenAsync(path);
        foreach (var (width, dark) in new[] { (1280, false), (360, true), (360, false), (1280, true) })
        {
            await page.SetViewportSizeAsync(width, 900);
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
            Assert.True(await page.Locator("h1").CountAsync() == 1, await page.ContentAsync());
            await Picture(page, $"{name}-{width}{(dark ? "-dark" : "")}");
            if (width == 360) Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 360, $"{name} is wider than 360 pixels.");
            if (width == 1280 || dark)
            {
                var found = await page.RunAxe();
                Assert.True(found.Violations.Length == 0, string.Join("\n", found.Violations.SelectMany(one => one.Nodes.Select(node => $"{one.Id}: {node.Html}"))));
            }
        }
    }
}
