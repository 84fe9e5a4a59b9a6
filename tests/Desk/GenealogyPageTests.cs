using System.Net;
using System.Text.RegularExpressions;
using ColonyLineage.Desk.Drawing.Whole;
using ColonyLineage.Entries;
using Microsoft.Playwright;
using Xunit;
using static ColonyLineage.Desk.Tests.Said;

namespace ColonyLineage.Desk.Tests;

/// <summary>The page of a whole pedigree or genealogy. In the small outfit B1 has eight descendants, M0 has 150 of whom none lives.</summary>
public sealed class GenealogyPageTests(Browser browser)
{
    [Fact]
    public async Task What_is_folded_is_counted_in_words_and_opened_and_folded_by_links_alone()
    {
        using var http = new HttpClient { BaseAddress = new Uri(browser.Root) };
        var first = await http.GetStringAsync("/lineage/drawing?queen=M0&all=yes", TestContext.Current.CancellationToken);
        Holds(first, "150 descendants through daughters, 0 of them living", "<strong>Generation 1</strong>: 30 queens, 0 living");
        Assert.Equal(151, Counted(first));
        var open = BoxLinks(first).First(link => link.Contains("open=", StringComparison.Ordinal));
        var opened = await http.GetStringAsync(open, TestContext.Current.CancellationToken);
        Assert.Equal(151, Counted(opened));
        Assert.True(BoxLinks(opened).Count > BoxLinks(first).Count, "Nothing was opened.");
        var fold = Regex.Matches(opened, "href=\"([^\"]*)\">fold<").Select(match => WebUtility.HtmlDecode(match.Groups[1].Value)).First();
        var folded = await http.GetStringAsync(fold, TestContext.Current.CancellationToken);
        Assert.Equal(151, Counted(folded));
        Assert.True(BoxLinks(folded).Count < BoxLinks(opened).Count, "Nothing was folded.");
        Holds(folded, "Folded as at first");
    }

    [Fact]
    public async Task A_box_opens_to_its_entries_and_a_folded_group_to_those_of_all_it_holds()
    {
        var html = await TextAsync("/lineage/drawing?queen=M0&all=yes");
        var group = Regex.Match(html, "href=\"(/why/drawing[^\"]*)\"");
        // The number stands in the box before the link.
        var members = Regex.Matches(html[..group.Index], "<tspan>(\\d+) queens, 0 living</tspan>")[^1].Groups[1].Value;
        // Each was raised by one entry.
        Holds(await TextAsync(group.Groups[1].Value), $"This rests on {members} entries");
        Holds(await TextAsync($"/why/lineage?queen={SmallOutfit.QueenNamed("25-01").Value}"), "Why: lineage", "Queen raised");
    }

    [Fact]
    public async Task The_living_are_drawn_with_those_that_lead_to_them_unless_all_are_asked_for()
    {
        // Of B1's descendants 24-01, 24-03 were killed; 26-01, 26-03 and 26-06 come of 25-01, that comes of 24-01.
        var living = await TextAsync("/lineage/drawing?queen=B1");
        Holds(living, "that no longer lives and leads to them", ">24-01</tspan>", ">25-01</tspan>", ">26-06</tspan>", "killed 20 Jun 2026");
        Assert.DoesNotContain(">24-03</tspan>", living, StringComparison.Ordinal);
        Holds(await TextAsync("/lineage/drawing?queen=B1&all=yes"), ">24-03</tspan>");
    }

    /// <summary>Whether she lives stands in words and in the shape of the mark, a supposed mother in the dash of the line.</summary>
    [Fact]
    public async Task Nothing_is_told_by_colour_alone()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/lineage/drawing?queen=24-02&way=both&all=yes");
        var gone = page.Locator("#kin-body .focal");
        Assert.Equal(1, await gone.Locator("circle.ended").CountAsync());
        Assert.Contains("superseded", await gone.TextContentAsync(), StringComparison.Ordinal);
        Assert.NotEqual("none", await page.Locator("#kin-body path.link.supposed").First.EvaluateAsync<string>("one => getComputedStyle(one).strokeDasharray"));
        Assert.Contains("mother, supposed", await page.Locator(".legend").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("lives", await page.Locator(".legend").InnerTextAsync(), StringComparison.Ordinal);
        // The keyboard stops once at a box: its entries are reached from the list.
        Assert.Equal(await page.Locator("#kin-body a.box").CountAsync(), await page.Locator("#kin-body a:not([tabindex='-1'])").CountAsync());
    }

