using ColonyLineage.Entries;
using ColonyLineage.Ledger;

namespace ColonyLineage.Server.Acts;

/// <summary>What it takes to void a whole act.</summary>
public static class Voids
{
    /// <summary>The entries of an act that still stand and can be voided.</summary>
    /// <exception cref="RefusedException">The books hold none.</exception>
    public static async Task<IReadOnlyList<Entry>> EntriesOfAsync(OutfitLedger ledger, ActId act, CancellationToken cancel)
    {
        var lines = await ledger.ActAsync(act, cancel);
        if (lines.Count == 0) throw new RefusedException(new Refusal(Refusals.NotFound, "ofAct", "The books hold no act of this id."));
        var standing = lines.Where(line => !line.IsVoided && line.Entry is not Voided).Select(line => line.Entry).ToList();
        return standing.Count > 0 ? standing : throw new RefusedException(new Refusal(Refusals.NotFound, "ofAct", "Nothing of this act stands any more: it was voided before, or is itself a void."));
    }
}
