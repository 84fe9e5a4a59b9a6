using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace ColonyLineage.Desk.Tests;

/// <summary>What axe-core finds of WCAG 2.2 A and AA, in both colour schemes, and whether the page scrolls sideways on a phone.</summary>
internal static class Looking
{
    public static async Task<IReadOnlyList<string>> FaultsAsync(IPage page)
    {
        // What is folded away is looked at as well.
        await page.EvaluateAsync("document.querySelectorAll('details').forEach(one => one.open = true)");
        var light = await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] } });
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Dark });
        // In the dark only the colours are others.
        var dark = await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "rule", Values = ["color-contrast", "link-in-text-block"] } });
        var faults = light.Violations.Select(fault => (Scheme: "light", fault)).Concat(dark.Violations.Select(fault => (Scheme: "dark", fault)))
            .Select(one => $"{one.Scheme} {one.fault.Id}: {one.fault.Help}\n  {string.Join("\n  ", one.fault.Nodes.Take(4).Select(node => node.Html))}").ToList();
        await page.SetViewportSizeAsync(360, 900);
        if (await page.EvaluateAsync<int>("document.documentElement.scrollWidth") > 360) faults.Add("scrolls sideways");
        return faults;
    }
}