    [Fact]
    public async Task The_list_has_daughters_under_their_mothers_and_each_with_its_entries()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/lineage/drawing?queen=B1&all=yes");
        await page.Locator("section[aria-labelledby=list] summary").ClickAsync();
        var daughter = page.Locator("section[aria-labelledby=list] li li li", new PageLocatorOptions { HasText = "25-01" }).First;
        Assert.Contains("born 2025, line Alder; lives, Alder Bottom 5", await daughter.Locator("> .quiet").InnerTextAsync(), StringComparison.Ordinal);
        await daughter.Locator("> .why").ClickAsync();
        Assert.Contains("Why: queen 25-01", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_ring_that_was_wrongly_entered_is_said_and_leads_to_its_entries()
    {
        var recorded = new List<Recorded>();
        Raised(recorded, "A", "C");
        Raised(recorded, "B", "A");
        Raised(recorded, "C", "B");
        await using var host = await DeskHost.StartAsync(new MemoryOffice(recorded, SmallOutfit.Today));
        using var http = new HttpClient { BaseAddress = new Uri(host.Root) };
        foreach (var way in new[] { "down", "up", "both" })
        {
            var html = WebUtility.HtmlDecode(await http.GetStringAsync($"/lineage/drawing?queen=A&all=yes&way={way}", TestContext.Current.CancellationToken));
            Holds(html, "Links that are not drawn", "no queen is her own ancestor", "↺");
            Assert.Equal(3, BoxLinks(html).Count);
        }
    }

    [Fact]
    public async Task Two_thousand_descendants_make_a_page_of_bounded_size()
    {
        var recorded = new List<Recorded>();
        Raised(recorded, "0", null);
        for (var i = 1; i <= 2000; i++) Raised(recorded, $"{i}", $"{i / 12}");
        await using var host = await DeskHost.StartAsync(new MemoryOffice(recorded, SmallOutfit.Today));
        using var http = new HttpClient { BaseAddress = new Uri(host.Root) };
        foreach (var by in new[] { "generation", "line", "yard", "batch" })
        {
            var path = $"/lineage/drawing?queen=0&all=yes&group={by}";
            for (var step = 0; step < 4; step++)
            {
                var html = await http.GetStringAsync(path, TestContext.Current.CancellationToken);
                Assert.Equal(2001, Counted(html));
                Assert.InRange(BoxLinks(html).Count, 4, Folding.Most);
                Assert.InRange(html.Length, 1, 400_000);
                path = BoxLinks(html).Last(link => link.Contains("open=", StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public async Task The_genealogy_of_a_colony_shows_what_it_was_made_from_combined_with_and_given()
    {
        Holds(await TextAsync("/lineage/drawing?colony=4&all=yes"), "Genealogy of colony 4", "combined into", ">7</tspan>");
        var frames = await TextAsync("/lineage/drawing?colony=4&all=yes&also=yes");
        Holds(frames, "frames of brood", ">8</tspan>");
        Holds(await TextAsync("/lineage/drawing?colony=N25-1&way=up"), "What colony N25-1 came of", "made from", ">1</tspan>", ">3</tspan>");
    }

    [Fact]
    public async Task The_pages_of_the_lineage_of_a_queen_and_of_a_colony_lead_to_it()
    {
        Holds(await TextAsync("/lineage?queen=B1"), $"/lineage/drawing?queen={SmallOutfit.QueenNamed("B1").Value}");
        Holds(await TextAsync($"/queens/{SmallOutfit.QueenNamed("B1").Value}"), $"/lineage/drawing?queen={SmallOutfit.QueenNamed("B1").Value}");
        Holds(await TextAsync($"/colonies/{SmallOutfit.ColonyNamed("4").Value}"), $"/lineage/drawing?colony={SmallOutfit.ColonyNamed("4").Value}");
    }

    [Fact]
    public async Task Who_is_not_in_the_books_is_said_to_be_not_there()
    {
        Holds(await TextAsync("/lineage/drawing?queen=nobody"), "The books have no queen 'nobody'.");
        Holds(await TextAsync("/lineage/drawing?colony=nobody"), "The books have no colony 'nobody'.");
        Holds(await TextAsync("/lineage/drawing"), "Name a queen");
    }

    /// <summary>On paper the drawing comes in sheets, and what belongs to the screen is left out.</summary>
    [Fact]
    public async Task On_paper_it_comes_in_sheets_with_the_same_letters()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        await page.SetViewportSizeAsync(1031, 718);
        await page.GotoAsync("/lineage/drawing?queen=M0&all=yes&group=batch");
        Assert.NotEqual(0, await page.Locator(".sheet:visible").CountAsync());
        Assert.False(await page.Locator(".folds").IsVisibleAsync());
        foreach (var sheet in await page.Locator(".sheet").AllAsync())
        {
            var size = (await sheet.BoundingBoxAsync())!;
            Assert.InRange(size.Height, 1, 718);
            // Letters of 12 units are at least 6.5 points high (1 point is 4/3 pixels).
            Assert.True(await sheet.Locator("svg").EvaluateAsync<double>("one => one.getBoundingClientRect().width / one.viewBox.baseVal.width") * 12 * 0.75 >= 6.5, "The letters are too small.");
        }
    }

    private static List<string> BoxLinks(string html) => [.. Regex.Matches(html, "<a href=\"([^\"]*)\" class=\"box\"").Select(match => WebUtility.HtmlDecode(match.Groups[1].Value))];

    /// <summary>Everybody that the boxes of a drawing stand for.</summary>
    private static int Counted(string html)
    {
        var body = html[html.IndexOf("id=\"kin-body\"", StringComparison.Ordinal)..html.IndexOf("id=\"kin-heads\"", StringComparison.Ordinal)];
        var titles = Regex.Matches(body, "class=\"box\".*?<title>(.*?)</title>", RegexOptions.Singleline).Select(match => match.Groups[1].Value).ToList();
        return titles.Sum(title => Regex.Match(title, "(\\d+) queens?, \\d+ living$") is { Success: true } many ? int.Parse(many.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture) : 1);
    }

    private static void Raised(List<Recorded> recorded, string name, string? mother)
    {
        var on = new Occurred(new DateOnly(2024, 6, 1));
        var entry = new QueenRaised { Id = new EntryId(Guid.CreateVersion7()), On = on, Act = new ActId(Guid.CreateVersion7()), Queen = SmallOutfit.QueenNamed(name), Name = name, Mother = mother is null ? null : SmallOutfit.QueenNamed(mother), Born = on };
        recorded.Add(new Recorded(entry, new DateTimeOffset(on.Day, TimeOnly.MinValue, TimeSpan.Zero)));
    }

    private async Task<string> TextAsync(string path)
    {
        using var http = new HttpClient { BaseAddress = new Uri(browser.Root) };
        return WebUtility.HtmlDecode(await http.GetStringAsync(path, TestContext.Current.CancellationToken));
    }
}
