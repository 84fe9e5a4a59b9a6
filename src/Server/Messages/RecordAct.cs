using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Rules;

namespace ColonyLineage.Server.Messages;

/// <summary>Record the entries of one act as a device wrote them.</summary>
/// <param name="Entries">Its entries, in any order, any of them recorded before or not.</param>
public sealed record RecordAct(IReadOnlyList<Entry> Entries);

/// <summary>Handles <see cref="RecordAct"/>.</summary>
public static class RecordActHandler
{
    /// <summary>Decides, and records all of it or nothing.</summary>
    public static async Task<Receipt> HandleAsync(RecordAct message, OutfitLedger ledger, Clock clock, CancellationToken cancel)
    {
        var outcome = RecordEntries.Decide(message.Entries, clock.Now);
        return outcome.IsRefused ? new Receipt([], [], outcome.Refusals) : await ledger.RecordAsync(outcome.Entries, cancel);
    }
}
