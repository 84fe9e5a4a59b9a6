using JasperFx.Events.Daemon;
using JasperFx.Events.Projections;
using Marten;
using Marten.Events.Daemon;
using Marten.Events.Daemon.Internals;
using Marten.Subscriptions;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// The one adapter to Marten's daemon: whatever page of events it comes with, the read tables catch up. The daemon wakes it, by
/// PostgreSQL's NOTIFY, when any process has recorded something; what is new is told by the read tables' own state, so a page that
/// the daemon should skip or repeat does no harm.
/// </summary>
internal sealed class Watching : IAsyncDisposable
{
    private readonly IProjectionDaemon _daemon;

    private Watching(IProjectionDaemon daemon) => _daemon = daemon;

    public static void Register(StoreOptions marten, Func<CancellationToken, Task> catchUp) =>
        marten.Events.Subscribe(new ReadTablesProjection(catchUp), options =>
        {
            options.Name = "ReadTables";
            options.Options.SubscribeFromPresent();
        });

    public static async Task<Watching> StartAsync(DocumentStore store)
    {
        var daemon = await store.BuildProjectionDaemonAsync();
        await daemon.StartAllAsync();
        return new Watching(daemon);
    }

    public async ValueTask DisposeAsync()
    {
        await _daemon.StopAllAsync();
        (_daemon as IDisposable)?.Dispose();
    }

    private sealed class ReadTablesProjection(Func<CancellationToken, Task> catchUp) : ISubscription
    {
        public async Task<IChangeListener> ProcessEventsAsync(EventRange page, ISubscriptionController controller, IDocumentOperations operations, CancellationToken cancellationToken)
        {
            await catchUp(cancellationToken);
            return NullChangeListener.Instance;
        }
    }
}
