using JasperFx.Events.Daemon;
using JasperFx.Events.Projections;
using Marten;
using Marten.Events.Daemon;
using Marten.Events.Daemon.Coordination;
using Marten.Events.Daemon.Internals;
using Marten.Subscriptions;
using Microsoft.Extensions.Logging;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// The one adapter to Marten's daemon: whatever page of events it comes with, the read tables catch up. The daemon is woken by
/// PostgreSQL's NOTIFY when any process has recorded something; what is new is told by the read tables' own state, so a page that
/// the daemon skips or repeats does no harm.
/// </summary>
/// <remarks>Where several processes watch one outfit, Marten lets one of them run it and another take over (hot and cold).</remarks>
internal sealed class Watching : IAsyncDisposable
{
    private readonly ProjectionCoordinator _coordinator;

    private Watching(ProjectionCoordinator coordinator) => _coordinator = coordinator;

    public static void Register(StoreOptions marten, Func<CancellationToken, Task> catchUp)
    {
        marten.Projections.AsyncMode = DaemonMode.HotCold;
        marten.Events.Subscribe(new ReadTablesProjection(catchUp), options =>
        {
            options.Name = "ReadTables";
            options.Options.SubscribeFromPresent();
        });
    }

    public static async Task<Watching> StartAsync(DocumentStore store, ILogger log, CancellationToken cancel)
    {
        var coordinator = new ProjectionCoordinator(store, new Log(log));
        await coordinator.StartAsync(cancel);
        return new Watching(coordinator);
    }

    public ValueTask DisposeAsync() => _coordinator.DisposeAsync();

    private sealed class ReadTablesProjection(Func<CancellationToken, Task> catchUp) : ISubscription
    {
        public async Task<IChangeListener> ProcessEventsAsync(EventRange page, ISubscriptionController controller, IDocumentOperations operations, CancellationToken cancellationToken)
        {
            await catchUp(cancellationToken);
            return NullChangeListener.Instance;
        }
    }

    private sealed class Log(ILogger log) : ILogger<ProjectionCoordinator>
    {
        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => log.BeginScope(state);

        public bool IsEnabled(LogLevel logLevel) => log.IsEnabled(logLevel);

        void ILogger.Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            log.Log(logLevel, eventId, state, exception, formatter);
    }
}
