using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Projections.Losses;

/// <summary>How long colonies and queens last.</summary>
public static class HowLong
{
    /// <summary>A queen is young where she comes within so many days of her birth: mated, and tried in a nuc (common practice, no source).</summary>
    private const int YoungDays = 90;

    /// <summary>The lives of colonies up to the day asked for. What was sold, or lives, was watched up to then; what ended is taken to have ended in the middle of the days possible.</summary>
    public static Lasting Of(IEnumerable<LifeRow> rows, DateOnly asked, CountedFrom counted = CountedFrom.Beginning)
    {
        var known = rows.Where(row => row.KnownFrom <= asked && !row.MatingNuc).ToList();
        var lives = known.Select(row => Watched(row, asked, counted)).OfType<(LifeRow Row, EndedLife Life)>().ToList();
        var curve = Survival.KaplanMeier([.. lives.Select(life => new Life(life.Life.Entry, life.Life.Exit, life.Life.How is not null && life.Row.Lost))]);
        return new Lasting(
            [.. curve.Select(step => new CurveRow
            {
                Days = (decimal)step.At,
                AtRisk = step.AtRisk,
                Lost = step.Ended,
                Share = Rounded(step.Share),
                Lower = step.Lower is { } lower ? Rounded(lower) : null,
                Upper = step.Upper is { } upper ? Rounded(upper) : null,
                Entries = Evidence(lives.Where(life => life.Life.How is not null && life.Row.Lost && life.Life.Exit == step.At)),
            })],
            (decimal?)Survival.Median(curve),
            [.. CompetingEnds.AalenJohansen([.. lives.Select(life => life.Life)]).Select(step => new EndedRow
            {
                Days = (decimal)step.At,
                How = step.How,
                Share = Rounded(step.Share),
                Entries = Evidence(lives.Where(life => life.Life.How == step.How && life.Life.Exit == step.At)),
            })],
            lives.Count,
            counted == CountedFrom.Books ? 0 : known.Count(row => row.Began is null));
    }

    /// <summary>The parts of lives that <see cref="Of"/> watched, in days: how many were watched at an age is counted from them.</summary>
    public static IReadOnlyList<Life> WatchedOf(IEnumerable<LifeRow> rows, DateOnly asked, CountedFrom counted = CountedFrom.Beginning) =>
        [.. rows.Where(row => row.KnownFrom <= asked && !row.MatingNuc).Select(row => Watched(row, asked, counted)).OfType<(LifeRow Row, EndedLife Life)>().Select(life => new Life(life.Life.Entry, life.Life.Exit, life.Life.How is not null))];

    /// <summary>
    /// The reigns of queens that came young, up to the day asked for. A supersedure lies between the last sight of the old queen and the first of the new; a queen that
    /// ended otherwise, or reigns, was not superseded up to the day on which she was last known to be there.
    /// </summary>
    public static QueensLasting Queens(IEnumerable<ReignRow> rows, DateOnly asked)
    {
        var known = rows.Where(row => row.SinceTo <= asked).ToList();
        var reigns = known.Where(CameYoung).Select(row => (Row: row, Lasted: Lasted(row, asked))).Where(reign => reign.Lasted is not { After: 0, UpTo: double.PositiveInfinity }).ToList();
        var superseded = reigns.Where(reign => !double.IsPositiveInfinity(reign.Lasted.UpTo)).ToList();
        var livesOn = 1.0;
        return new QueensLasting(
            superseded.Count == 0 ? [] : [.. IntervalCensored.Turnbull([.. reigns.Select(reign => reign.Lasted)]).Stretches.Where(stretch => stretch.Mass > 0).Select(stretch =>
            {
                livesOn = Math.Max(0, livesOn - stretch.Mass);
                var open = double.IsPositiveInfinity(stretch.UpTo);
                return new StretchRow
                {
                    AfterDays = (int)stretch.After,
                    UpToDays = open ? null : (int)stretch.UpTo,
                    // Those that outlasted all are not superseded.
                    Superseded = open ? 0 : Rounded(stretch.Mass),
                    LivesOn = open ? null : Rounded(livesOn),
                    Entries = [.. superseded.Where(reign => reign.Lasted.After <= stretch.After && reign.Lasted.UpTo >= stretch.UpTo).SelectMany(reign => reign.Row.Entries).Distinct()],
                };
            })],
            reigns.Count,
            superseded.Count,
            known.Count - reigns.Count);
    }

    /// <summary>Null where the age is not known, or where there was no time to watch it.</summary>
    private static (LifeRow, EndedLife)? Watched(LifeRow row, DateOnly asked, CountedFrom counted)
    {
        if ((counted == CountedFrom.Books ? row.KnownFrom : row.Began) is not { } from) return null;
        var end = row.EndTaken() is { } taken && taken <= asked ? taken : (DateOnly?)null;
        var how = end is null || row.End is null or EndKind.Sold ? null : JsonNamingPolicy.CamelCase.ConvertName(row.End.Value.ToString());
        var (entry, exit) = (row.KnownFrom.DayNumber - from.DayNumber, (double)((end ?? asked).DayNumber - from.DayNumber));
        // What ended before the day was over lived half of it.
        if (exit <= entry && how is not null) exit = entry + 0.5;
        return exit > entry ? (row, new EndedLife(entry, exit, how)) : null;
    }

    private static bool CameYoung(ReignRow row) =>
        row.BornFrom is { } born ? row.SinceTo.DayNumber - born.DayNumber <= YoungDays : row.Came is HowCame.Cell or HowCame.Supersedure;

    private static Between Lasted(ReignRow row, DateOnly asked)
    {
        if (row is { Went: HowWent.Superseded, GoneFrom: { } first, GoneTo: { } last } && last <= asked)
        {
            var after = Math.Max(0, first.DayNumber - 1 - row.SinceTo.DayNumber);
            return new Between(after, Math.Max(after + 1, last.DayNumber - row.SinceFrom.DayNumber));
        }

        var there = row.GoneTo is { } gone && gone <= asked
            ? row.GoneFrom == gone ? gone : row.GoneFrom!.Value.AddDays(-1)
            : row.LastSeen is { } seen && seen <= asked ? seen : row.SinceTo;
        return new Between(Math.Max(0, there.DayNumber - row.SinceTo.DayNumber), double.PositiveInfinity);
    }

    private static IReadOnlyList<EntryId> Evidence(IEnumerable<(LifeRow Row, EndedLife Life)> lives) => [.. lives.SelectMany(life => life.Row.Entries).Distinct()];

    private static decimal Rounded(double share) => Math.Round((decimal)share, 4);
}
