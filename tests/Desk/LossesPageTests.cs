using System.Net;
using ColonyLineage.Entries;
using Microsoft.Playwright;
using Xunit;
using static ColonyLineage.Desk.Tests.Said;

namespace ColonyLineage.Desk.Tests;

/// <summary>
/// The page of losses over the small outfit, of which 8 colonies began in June 2024, one was found dead in February 2025 and one combined away in September 2026;
/// and over 48 colonies in two yards, made so that pooling misleads.
/// </summary>
public sealed class LossesPageTests(Browser browser)
{
    /// <summary>1 of 8: R 4.2.2, prop.test(1, 8, correct = FALSE), 0.0224 to 0.4709.</summary>
    [Fact]
    public async Task A_rate_stands_with_its_intervals_what_few_colonies_weigh_and_the_entries_it_rests_on()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/losses?period=winter");
        var row = page.Locator("table.rates tbody tr").Filter(new LocatorFilterOptions { HasText = "winter 2024/25" });
        Holds(await row.InnerTextAsync(), "1 Oct 2024 to 15 Apr 2025", "1 of 8", "12.5 %", "2.2 to 47.1 %", "one yard: none", "few: one colony is 12.5 %");
        // 1 October 2026 is the first day of the next winter.
        Holds(await page.Locator("table.rates tbody tr").First.InnerTextAsync(), "winter 2026/27", "not over", "so far", "none lost: none");
        await row.Locator(".why").ClickAsync();
        Holds(await page.Locator("main").InnerTextAsync(), "Why: whole outfit, winter 2024/25", "few bees on the comb");
    }

    [Fact]
    public async Task It_says_what_a_lost_colony_is_that_periods_are_not_summed_and_whose_the_intervals_are()
    {
        Holds(await TextAsync("/losses"),
            "if it has no living bees, too few to go on, or a queen problem that cannot be solved", "van der Zee et al. 2013", "Winter, summer and year are not summed:",
            "no interval here belongs to it", "All intervals here belong to the overall rate", "1 October to 15 April", "href=\"/losses\" aria-current=\"page\"");
        Holds(await TextAsync("/losses?as-of=2020-01-01"), "No colony is in the books by then");
        Holds(await TextAsync("/losses?by=treatment&period=summer"), "courses are told of before winters alone");
    }

    [Fact]
    public async Task Rates_are_drawn_as_bars_with_whiskers_and_said_in_words()
    {
        await using var opened = await browser.OpenAsync(400);
        var page = opened.Page;
        await page.GotoAsync("/losses?by=yard&period=winter&winter=2025");
        var drawing = page.GetByRole(AriaRole.Img, new PageGetByRoleOptions { Name = "Rates of loss, winter" });
        Assert.Equal(1, await drawing.CountAsync());
        Assert.Equal((2, 2, 0), (await drawing.Locator(".loss").CountAsync(), await drawing.Locator(".wilson").CountAsync(), await drawing.Locator(".clustered").CountAsync()));
        // 8 at Alder Bottom: seven of the first, and the nuc of May 2025.
        Holds((await drawing.Locator("desc").TextContentAsync())!, "Alder Bottom: 0 of 8 lost, overall 0 %", "The Old Quarry above Tarrant's Lane: 0 of 4 lost");
    }

    /// <summary>
    /// 14 colonies of known age. At day 210 one of 13 watched was lost: 92.3 %, R 4.2.2, survfit(conf.type = "log-log"), 56.6 to 98.9 %. At day 821 one of 7 was combined away:
    /// 12/13 x 1/7 = 13.2 %.
    /// </summary>
    [Fact]
    public async Task How_long_colonies_last_with_how_many_were_watched_and_how_they_ended()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/losses");
        var rows = page.Locator("section[aria-labelledby=lasting] table.stack").First.Locator("tbody tr");
        Holds(await rows.Nth(0).InnerTextAsync(), "1 year", "12", "92.3 %, 56.6 to 98.9 %", "7.7 %", "0 %");
        Holds(await rows.Last.InnerTextAsync(), "838 days", "6", "92.3 %, 56.6 to 98.9 %", "7.7 %", "13.2 %");
        Assert.Equal(1, await page.GetByRole(AriaRole.Img, new PageGetByRoleOptions { Name = "Colonies not lost, by age" }).CountAsync());
        var ends = page.GetByRole(AriaRole.Img, new PageGetByRoleOptions { Name = "How colonies ended, by age" });
        // What ended otherwise is told by hatching, not by colour alone.
        Assert.Equal((1, 1), (await ends.Locator("path.dead").CountAsync(), await ends.Locator("path.combined").CountAsync()));
        Assert.Contains("url(", await ends.Locator("path.combined").EvaluateAsync<string>("one => getComputedStyle(one).fill"), StringComparison.Ordinal);
        await rows.Last.Locator(".why").ClickAsync();
        Holds(await page.Locator("main").InnerTextAsync(), "Colony 7");
    }

    /// <summary>Golden: R 4.2.2, mantelhaen.test(array(c(3, 1, 6, 6, 6, 18, 1, 7), c(2, 2, 2)), correct = FALSE), 2.6 from 0.473 to 14.289; pooled 9 x 13 / (19 x 7) = 0.88.</summary>
    [Fact]
    public async Task Where_pooled_and_within_yards_disagree_both_stand_side_by_side()
    {
        await using var host = await DeskHost.StartAsync(new MemoryOffice(Paradox(), SmallOutfit.Today));
        using var http = new HttpClient { BaseAddress = new Uri(host.Root) };
        var text = string.Join(' ', WebUtility.HtmlDecode(await http.GetStringAsync("/losses?by=queenAge&winter=2025", TestContext.Current.CancellationToken)).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Holds(text,
            "Pooled it lost <strong>less</strong>: 9 of 28, others 7 of 20, odds ratio 0.88. Within yards <strong>more</strong>: 2.60, from 0.47 to 14.29, which may be chance.",
            "Queen born that season: odds ratio 0.88 pooled, 2.60 within yards", "<span class=\"tag warn\">disagree</span>", "9 of 28 lost, overall 32.1 %");
        // Of more than 60 entries the address finds them anew.
        Holds(text, "/why/wintering?period=winter&winter=2025&by=queenAge&group=0", "/why/paradox?winter=2025&by=queenAge&group=0");
        var why = WebUtility.HtmlDecode(await http.GetStringAsync("/why/wintering?period=winter&winter=2025&by=queenAge&group=0", TestContext.Current.CancellationToken));
        Assert.Equal(9, why.Split("10 Jan 2026</time>").Length - 1);
    }

    /// <summary>From 32 mites of 2,100 bees to 1 of 1,500: 100 (1 - 0.0667 / 1.5238) = 95.6 %. From 0.0667 to 3 per 100 at 2.1 % a day: ln 45 / 0.021 = 181.3 days.</summary>
    [Fact]
    public async Task The_page_of_washes_says_what_treatments_did_and_when_to_wash_again()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync("/mite-watch?season=2026");
        Holds(await page.Locator("table.efficacy tbody").InnerTextAsync(), "Alder Bottom", "1.52", "0.07", "95.6 %", "cannot say", "none: no untreated yard was washed at these times");
        var forecast = await page.Locator("section[aria-labelledby=forecast]").InnerTextAsync();
        Holds(forecast, "24 Mar 2027, 181 days after", "there already", "No dose is given meanwhile", "nothing of what to give");
        Assert.Equal(1, await page.Locator("a[href='/mite-watch?season=2026&format=csv']").CountAsync());
        await page.Locator("table.efficacy .why").ClickAsync();
        Holds(await page.Locator("main").InnerTextAsync(), "14 mites");
    }

    /// <summary>In each yard colonies with a queen of the season lost more than those with an older one; and most of the older stand in the bad yard.</summary>
    private static List<Recorded> Paradox()
    {
        var recorded = new List<Recorded>();
        var order = 0;
        ActId act = new(Guid.CreateVersion7());
        foreach (var (name, born, lost, all) in new[] { ("Bad", 2025, 3, 4), ("Bad", 2024, 6, 12), ("Good", 2025, 6, 24), ("Good", 2024, 1, 8) })
        {
            var yard = SmallOutfit.YardNamed(name);
            if (born == 2025) Add(new YardOpened { Id = New(), On = new DateOnly(2024, 3, 1), Act = act, Yard = yard, Name = name });
            for (var i = 1; i <= all; i++)
            {
                var number = $"{name}-{born}-{i}";
                var (colony, queen) = (SmallOutfit.ColonyNamed(number), SmallOutfit.QueenNamed(number));
                Add(new QueenRaised { Id = New(), On = new DateOnly(born, 6, 1), Act = act, Queen = queen, Name = number, Born = new DateOnly(born, 6, 1), From = RaisedFrom.Graft });
                Add(new ColonyEstablished { Id = New(), On = new DateOnly(2025, 7, 1), Act = act, Colony = colony, Number = number, How = HowEstablished.Nuc, At = new Spot(yard, number), Queen = queen });
                if (i > lost) continue;
                Add(new Inspected { Id = New(), On = new DateOnly(2026, 1, 9), Act = act, Colony = colony, FramesOfBees = 1 });
                Add(new FoundDead { Id = New(), On = new DateOnly(2026, 1, 10), Act = act, Colony = colony });
            }
        }

        return recorded;

        static EntryId New() => new(Guid.CreateVersion7());

        void Add(Entry entry) => recorded.Add(new Recorded(entry with { Order = ++order }, new DateTimeOffset(entry.On.Day, TimeOnly.MinValue, TimeSpan.Zero)));
    }

    private async Task<string> TextAsync(string path)
    {
        using var http = new HttpClient { BaseAddress = new Uri(browser.Root) };
        return WebUtility.HtmlDecode(await http.GetStringAsync(path, TestContext.Current.CancellationToken));
    }
}
