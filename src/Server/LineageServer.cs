using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Server.Answers;
using ColonyLineage.Server.Api;
using ColonyLineage.Server.Guard;
using ColonyLineage.Server.Jobs;
using ColonyLineage.Server.Messages;
using ColonyLineage.Server.Office;
using JasperFx.CodeGeneration;
using Microsoft.AspNetCore.DataProtection;
using Npgsql;
using Wolverine;
using Wolverine.ErrorHandling;
using Wolverine.Postgresql;

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
            kestrel.Limits.MaxRequestBodySize = Math.Max(options.BodyLimitBytes, options.SheetLimitBytes) + 1_000_000;
            kestrel.ConfigureEndpointDefaults(LoopbackOnly.Check);
        });
        builder.Logging.SetMinimumLevel(LogLevel.Warning);

        var ledger = await OutfitLedger.OpenAsync(options.ConnectionString, options.Outfit, new LedgerOptions { RunDaemon = options.RunDaemon }, cancel);
        try
        {
            AddServices(builder.Services, options, ledger);
            builder.Host.UseWolverine(wolverine => Configure(wolverine, options));
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

    private static void AddServices(IServiceCollection services, ServerOptions options, OutfitLedger ledger)
    {
        // By a factory, so that it is closed with the server.
        services.AddSingleton(_ => ledger);
        services.AddSingleton(new Clock(options.Time));
        services.AddSingleton(new JobBoard(options.Time));
        services.AddSingleton<ReadCache>();
        services.AddSingleton<Answering>();
        services.AddScoped<IOffice, OfficeOverLedger>();
        services.AddAntiforgery();
        var protection = services.AddDataProtection().SetApplicationName("ColonyLineage");
        if (options.KeyFolder is { } folder) protection.PersistKeysToFileSystem(new DirectoryInfo(folder));
        else protection.UseEphemeralDataProtectionProvider();
        services.AddDesk();
    }

    private static void Configure(WolverineOptions wolverine, ServerOptions options)
    {
        wolverine.ApplicationAssembly = typeof(LineageServer).Assembly;
        wolverine.Discovery.DisableConventionalDiscovery()
            .IncludeType(typeof(RecordActHandler)).IncludeType(typeof(RunActHandler)).IncludeType(typeof(ImportSheetHandler)).IncludeType(typeof(RebuildHandler));
        wolverine.CodeGeneration.TypeLoadMode = TypeLoadMode.Dynamic;
        // One outfit, one server: no leader to elect. Its messages lie in the outfit's own schema and go with it.
        wolverine.Durability.Mode = DurabilityMode.Solo;
        wolverine.PersistMessagesWithPostgresql(options.ConnectionString, options.Outfit);
        wolverine.DefaultExecutionTimeout = TimeSpan.FromHours(2);
        wolverine.PublishMessage<ImportSheet>().ToLocalQueue("jobs");
        wolverine.PublishMessage<Rebuild>().ToLocalQueue("jobs");
        wolverine.LocalQueue("jobs").UseDurableInbox().Sequential();
        wolverine.Policies.OnException<RefusedException>().Discard();
        // What the database itself calls passing: a lost connection, a deadlock, a serialisation that failed.
        wolverine.Policies.OnException<NpgsqlException>(problem => problem.IsTransient)
            .RetryWithCooldown(TimeSpan.FromMilliseconds(50), TimeSpan.FromMilliseconds(250), TimeSpan.FromSeconds(1));
    }

    private static void Map(WebApplication app, ServerOptions options)
    {
        app.Use(SecurityHeaders.Set);
        app.Use(Failures.Catch);
        app.Use(OwnPagesOnly.Check);
        app.Use(QuestionApi.Answer);
        app.UseRouting();
        app.UseAntiforgery();
        new EntriesApi(options).Map(app);
        new ActsApi(options).Map(app);
        new ImportApi(options).Map(app);
        BooksApi.Map(app);
        app.MapDesk();
    }
}
