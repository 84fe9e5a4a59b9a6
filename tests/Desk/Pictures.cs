using Microsoft.Playwright;
using Xunit;

namespace ColonyLineage.Desk.Tests;

/// <summary>For people: pictures of the pages, to look at. Run on demand, with the folder to fill in COLONY_LINEAGE_PICTURES.</summary>
public sealed class Pictures(Browser browser)
{
    [Fact(Explicit = true)]
    public async Task Take()
    {
        var folder = Environment.GetEnvironmentVariable("COLONY_LINEAGE_PICTURES") ?? Path.Combine(Path.GetTempPath(), "desk-pictures");
        var only = Environment.GetEnvironmentVariable("COLONY_LINEAGE_PICTURES_OF")?.Split(',');
        Directory.CreateDirectory(folder);
        foreach (var (name, path) in Places.All)
        {
            if (only is not null && !only.Contains(name)) continue;
            foreach (var (width, dark) in new[] { (1280, false), (1280, true), (360, false), (360, true) })
            {
                if (dark && Environment.GetEnvironmentVariable("COLONY_LINEAGE_PICTURES_DARK") is null) continue;
                await using var opened = await browser.OpenAsync(width, dark);
                var page = opened.Page;
                await page.GotoAsync(path);
                await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"{name}-{width}{(dark ? "-dark" : "")}.png"), FullPage = true });
                await page.Context.CloseAsync();
            }
        }
    }
}
