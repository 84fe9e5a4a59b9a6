using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Server.Answers;
using ColonyLineage.Server.Api;
using ColonyLineage.Server.Guard;
using ColonyLineage.Server.Jobs;
using ColonyLineage.Server.Messages;
using ColonyLineage.Server.Office;
using Microsoft.AspNetCore.DataProtection;
using Wolverine;

namespace ColonyLineage.Server;

/// <summary>Puts everything together: the books of one outfit, the desk's pages and the API on a server of this machine.</summary>
public static class LineageServer
{
    /// <summary>Opens the books and makes a server of them that has not started yet.</summary>
    /// <exception cref="RefusedException">It would listen where other machines reach it.</exception>
    public static async Task<WebApplication> BuildAsync(ServerOptions options, CancellationToken cancel = default)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ApplicationName = typeof(LineageServer).Assembly.GetName().Name, ContentRootPath = AppContext.BaseDirectory });
        var urls = options.Urls ?? builder.Configuration[WebHostDefaults.ServerUrlsKey] ?? ServerOptions.UsualUrl;
        LoopbackOnly.Check(urls);
        builder.WebHost.UseUrls(urls).ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = Math.Max(options.BodyLimitBytes, options.SheetLimitBytes) + 32_000_000;
            kestrel.ConfigureEndpointDefaults(LoopbackOnly.Check);
        });
        builder.Logging.SetMinimumLevel(LogLevel.Warning)
            // It would rather find handlers by itself than be given them.
            .AddFilter("Wolverine.Configuration.HandlerDiscovery", LogLevel.Error)
            // What keeps it from starting is thrown, and told by whoever started it.
            .AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None)
            // The keys lie in a folder that only this user reads, as everything else of the outfit does.
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);

        var ledger = await OutfitLedger.OpenAsync(options.ConnectionString, options.Outfit, new LedgerOptions { RunDaemon = options.RunDaemon }, cancel);
        try
        {
            var (clock, board) = (new Clock(options.Time), new JobBoard(options.Time));
            AddServices(builder.Services, options, ledger, clock, board);
            builder.Host.UseWolverine(wolverine => Messaging.Configure(wolverine, options, ledger, clock, board));
            var app = builder.Build();
            Map(app, options);
            return app;
        }
        catch
        {
            await ledger.DisposeAsync();
            throw;
        }
    }

    private static void AddServices(IServiceCollection services, ServerOptions options, OutfitLedger ledger, Clock clock, JobBoard board)
    {
        // By a factory, so that it is closed with the server.
        services.AddSingleton(_ => ledger);
        services.AddSingleton(clock);
        services.AddSingleton(board);
        services.AddSingleton<ReadCache>();
        services.AddSingleton<RowsOverLedger>();
        services.AddSingleton<Answering>();
        services.AddScoped<IOffice, OfficeOverLedger>();
        services.AddAntiforgery();
        var protection = services.AddDataProtection().SetApplicationName("ColonyLineage");
        if (options.KeyFolder is { } folder) protection.PersistKeysToFileSystem(new DirectoryInfo(folder));
        else protection.UseEphemeralDataProtectionProvider();
        services.AddDesk();
    }

    private static void Map(WebApplication app, ServerOptions options)
    {
        app.Use(SecurityHeaders.Set);
        app.Use(Failures.Catch);
        app.Use(OwnPagesOnly.Check);
        app.Use(QuestionApi.Answer);
        app.UseRouting();
        app.UseAntiforgery();
        // Before the pages, which take forms at addresses of their own that the API may share.
        var api = app.MapGroup("").WithOrder(-1);
        new EntriesApi(options).Map(api);
        new ActsApi(options).Map(api);
        new ImportApi(options).Map(api);
        BooksApi.Map(api);
        CalendarApi.Map(api);
        app.MapDesk();
    }
}
