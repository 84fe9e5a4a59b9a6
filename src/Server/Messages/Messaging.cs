using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Server.Jobs;
using JasperFx.CodeGeneration;
using Npgsql;
using Wolverine;
using Wolverine.ErrorHandling;
using Wolverine.Postgresql;

namespace ColonyLineage.Server.Messages;

/// <summary>What changes the books is a message: commands are handled at once, long jobs wait in a durable queue.</summary>
internal static class Messaging
{
    private const string Jobs = "jobs";

    public static void Configure(WolverineOptions wolverine, ServerOptions options, OutfitLedger ledger, Clock clock, JobBoard board)
    {
        wolverine.ApplicationAssembly = typeof(Messaging).Assembly;
        wolverine.Discovery.DisableConventionalDiscovery();
        wolverine.CodeGeneration.TypeLoadMode = TypeLoadMode.Static;
        wolverine.AddMessageHandler(new Handling<RecordAct>(async (message, cancel) => await RecordActHandler.HandleAsync(message, ledger, clock, cancel)));
        wolverine.AddMessageHandler(new Handling<RunAct>(async (message, cancel) => await RunActHandler.HandleAsync(message, ledger, clock, cancel)));
        wolverine.AddMessageHandler(new Handling<ImportSheet>(async (message, cancel) =>
        {
            await ImportSheetHandler.HandleAsync(message, ledger, board, clock, cancel);
            return null;
        }));
        wolverine.AddMessageHandler(new Handling<Rebuild>(async (message, cancel) =>
        {
            await RebuildHandler.HandleAsync(message, ledger, board, cancel);
            return null;
        }));

        // One outfit, one server: no leader to elect. Its messages lie in the outfit's own schema and go with it.
        wolverine.Durability.Mode = DurabilityMode.Solo;
        wolverine.PersistMessagesWithPostgresql(options.ConnectionString, options.Outfit);
        wolverine.DefaultExecutionTimeout = TimeSpan.FromHours(2);
        wolverine.PublishMessage<ImportSheet>().ToLocalQueue(Jobs);
        wolverine.PublishMessage<Rebuild>().ToLocalQueue(Jobs);
        wolverine.LocalQueue(Jobs).UseDurableInbox().Sequential();

        // What the database itself calls passing: a lost connection, a deadlock, a serialisation that failed. Sending twice changes nothing.
        wolverine.Policies.OnException<RefusedException>().Discard();
        wolverine.Policies.OnException<NpgsqlException>(problem => problem.IsTransient)
            .RetryWithCooldown(TimeSpan.FromMilliseconds(50), TimeSpan.FromMilliseconds(250), TimeSpan.FromSeconds(1));
    }
}
