using System.Collections.Concurrent;
using ColonyLineage.Desk.Tests;
using ColonyLineage.Support;
using Microsoft.Playwright;
using Xunit;

[assembly: AssemblyFixture(typeof(Browser))]

namespace ColonyLineage.Desk.Tests;

/// <summary>One browser and one desk for all tests of the pages: the system's Chromium, without a window and without a network of its own.</summary>
public sealed class Browser : IAsyncLifetime
{
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private DeskHost? _host;
    private readonly ConcurrentDictionary<Type, OpenedPage> _shared = new();

    /// <summary>Where the desk answers.</summary>
    public string Root => _host!.Root;

    public async ValueTask InitializeAsync()
    {
        _host = await DeskHost.StartAsync(new MemoryOffice(SmallOutfit.Make().Recorded, SmallOutfit.Today));
        if (!File.Exists(SystemChromium.Program)) return;
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = SystemChromium.Program,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
        if (_host is not null) await _host.DisposeAsync();
    }

    /// <summary>
    /// One page for the tests of a class that only look, one after the other (classes go side by side): opening a page takes several times as long as looking at it. Wide and light each time.
    /// </summary>
    public async Task<IPage> SharedAsync<TTests>()
    {
        if (!_shared.TryGetValue(typeof(TTests), out var opened)) _shared[typeof(TTests)] = opened = await OpenAsync();
        await opened.Page.SetViewportSizeAsync(1280, 900);
        await opened.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Light });
        return opened.Page;
    }

    /// <summary>An empty page of a given width, light or dark. Skips the test where there is no Chromium.</summary>
    public async Task<OpenedPage> OpenAsync(int width = 1280, bool dark = false)
    {
        SystemChromium.Need();
        var context = await _browser!.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = Root,
            ViewportSize = new ViewportSize { Width = width, Height = 900 },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
        });
        return new OpenedPage(context, await context.NewPageAsync());
    }
}

/// <summary>A page in a profile of its own. To be closed: whatever stays open goes on costing the other tests time.</summary>
public sealed record OpenedPage(IBrowserContext Context, IPage Page) : IAsyncDisposable
{
    public ValueTask DisposeAsync() => Context.DisposeAsync();
}
