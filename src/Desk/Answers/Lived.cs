using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Losses;

namespace ColonyLineage.Desk;

/// <summary>What losses are reckoned from: all lives, what other questions tell of them, and the outfit's own winter.</summary>
/// <param name="Day">The day asked for.</param>
public sealed record Lived(IReadOnlyList<LifeRow> Lives, Beside Beside, OutfitCard Outfit, DateOnly Day)
{
    /// <summary>A row over many colonies names so many entries at most where it is handed out as data, those of the lost first: six entries of each of 1,000 colonies would drown the numbers.</summary>
    public const int MostEntries = 60;

    /// <summary>Reads them by the clocks asked for. A period is told of all yards: which colony was where is of that day, not of today.</summary>
    public static async Task<Lived> OfAsync(IRows rows, Ask ask, CancellationToken cancel)
    {
        var clocks = Gather.Clocks(ask);
        var beside = new Beside
        {
            Reigns = await rows.RowsAsync(Questions.Reigns, clocks, cancel),
            Stays = await rows.RowsAsync(Questions.SpotStory, clocks, cancel),
            Doses = await rows.RowsAsync(Questions.DoseCompleteness, clocks, cancel),
        };
        return new Lived(await rows.RowsAsync(Questions.Losses, clocks, cancel), beside, (await rows.HouseholdAsync(clocks, cancel)).Outfit, Gather.Day(rows, ask));
    }

    /// <summary>The outfit's winter.</summary>
    public Winter Winter => new(Outfit.WinterFrom.Month, Outfit.WinterFrom.Day, Outfit.WinterTo.Month, Outfit.WinterTo.Day);

    /// <summary>The rates of all periods.</summary>
    public IReadOnlyList<LossRow> Rates() => Wintering.Of(Lives, Outfit, Day, Winter, Beside);

    /// <summary>Groups compared, pooled and within yards.</summary>
    public IReadOnlyList<ParadoxRow> Compared() => Paradox.Of(Lives, Outfit, Day, Winter, Beside);

    /// <summary>How long colonies last: all, or those a filter lets through by where they stood last.</summary>
    public Lasting Colonies(Ask ask, CountedFrom counted) => HowLong.Of(Lives.Where(life => ask.Wants(life, Questions.Losses.Columns)), Day, counted);

    /// <summary>How long queens last: in all colonies, or in those a filter lets through. The queen asked for need not be the last of hers.</summary>
    public QueensLasting Queens(Ask ask)
    {
        var colonies = Lives.Where(life => (ask with { Queen = null }).Wants(life, Questions.Losses.Columns)).Select(life => life.ColonyId).ToHashSet();
        return HowLong.Queens(Beside.Reigns.Where(reign => colonies.Contains(reign.ColonyId) && ask.Wants(reign, Questions.Reigns.Columns)), Day);
    }

    /// <summary>The same row with <see cref="MostEntries"/> entries at most.</summary>
    public LossRow Short(LossRow row) => row with { Entries = First(row.Entries, row.From, row.To) };

    /// <inheritdoc cref="Short(LossRow)"/>
    public ParadoxRow Short(ParadoxRow row) => row with { Entries = First(row.Entries, Winter.From(row.Winter), Winter.To(row.Winter)) };

    private IReadOnlyList<EntryId> First(IReadOnlyList<EntryId> all, DateOnly from, DateOnly to)
    {
        if (all.Count <= MostEntries) return all;
        var those = all.ToHashSet();
        // A colony of another group shares the entries of its queen's line at most, never its own.
        var lost = Lives.Where(life => life.Lost && life.EndTaken() >= from && life.EndTaken() <= to && life.Entries.All(those.Contains));
        return [.. lost.SelectMany(life => life.Entries).Concat(all).Distinct().Take(MostEntries)];
    }
}
