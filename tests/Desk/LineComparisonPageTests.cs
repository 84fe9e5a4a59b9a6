using System.Net;
using Microsoft.Playwright;
using Xunit;
using static ColonyLineage.Desk.Tests.Said;

namespace ColonyLineage.Desk.Tests;

/// <summary>The page that compares lines, over an outfit in which Sloe has 12 kg more honey than Brindle and Ember, Rowan is of one mother, and Quill stands in a yard of its own.</summary>
public sealed class LineComparisonPageTests(Browser browser) : IAsyncLifetime
{
    private DeskHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await DeskHost.StartAsync(new MemoryOffice(LinesOutfit.Make(), LinesOutfit.Today));

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task What_has_to_be_said_first_stands_before_any_figure_and_verdicts_before_the_picture()
    {
        var text = await TextAsync("/line-comparison?trait=honey");
        InOrder(text,
            "To be said first", "Quill shares no yard and season with another line: what is the line's and what is the place's cannot be told apart.", "4 records of queens of no line left out.",
            "What may be said", "Sloe has more honey than Brindle: 12.", "4 and 4 mothers, 16 and 16 colonies", "cannot say:",
            "Line by line", "can be said to differ: of the others, which stands above which means nothing.", "<svg", "These stand apart", "Where the differences lie", "Before anybody acts on it", "A brood pattern alone condemns no queen.");
        Holds(text,
            "<strong>Rowan</strong> (1 mother, 4 colonies) has one mother only", "<strong>Quill</strong> (3 mothers, 6 colonies) shares no yard and season", "4 colonies only",
            "Brindle and Rowan: cannot say: Rowan has fewer than two mothers. It takes two mothers in each line at the least to say anything; there are 4 and 1.", "mothers in each line, about", "between mothers of one line", "href=\"/line-comparison\" aria-current=\"page\"",
            "/line-pairs?trait=honey&by=line&format=csv", "/line-comparison?trait=honey&by=line&format=json");
        // Neither a line apart nor one of one mother is in the picture.
        Assert.DoesNotContain("Rowan, 1 mother", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Quill, 3 mothers", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_picture_says_the_figures_of_the_table()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync($"{_host.Root}/line-comparison?trait=honey");
        var drawing = page.GetByRole(AriaRole.Img, new PageGetByRoleOptions { Name = "Lines by honey" });
        Assert.Equal(1, await drawing.CountAsync());
        Assert.Equal((3, 3), (await drawing.Locator(".point").CountAsync(), await drawing.Locator(".whisker-line").CountAsync()));
        var said = (await drawing.Locator("desc").TextContentAsync())!;
        foreach (var line in new[] { "Sloe", "Brindle", "Ember" })
        {
            var row = page.Locator("table.line-figures tbody tr").Filter(new LocatorFilterOptions { HasText = line });
            var figure = (await row.Locator("td[data-head^=Adjusted] > span").InnerTextAsync()).Split('\n')[0].Trim();
            Assert.Contains(")", figure, StringComparison.Ordinal);
            Holds(said, $"{line}, 4 mothers, {(line == "Ember" ? 32 : 16)} colonies: {figure}.");
        }

        // Sloe's point lies to the right of the mean, the others' to its left.
        var mean = await drawing.Locator(".zero").EvaluateAsync<double>("one => +one.getAttribute('x1')");
        var points = await drawing.Locator(".point").EvaluateAllAsync<double[]>("all => all.map(one => +one.getAttribute('cx'))");
        Assert.Equal([true, false, false], points.Select(x => x > mean));
        Holds(said, "wanted: more honey →");
    }

    [Fact]
    public async Task Where_no_pair_differs_it_is_said_above_the_picture_and_nothing_is_claimed_of_mothers()
    {
        var text = await TextAsync("/line-comparison?trait=broodPattern");
        Holds(text, "All records within a yard and season are alike: there is nothing to compare by.");
        InOrder(await TextAsync("/line-comparison?trait=strength"), "Cannot say: no two of the 4 lines that can be compared differ by more than chance makes.", "No two lines can be said to differ: which stands above which means nothing here.", "<svg");
        InOrder(await TextAsync("/line-comparison?trait=honey&by=mother"), "Nothing is claimed of mothers; predictions are shown.", "in the order of their names, no ranking.", "<svg");
    }

    /// <summary>Sloe's daughters and their mothers have 12 kg more: they come first. Where a queen is stands beside her; one that is gone is left out until she is asked for.</summary>
    [Fact]
    public async Task Queens_are_predicted_by_their_kin_and_nothing_is_claimed()
    {
        var text = await TextAsync("/line-comparison?trait=honey&by=queen&season=2026");
        InOrder(text, "Nothing is claimed of queens; predictions are shown.", "Queen by queen", "The next one in the list may as well be the better one", "the first 20 of the table below", "<svg", "Rowan 1-", "in Rowan 1-", "Where the differences lie", "is handed down from queen to daughter", "between queens, inherited as far as the pedigree tells", "between queens without being inherited, and in measuring");
        Holds(text, "1–50 of 76", "/line-comparison?trait=honey&by=queen&season=2026&living=true&format=csv", "option value=\"all\"");
        Assert.DoesNotContain("/line-pairs?", text, StringComparison.Ordinal);
        Assert.DoesNotContain("has fewer than two mothers", text, StringComparison.Ordinal);
        Holds(await TextAsync("/line-comparison?trait=honey&by=queen&season=2026&queens=all"), "1–50 of 76", "selected>all, those gone as well");
    }

    [Fact]
    public async Task All_traits_stand_in_a_line_each_and_lead_on()
    {
        var text = await TextAsync("/line-comparison");
        InOrder(text, "?trait=strength\"", "?trait=honey\"", "<strong>Sloe has more honey than Brindle: 12.", "?trait=temper\"", "?trait=broodPattern\"", "?trait=mitesFirst\"", "?trait=mitesLast\"", "There is no record of this trait in any line.", "Nothing to compare.", "?trait=miteGrowth\"", "?trait=winterLosses\"", "?trait=queenGone\"");
        Holds(text, "Which line of queens earns its place");
        Holds(await TextAsync("/line-comparison?by=queen"), "What is predicted for queens, trait by trait");
        Holds(await TextAsync("/line-comparison?line=Ember"), "Lines compared, Ember", "Cannot say: Ember differs from none of the 4 others by more than chance makes.");
    }

    /// <summary>32 colonies of Ember in two seasons: 64 records, 16 of each mother, 50 on the first page.</summary>
    [Fact]
    public async Task A_line_opens_to_all_its_records_mother_by_mother_each_with_its_entries()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync($"{_host.Root}/line-comparison?trait=honey");
        await page.Locator("table.line-figures a").Filter(new LocatorFilterOptions { HasText = "Ember" }).First.ClickAsync();
        Assert.EndsWith("/line-comparison?trait=honey&line=Ember", page.Url, StringComparison.Ordinal);
        Holds(await page.Locator("main").InnerTextAsync(), "4 mothers, 32 colonies, 64 records", "1–50 of 64");
        Assert.Equal((4, 50, 50), await Rows());
        Holds(await page.Locator("tr.group").First.InnerTextAsync(), "Mother Ember 1", "8 colonies, 16 records, mean as recorded");
        var row = page.Locator("table.line-records tbody tr:not(.group)").First;
        Holds(await row.InnerTextAsync(), "Ember 1-1", "East", "2025", "kg");
        await row.Locator(".why").ClickAsync();
        Holds(await page.Locator("main").InnerTextAsync(), "Why: colony Ember 1-1, season 2025, honey", "20 Jul 2025", "Harvested");
        await page.GoBackAsync();
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Next" }).ClickAsync();
        Assert.Equal((1, 14, 14), await Rows());
        Holds(await page.Locator("tr.group").InnerTextAsync(), "Mother Ember 4", "8 colonies, 16 records");
        Holds(await TextAsync("/line-comparison?trait=honey&line=no%20line"), "2 colonies, 4 records", "Mother not known");

        async Task<(int, int, int)> Rows() => (await page.Locator("tr.group").CountAsync(), await page.Locator("table.line-records tbody tr:not(.group)").CountAsync(), await page.Locator("table.line-records .why").CountAsync());
    }

