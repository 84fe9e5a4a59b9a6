using ColonyLineage.Ledger;
using ColonyLineage.Rules;
using ColonyLineage.Server.Acts;

namespace ColonyLineage.Server.Messages;

/// <summary>Record an act of the crew that a person asks for: Rules make its entries out of the books.</summary>
/// <param name="Request">One of the requests of Rules: see <see cref="ActCatalogue"/>.</param>
public sealed record RunAct(object Request);

/// <summary>Handles <see cref="RunAct"/>.</summary>
public static class RunActHandler
{
    /// <summary>Decides by the books as of the day of the act, and records all of it or nothing.</summary>
    public static async Task<Receipt> HandleAsync(RunAct message, OutfitLedger ledger, Clock clock, CancellationToken cancel)
    {
        var outcome = ActCatalogue.Decide(message.Request, (on, act) => new BookStanding(ledger, on, act, cancel), clock.Now);
        return outcome.IsRefused ? new Receipt([], [], outcome.Refusals) : await ledger.RecordAsync(outcome.Entries, cancel);
    }
}
