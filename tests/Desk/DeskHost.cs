using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace ColonyLineage.Desk.Tests;

/// <summary>The desk on 127.0.0.1 over an office in memory.</summary>
public sealed class DeskHost : IAsyncDisposable
{
    private readonly WebApplication _app;

    private DeskHost(WebApplication app) => _app = app;

    /// <summary>Where it answers, without a slash at the end.</summary>
    public string Root => _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();

    /// <summary>Starts it on a port; 0 for any free one.</summary>
    public static async Task<DeskHost> StartAsync(IOffice office, int port = 0)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders().AddConsole().SetMinimumLevel(LogLevel.Warning);
        builder.WebHost.UseKestrelCore().UseUrls($"http://127.0.0.1:{port}");
        builder.Services.AddSingleton(office);
        // No keys are left behind in the home folder.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        builder.Services.AddDesk();
        var app = builder.Build();
        app.UseAntiforgery();
        app.MapDesk();
        await app.StartAsync();
        return new DeskHost(app);
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
    }
}