    /// <summary>A line's figure rests on more entries than an address carries: the address finds them anew.</summary>
    [Fact]
    public async Task Figures_and_verdicts_lead_to_their_entries()
    {
        var text = await TextAsync("/line-comparison?trait=honey");
        Holds(text, "/why/line-comparison?trait=honey&line=Sloe", "/why/line-pairs?trait=honey&line=Brindle&other=Sloe");
        var sloe = await TextAsync("/why/line-comparison?trait=honey&line=Sloe");
        var both = await TextAsync("/why/line-pairs?trait=honey&line=Brindle&other=Sloe");
        Assert.Equal((16, 32), (Count(sloe, "20 Jul 2026</time>"), Count(both, "20 Jul 2026</time>")));
        Assert.DoesNotContain("Ember", sloe, StringComparison.Ordinal);
        Assert.Contains("Not in the books", await (await GetAsync("/why/line-comparison?trait=hunny")).Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);

        static int Count(string text, string piece) => text.Split(piece).Length - 1;
    }

    [Theory]
    [InlineData("trait=hunny", "There is no trait 'hunny': it was left out. Take one of strength, honey, temper, broodPattern, mitesFirst, mitesLast, miteGrowth, winterLosses, queenGone.")]
    [InlineData("by=yard", "There is no way to compare 'yard': it was left out. Take one of line, mother, queen, maker.")]
    [InlineData("trait=honey&season=2019", "There is no season '2019' in the books: all seasons are shown. Take one of 2026, 2025.")]
    [InlineData("trait=honey&season=x", "There is no season 'x' in the books")]
    [InlineData("trait=honey&line=Slow", "There is no line 'Slow' with such a record. Take one of Brindle, Ember, no line, Quill, Rowan, Sloe.")]
    [InlineData("line=Slow", "There is no line 'Slow' with such a record.")]
    public async Task A_word_that_is_none_is_answered_in_words(string query, string message)
    {
        var answer = await GetAsync($"/line-comparison?{query}");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var text = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Holds(text, "class=\"refused\" role=\"alert\"", message);
    }

