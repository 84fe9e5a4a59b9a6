using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace ColonyLineage.Desk.Tests;

/// <summary>The pages in a real browser, over the small outfit in memory.</summary>
public sealed class PagesTests(Browser browser)
{
    /// <summary>Pages that other rooms of the desk bring; a link to one is no fault of these.</summary>
    private static readonly string[] NotOurs = ["/record", "/catch-up", "/import", "/search", "/void", "/rounds", "/owed-work.ics"];

    public static TheoryData<string, string> Pages
    {
        get
        {
            var pages = new TheoryData<string, string>();
            foreach (var (name, path) in Places.All) pages.Add(name, path);
            return pages;
        }
    }

    /// <summary>
    /// A title, one heading, its caution, nothing in the console; WCAG 2.2 A and AA as axe-core tests them (the target size of 2.5.8 included), in both colour
    /// schemes; and 360 pixels wide it does not scroll sideways. One page is kept open for all of them: most of a test's time goes into opening one.
    /// </summary>
    [Theory, MemberData(nameof(Pages))]
    public async Task A_page_is_whole_and_fit_for_all_eyes_and_widths(string name, string path)
    {
        var page = await browser.SharedAsync<PagesTests>();
        var said = new List<string>();
        void Console(object? _, IConsoleMessage message) => said.Add(message.Text);
        void Fault(object? _, string error) => said.Add(error);
        page.Console += Console;
        page.PageError += Fault;
        var answer = await page.GotoAsync(path);
        page.Console -= Console;
        page.PageError -= Fault;
        Assert.True(answer!.Ok, $"{name}: {answer.Status}");
        Assert.NotEmpty(await page.TitleAsync());
        Assert.Equal(1, await page.Locator("h1").CountAsync());
        Assert.Contains("Nothing here is a dose, a diagnosis or legal advice", await page.Locator("footer").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(said);
        var faults = await Looking.FaultsAsync(page);
        Assert.True(faults.Count == 0, $"{name}:\n{string.Join('\n', faults)}");
    }

    [Fact]
    public async Task The_keyboard_reaches_the_skip_link_first_then_the_menu()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/");
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("Skip to the answer", await page.EvaluateAsync<string>("document.activeElement.textContent"));
        var reached = new List<string>();
        for (var i = 0; i < 20; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            reached.Add((await page.EvaluateAsync<string>("document.activeElement.textContent")).Trim());
        }

        foreach (var place in new[] { "Yards", "Owed work", "Queens by age", "Doses", "Mites", "Stores", "Losses", "Lines", "Spot story", "Lineage", "Conflicts", "Treatments", "Winter", "Record", "Catch up", "Import" }) Assert.Contains(place, reached);
        await page.Locator(".skip").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        Assert.Equal("main", await page.EvaluateAsync<string>("document.activeElement.id"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_focus_is_seen()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("solid", await page.EvaluateAsync<string>("getComputedStyle(document.activeElement).outlineStyle"));
        Assert.Equal("3px", await page.EvaluateAsync<string>("getComputedStyle(document.activeElement).outlineWidth"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Looking_back_keeps_its_clocks_from_page_to_page_and_says_so()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/");
        await page.GetByText("Look back", new PageGetByTextOptions { Exact = true }).ClickAsync();
        await page.Locator("#as-of").FillAsync("2025-07-01");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Look", Exact = true }).ClickAsync();
        Assert.Contains("as-of=2025-07-01", page.Url, StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Alder Bottom" }).First.ClickAsync();
        Assert.Contains("as-of=2025-07-01", page.Url, StringComparison.Ordinal);
        Assert.Contains("end of 1 Jul 2025", await page.Locator(".back").InnerTextAsync(), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Back to today" }).ClickAsync();
        Assert.Equal(0, await page.Locator(".back").CountAsync());
        await page.Context.CloseAsync();
    }

    /// <summary>Case D7 of the worked cases in its small way: the voided dose on colony 3 stood in the books until 6 September.</summary>
    [Fact]
    public async Task What_the_books_held_before_a_void_can_be_asked()
    {
        using var http = new HttpClient { BaseAddress = new Uri(browser.Root) };
        var now = await http.GetStringAsync("/dose-completeness?colony=3&season=2026", TestContext.Current.CancellationToken);
        var then = await http.GetStringAsync("/dose-completeness?colony=3&season=2026&known-at=2026-09-05", TestContext.Current.CancellationToken);
        Assert.Contains("1 of 2", now, StringComparison.Ordinal);
        Assert.Contains("2 of 2", then, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_voided_entry_is_struck_through_and_says_who_when_and_why()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync($"/colonies/{SmallOutfit.ColonyNamed("3").Value}");
        var voided = page.Locator(".entry.void");
        Assert.Equal(1, await voided.CountAsync());
        Assert.Contains("line-through", await voided.Locator(".said").First.EvaluateAsync<string>("one => getComputedStyle(one).textDecorationLine"), StringComparison.Ordinal);
        var said = await voided.InnerTextAsync();
        Assert.Contains("Voided by Ine, recorded 6 Sep 2026", said, StringComparison.Ordinal);
        Assert.Contains("It was colony 8, which has its own entry.", said, StringComparison.Ordinal);
        Assert.Equal(0, await voided.GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = "void" }).CountAsync());
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Every_link_leads_somewhere()
    {
        using var http = new HttpClient { BaseAddress = new Uri(browser.Root) };
        var waiting = new Queue<string>(["/", .. Places.All.Select(place => place.Path)]);
        var seen = new HashSet<string>(waiting);
        var broken = new List<string>();
        while (waiting.TryDequeue(out var path) && seen.Count < 2500)
        {
            var answer = await http.GetAsync(path, TestContext.Current.CancellationToken);
            if (!answer.IsSuccessStatusCode)
            {
                broken.Add($"{(int)answer.StatusCode} {path}");
                continue;
            }

            var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            foreach (var link in Links(html))
            {
                var to = link.Split('#')[0];
                // Data of the same address comes from the server; the crawl goes on by today's books and by one look back.
                if (to.Length == 0 || !to.StartsWith('/') || to.Contains("format=", StringComparison.Ordinal) || NotOurs.Any(other => to.Split('?')[0] == other)) continue;
                if (Variants.Count(variant => to.Contains(variant, StringComparison.Ordinal)) > 0 && seen.Count > 600) continue;
                if (seen.Add(to)) waiting.Enqueue(to);
            }
        }

        Assert.True(broken.Count == 0, string.Join('\n', broken.Take(20)));
        Assert.True(seen.Count > 100, $"Only {seen.Count} links were followed.");
    }

    private static readonly string[] Variants = ["sort=", "as-of=", "up=", "down=", "open=", "fold=", "folded-group=", "/lineage/drawing", "page=", "/entries?", "/why/", "/owed-work/answer"];

    [Fact]
    public async Task What_is_not_in_the_books_is_a_404_with_a_page()
    {
        using var http = new HttpClient { BaseAddress = new Uri(browser.Root) };
        foreach (var path in new[] { $"/yards/{Guid.Empty}", $"/yards/{SmallOutfit.YardNamed("Riverside").Value}/spots/none", $"/colonies/{Guid.Empty}", $"/queens/{Guid.Empty}", "/why/nothing" })
        {
            var answer = await http.GetAsync(path, TestContext.Current.CancellationToken);
            Assert.Equal(System.Net.HttpStatusCode.NotFound, answer.StatusCode);
            Assert.Contains("Not in the books", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_day_that_is_none_is_said_and_left_out()
    {
        using var http = new HttpClient { BaseAddress = new Uri(browser.Root) };
        var html = await http.GetStringAsync("/?as-of=yesterday", TestContext.Current.CancellationToken);
        Assert.Contains("is not a day", html, StringComparison.Ordinal);
        Assert.Contains("Alder Bottom", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pages_run_no_script()
    {
        using var http = new HttpClient { BaseAddress = new Uri(browser.Root) };
        foreach (var (_, path) in Places.All)
            Assert.DoesNotContain("<script", await http.GetStringAsync(path, TestContext.Current.CancellationToken), StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>In a drawing no text leaves the picture, no box covers another, no text runs over the side of its box.</summary>
    [Theory]
    [InlineData("spot"), InlineData("spot-two"), InlineData("queen"), InlineData("breeder"), InlineData("colony"), InlineData("many"), InlineData("drawing"), InlineData("drawing-many"), InlineData("drawing-up"), InlineData("drawing-colony"), InlineData("mites"), InlineData("mites-yard"), InlineData("losses"), InlineData("losses-yards"), InlineData("lines-mothers")]
    public async Task Nothing_in_a_drawing_is_cut_or_overlaps(string name)
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(Places.All.Single(place => place.Name == name).Path);
        var faults = await page.EvaluateAsync<JsonElement>(
            """
            () => {
              const faults = [];
              for (const svg of document.querySelectorAll('.drawing svg')) {
                const all = svg.getBoundingClientRect();
                const texts = [...svg.querySelectorAll('text')].map(one => ({ said: one.textContent, box: one.getBoundingClientRect() }));
                for (const { said, box } of texts)
                  if (box.left < all.left - 1 || box.right > all.right + 1 || box.top < all.top - 1 || box.bottom > all.bottom + 1) faults.push('cut: ' + said);
                for (let i = 0; i < texts.length; i++) for (let j = i + 1; j < texts.length; j++) {
                  const a = texts[i].box, b = texts[j].box;
                  if (a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 4 && b.top < a.bottom - 4) faults.push('over each other: ' + texts[i].said + ' and ' + texts[j].said);
                }
                for (const link of svg.querySelectorAll('a')) {
                  const rect = link.querySelector('rect').getBoundingClientRect();
                  if (link.closest('.kin')) for (const text of link.querySelectorAll('text')) {
                    const box = text.getBoundingClientRect();
                    if (box.right > rect.right || box.left < rect.left || box.bottom > rect.bottom + 1) faults.push('out of its box: ' + text.textContent);
                  }
                }
                const boxes = [...svg.querySelectorAll('a.box > rect')].map(one => one.getBoundingClientRect());
                for (let i = 0; i < boxes.length; i++) for (let j = i + 1; j < boxes.length; j++)
                  if (boxes[i].left < boxes[j].right && boxes[j].left < boxes[i].right && boxes[i].top < boxes[j].bottom && boxes[j].top < boxes[i].bottom) faults.push('boxes ' + i + ' and ' + j);
              }
              return faults;
            }
            """);
        Assert.Equal("[]", faults.ToString());
        await page.Context.CloseAsync();
    }

    private static IEnumerable<string> Links(string html)
    {
        foreach (var piece in html.Split("href=\"").Skip(1))
            yield return System.Net.WebUtility.HtmlDecode(piece[..piece.IndexOf('"', StringComparison.Ordinal)]);
    }
}
