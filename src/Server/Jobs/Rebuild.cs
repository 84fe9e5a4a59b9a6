using ColonyLineage.Ledger;

namespace ColonyLineage.Server.Jobs;

/// <summary>Make every read table anew from the entries.</summary>
public sealed record Rebuild(Guid Job)
{
    /// <summary>What it does, in words.</summary>
    public const string What = "Make every read table anew from the entries";
}

/// <summary>Handles <see cref="Rebuild"/>.</summary>
public static class RebuildHandler
{
    /// <summary>The ledger's one pass.</summary>
    public static Task HandleAsync(Rebuild message, OutfitLedger ledger, JobBoard board, CancellationToken cancel) =>
        board.RunAsync(message.Job, Rebuild.What, async progress =>
        {
            await ledger.RebuildAsync(progress, cancel);
            return "All read tables are made anew.";
        });
}