    [Fact]
    public async Task A_season_and_a_look_back_are_kept()
    {
        Holds(await TextAsync("/line-comparison?trait=honey&season=2025"), "Season 2025 alone.", "16 records in 2 yards", "season=2025&line=Sloe");
        Holds(await TextAsync("/line-comparison?trait=honey&as-of=2025-12-01"), "16 records in 2 yards", "line=Sloe&as-of=2025-12-01");
        Holds(await TextAsync("/line-comparison?as-of=2020-01-01"), "Nothing that lines could be compared by is in the books by then.");
    }

    [Theory]
    [InlineData("")]
    [InlineData("?trait=honey")]
    [InlineData("?trait=mitesFirst&by=mother")]
    [InlineData("?trait=winterLosses")]
    [InlineData("?trait=honey&line=Ember")]
    [InlineData("?trait=hunny")]
    public async Task It_is_fit_for_all_eyes_and_widths(string query)
    {
        var page = await browser.SharedAsync<LineComparisonPageTests>();
        await page.GotoAsync($"{_host.Root}/line-comparison{query}");
        var faults = await Looking.FaultsAsync(page);
        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    private async Task<HttpResponseMessage> GetAsync(string path)
    {
        using var http = new HttpClient { BaseAddress = new Uri(_host.Root) };
        return await http.GetAsync(path, TestContext.Current.CancellationToken);
    }

    private async Task<string> TextAsync(string path)
    {
        var text = await (await GetAsync(path)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        return string.Join(' ', WebUtility.HtmlDecode(text).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
