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
/// <remarks>
/// Where several processes watch one outfit, Marten lets one of them run its daemon and another take over (hot and cold). Marten's
/// daemon has stalled on events before, so every few seconds each process looks for itself as well: three small queries.
/// </remarks>
internal sealed class Watching : IAsyncDisposable
{
    /// <summary>The name under which Marten keeps how far the daemon is.</summary>
    public const string Progress = Name + ":All";

    private const string Name = "ReadTables";
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(5);

    private readonly ProjectionCoordinator _coordinator;
    private readonly CancellationTokenSource _end = new();
    private readonly Task _looking;

    private Watching(ProjectionCoordinator coordinator, Func<CancellationToken, Task> catchUp, ILogger log)
    {
        _coordinator = coordinator;
        _looking = LookAsync(catchUp, log);
    }

    public static void Register(StoreOptions marten, Func<CancellationToken, Task> catchUp)
    {
        marten.Projections.AsyncMode = DaemonMode.HotCold;
        marten.Projections.LeadershipPollingTime = 1000;
        marten.Events.Subscribe(new ReadTablesProjection(catchUp), options => options.Name = Name);
    }

    public static async Task<Watching> StartAsync(DocumentStore store, Func<CancellationToken, Task> catchUp, ILogger log, CancellationToken cancel)
    {
        var coordinator = new ProjectionCoordinator(store, new Log(log));
        await coordinator.StartAsync(cancel);
        return new Watching(coordinator, catchUp, log);
    }

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        await _looking;
        _end.Dispose();
        await _coordinator.DisposeAsync();
    }

    private async Task LookAsync(Func<CancellationToken, Task> catchUp, ILogger log)
    {
        using var timer = new PeriodicTimer(Look);
        while (true)
        {
            try
            {
                await timer.WaitForNextTickAsync(_end.Token);
                await catchUp(_end.Token);
            }
            catch (OperationCanceledException) when (_end.IsCancellationRequested)
            {
                return;
            }
            catch (Exception problem)
            {
                log.LogWarning(problem, "The read tables could not be brought up to date; it is tried again in {Seconds} seconds.", Look.TotalSeconds);
            }
        }
    }

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
