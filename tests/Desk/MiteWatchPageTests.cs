using System.Net;
using ColonyLineage.Entries;
using Microsoft.Playwright;
using Xunit;
using static ColonyLineage.Desk.Tests.Said;

namespace ColonyLineage.Desk.Tests;

/// <summary>
/// The page of the washes over the small outfit. Alder Bottom: 32 mites in 7 washes of 300 in August, 1 in 5 washes in September after doses; the
/// Quarry: 127 in 5 washes in August. What the statistics say of them: R 4.2.2, pnbinom(32, 7, mu = 63) = 0.0894, pnbinom(1, 2.5, mu = 45) = 0.00214,
/// 1 - pnbinom(126, 5, mu = 45) = 0.0023.
/// </summary>
public sealed class MiteWatchPageTests(Browser browser)
{
    private const string Quarry = "The Old Quarry above Tarrant's Lane";

    [Fact]
    public async Task The_rule_of_thumb_and_the_statistics_stand_side_by_side()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/mite-watch?season=2026");
        var rows = await page.Locator("table.rounds tbody tr").AllInnerTextsAsync();
        Assert.Equal(3, rows.Count);
        Holds(rows[0], "Alder Bottom", "18 Aug 2026", "7 washes", "32 mites of 2,100 bees", "1.52", "whole yard is due", "14 mites, colony 7", "cannot say: 3 more colonies to wash", "if they are like those that were");
        Holds(rows[1], "Alder Bottom", "24 Sep 2026", "5 washes", "1 mite of 1,500 bees", "0.07", "wanted", "1 mite, colony 2", "below 3 per 100, error 0.2 %");
        Holds(rows[2], Quarry, "18 Aug 2026 to 25 Aug 2026", "5 washes", "127 mites of 1,500 bees", "8.47", "whole yard is due", "34 mites, colony 34", "above 3 per 100");
        // What is due is told by words and by a bar at the side, not by colour alone.
        Assert.Equal(2, await page.Locator("table.rounds tr.due").CountAsync());
        Assert.Contains("inset", await page.Locator("table.rounds tr.due th").First.EvaluateAsync<string>("one => getComputedStyle(one).boxShadow"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_the_yards_that_stand_out_by_their_latest_round_are_drawn_and_the_others_are_linked()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/mite-watch");
        Assert.Equal(1, await page.Locator("figure svg.mites").CountAsync());
        Assert.Equal(Quarry, (await page.Locator("figure h3").InnerTextAsync()).Trim());
        var other = page.Locator(".others a");
        Assert.Equal("Alder Bottom", (await other.InnerTextAsync()).Trim());
        await other.ClickAsync();
        Assert.Contains("yard=Alder%20Bottom", page.Url, StringComparison.Ordinal);
        Assert.Equal(1, await page.Locator("figure").CountAsync());
        // By the end of August only its first round is known, and it stands out.
        await page.GotoAsync("/mite-watch?as-of=2026-08-31");
        Assert.Equal(2, await page.Locator("figure svg.mites").CountAsync());
    }

    [Theory, InlineData(1280, "broad"), InlineData(400, "narrow")]
    public async Task The_plot_of_a_yard_has_a_name_and_says_its_rounds_and_one_size_is_shown(int width, string shown)
    {
        await using var opened = await browser.OpenAsync(width);
        var page = opened.Page;
        await page.GotoAsync("/mite-watch?yard=Alder%20Bottom");
        var plot = page.Locator("figure svg.mites:visible");
        Assert.Equal(1, await plot.CountAsync());
        Assert.Contains(shown, (await plot.GetAttributeAsync("class"))!, StringComparison.Ordinal);
        Assert.Equal(1, await page.GetByRole(AriaRole.Img, new PageGetByRoleOptions { Name = "Mites per 100 bees in Alder Bottom, season 2026" }).CountAsync());
        var said = await plot.Locator("desc").TextContentAsync();
        Holds(said!, "Round of 18 Aug 2026: 7 washes, 32 mites of 2100 bees, mean 1.52 per 100", "Round of 24 Sep 2026: 5 washes, 1 mite of 1500 bees", "The threshold is 3 per 100.");
        Assert.Equal((12, 2), (await plot.Locator(".wash").CountAsync(), await plot.Locator(".round").CountAsync()));
        // The last doses before the washes of September: 20 August and 3 September.
        Assert.NotEqual(0, await plot.Locator(".dose").CountAsync());
        Assert.Contains("threshold 3", await plot.InnerHTMLAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task At_most_six_yards_are_drawn_and_every_other_is_linked()
    {
        var recorded = new List<Recorded>();
        for (var yard = 1; yard <= 8; yard++) Washed(recorded, yard, mites: 10 + yard);
        await using var host = await DeskHost.StartAsync(new MemoryOffice(recorded, SmallOutfit.Today));
        using var http = new HttpClient { BaseAddress = new Uri(host.Root) };
        var html = await http.GetStringAsync("/mite-watch", TestContext.Current.CancellationToken);
        Assert.Equal(6, html.Split("<figure").Length - 1);
        Assert.Equal(8, html.Split("class=\"due\"").Length - 1);
        // The highest are drawn.
        var others = html[html.IndexOf("<ul class=\"inline others\"", StringComparison.Ordinal)..html.IndexOf("id=\"rounds\"", StringComparison.Ordinal)];
        Assert.Equal([1, 2], Enumerable.Range(1, 8).Where(yard => others.Contains($"yard=Y{yard}&", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task It_says_that_none_found_is_not_none_there_and_where_its_settings_are_from()
    {
        var text = await TextAsync("/mite-watch");
        Holds(text, "No mites in a wash is not 'free of mites'.", "3 mites per 100 bees: USDA-ARS, as quoted by extension guides", "1, and 0.5 where most colonies of the round had a dose within 90 days before: after Aurell et al. 2024", "common practice, no source", "the label and local law bind");
    }

    [Fact]
    public async Task A_threshold_of_the_outfits_own_is_not_said_to_be_anybody_elses()
    {
        var recorded = new List<Recorded>();
        Washed(recorded, 1, mites: 2);
        var on = new DateOnly(2026, 3, 1);
        recorded.Add(new Recorded(new OutfitDescribed { Id = new EntryId(Guid.CreateVersion7()), On = new Occurred(on), Act = new ActId(Guid.CreateVersion7()), MiteThreshold = 2, MiteSpread = 0.7m }, new DateTimeOffset(on, TimeOnly.MinValue, TimeSpan.Zero)));
        await using var host = await DeskHost.StartAsync(new MemoryOffice(recorded, SmallOutfit.Today));
        using var http = new HttpClient { BaseAddress = new Uri(host.Root) };
        var text = WebUtility.HtmlDecode(await http.GetStringAsync("/mite-watch?yard=Y1", TestContext.Current.CancellationToken));
        Holds(text, "2 mites per 100 bees; 3, where nothing is set, is of the USDA-ARS", "0.7, and 0.5 where most", "threshold 2</text>");
    }

    [Fact]
    public async Task Washes_are_listed_one_by_one_sorted_as_asked_and_open_to_their_entries()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/mite-watch?yard=Alder%20Bottom&sort=-per100");
        var first = page.Locator("section[aria-labelledby=washes] tbody tr").First;
        // 14 of 300, Wilson: 2.80 to 7.68 per 100 (R 4.2.2, prop.test(14, 300, correct = FALSE)).
        Holds(await first.InnerTextAsync(), "Alder Bottom 7", "18 Aug 2026", "14", "about 300", "4.67", "2.80 to 7.68");
        await first.Locator(".why").ClickAsync();
        Holds(await page.Locator("main").InnerTextAsync(), "Why: wash of colony 7, 18 Aug 2026", "14 mites");
        await page.GotoAsync("/mite-watch?yard=Alder%20Bottom");
        await page.Locator("table.rounds .why").First.ClickAsync();
        Holds(await page.Locator("main").InnerTextAsync(), "Why: round of 18 Aug 2026 in Alder Bottom", "14 mites");
    }

    /// <summary>A round of very many washes rests on more entries than an address can carry; this address finds them anew.</summary>
    [Fact]
    public async Task The_entries_of_a_round_are_found_by_its_yard_and_days()
    {
        var text = await TextAsync($"/why/mite-watch?yard={SmallOutfit.YardNamed("Alder Bottom").Value}&from=2026-09-24&to=2026-09-24");
        Assert.Equal(5, text.Split("24 Sep 2026</time>").Length - 1);
        Assert.DoesNotContain("18 Aug 2026</time>", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_season_without_a_wash_says_so_and_leads_to_the_last_one_that_has_some()
    {
        var text = await TextAsync("/mite-watch?season=2019");
        Holds(text, "No wash of season 2019 is in the books", "season=2026", "The last washes are of season 2026");
        Holds(await TextAsync("/mite-watch?yard=Riverside"), "No wash of season 2026 is in the books for this yard");
    }

    [Fact]
    public async Task A_yards_page_leads_to_its_washes() =>
        Assert.Contains("href=\"/mite-watch?yard=Alder%20Bottom\"", await TextAsync($"/yards/{SmallOutfit.YardNamed("Alder Bottom").Value}"), StringComparison.Ordinal);

    private static void Washed(List<Recorded> recorded, int yard, int mites)
    {
        var on = new Occurred(new DateOnly(2026, 8, 1));
        var (id, colony) = (SmallOutfit.YardNamed($"Y{yard}"), SmallOutfit.ColonyNamed($"Y{yard}"));
        ActId act = new(Guid.CreateVersion7());
        Entry[] entries =
        [
            new YardOpened { Id = New(), On = on, Act = act, Yard = id, Name = $"Y{yard}", Order = 1 },
            new ColonyEstablished { Id = New(), On = on, Act = act, Colony = colony, Number = $"{yard}", How = HowEstablished.Bought, At = new Spot(id, "1"), Order = 2 },
            new Washed { Id = New(), On = on, Act = act, Colony = colony, Mites = mites, Bees = 300, Order = 3 },
        ];
        recorded.AddRange(entries.Select(entry => new Recorded(entry, new DateTimeOffset(on.Day, TimeOnly.MinValue, TimeSpan.Zero))));

        static EntryId New() => new(Guid.CreateVersion7());
    }

    private async Task<string> TextAsync(string path)
    {
        using var http = new HttpClient { BaseAddress = new Uri(browser.Root) };
        return WebUtility.HtmlDecode(await http.GetStringAsync(path, TestContext.Current.CancellationToken));
    }
}
