using ColonyLineage.Desk;
using ColonyLineage.Projections.Losses;

namespace ColonyLineage.Server.Answers;

/// <summary>Losses, and how long colonies and queens last.</summary>
internal sealed class LossViews(IRows rows)
{
    public async Task<Answer> AnswerAsync(string view, Asked asked, CancellationToken cancel)
    {
        // Words first: what cannot be asked is refused before anything is reckoned.
        var (period, by, counted) = (Words.Read<LossPeriod>("period", asked.Period), Words.Read<LossBy>("by", asked.By, view == "paradox" ? [LossBy.All, LossBy.Yard] : []), Words.Read<CountedFrom>("counted", asked.Counted));
        var lived = await Lived.OfAsync(rows, asked.Ask, cancel);
        return view switch
        {
            "wintering" => Answer.Of(lived.Rates()
                .Where(row => (period is null || row.Period == period) && (asked.Winter is null || row.Winter == asked.Winter) && (by is null || row.By == by))
                .Where(Yard(asked.Ask.Yard, (await rows.HouseholdAsync(Gather.Clocks(asked.Ask), cancel)).Yards)).Select(lived.Short)),
            "paradox" => Answer.Of(lived.Compared().Where(row => (asked.Winter is null || row.Winter == asked.Winter) && (by is null || row.By == by)).Select(lived.Short)),
            "how-long" => Answer.Of(LastingRow.Of(lived.Colonies(asked.Ask, counted ?? CountedFrom.Beginning))),
            _ => Answer.Of(lived.Queens(asked.Ask).Stretches),
        };
    }

    /// <summary>Of one yard there are the rates by yard alone.</summary>
    private static Func<LossRow, bool> Yard(string? wanted, IEnumerable<Projections.Cards.YardCard> yards)
    {
        if (wanted is null) return _ => true;
        var name = yards.Where(yard => yard.Yard.Value.ToString() == wanted).Select(Projections.Cards.Names.Of).FirstOrDefault() ?? wanted;
        return row => row.By == LossBy.Yard && string.Equals(row.Group, name, StringComparison.OrdinalIgnoreCase);
    }
}
