using ColonyLineage.Desk.Tests;
using Microsoft.Playwright;
using Xunit;

[assembly: AssemblyFixture(typeof(Browser))]

namespace ColonyLineage.Desk.Tests;

/// <summary>One browser and one desk for all tests of the pages: the system's Chromium, without a window and without a network of its own.</summary>
public sealed class Browser : IAsyncLifetime
{
    private static readonly string Chromium = Environment.GetEnvironmentVariable("COLONY_LINEAGE_CHROMIUM") ?? "/usr/bin/chromium";
    private IPlaywright _playwright = null!;
    private IBrowser _browser = null!;
    private DeskHost _host = null!;

    /// <summary>Where the desk answers.</summary>
    public string Root => _host.Root;

    public async ValueTask InitializeAsync()
    {
        _host = await DeskHost.StartAsync(new MemoryOffice(SmallOutfit.Make().Recorded, SmallOutfit.Today));
        if (!File.Exists(Chromium)) return;
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Chromium,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
        await _host.DisposeAsync();
    }

    /// <summary>An empty page of a given width, light or dark. Skips the test where there is no Chromium.</summary>
    public async Task<IPage> OpenAsync(int width = 1280, bool dark = false)
    {
        Assert.SkipUnless(File.Exists(Chromium), $"No Chromium at {Chromium}: install the package chromium, or name another in COLONY_LINEAGE_CHROMIUM.");
        var context = await _browser.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = Root,
            ViewportSize = new ViewportSize { Width = width, Height = 900 },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
        });
        return await context.NewPageAsync();
    }
}
