using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Projections.MiteWatch;

/// <summary>Treatments of whole yards, judged by the rounds of washes before and after.</summary>
/// <remarks>
/// A yard was treated between two rounds that follow each other where every colony washed in the later one had a dose since the earlier one began; washes of
/// the earlier round that already had one since it began are left out of 'before'. A yard in which no colony of the later round had one is a control for it
/// where both its rounds lie within ten days of the treated yard's. A yard in which some had and others had not is neither: bees and mites drift.
/// </remarks>
public static class Efficacies
{
    /// <summary>Rounds further apart are not compared: the season has done more than the treatment (common practice, no source).</summary>
    private const int MostDaysBetween = 90;

    /// <summary>Rounds of controls lie no further than this from those of the treated yard (the days that keep a round together).</summary>
    private const int DaysBeside = 10;

    /// <summary>The treatments of all yards, by yard and day.</summary>
    public static IReadOnlyList<EfficacyRow> Of(IEnumerable<WashRow> washes, OutfitCard outfit)
    {
        var all = washes.ToList();
        var byYard = all.Where(wash => wash.YardId is not null && wash.Bees > 0).ToLookup(wash => wash.YardId!.Value);
        var pairs = Rounds.Of(all, outfit).GroupBy(round => round.YardId).SelectMany(yard => yard.Zip(yard.Skip(1)))
            .Where(pair => pair.Second.From.DayNumber - pair.First.To.DayNumber <= MostDaysBetween)
            .Select(pair => new Pair(pair.First, pair.Second, [.. byYard[pair.First.YardId]])).ToList();
        var controls = pairs.Where(pair => pair.Doses.Count == 0).ToList();
        return [.. pairs.Where(pair => pair.AllDosed && pair.Before.Count > 0).Select(pair => Row(pair, [.. controls.Where(pair.IsBeside)]))];
    }

    private static EfficacyRow Row(Pair treated, IReadOnlyList<Pair> controls)
    {
        var (before, after) = (Per100(treated.Before), Per100(treated.After));
        var control = controls.Count == 0 ? ((decimal, decimal)?)null : (Per100([.. controls.SelectMany(pair => pair.Before)]), Per100([.. controls.SelectMany(pair => pair.After)]));
        var share = control is var (controlBefore, controlAfter) ? Efficacy.HendersonTilton((double)before, (double)after, (double)controlBefore, (double)controlAfter) : null;
        return new EfficacyRow
        {
            YardId = treated.Earlier.YardId,
            Yard = treated.Earlier.Yard,
            BeforeFrom = treated.Earlier.From,
            BeforeTo = treated.Earlier.To,
            DosedFrom = treated.Doses.Min(),
            DosedTo = treated.Doses.Max(),
            AfterFrom = treated.Later.From,
            AfterTo = treated.Later.To,
            WashesBefore = treated.Before.Count,
            MitesBefore = treated.Before.Sum(wash => wash.Mites),
            Per100Before = Math.Round(before, 4),
            WashesAfter = treated.After.Count,
            MitesAfter = treated.After.Sum(wash => wash.Mites),
            Per100After = Math.Round(after, 4),
            ControlYards = [.. controls.Select(pair => pair.Earlier.Yard)],
            ControlPer100Before = control is var (first, _) ? Math.Round(first, 4) : null,
            ControlPer100After = control is var (_, last) ? Math.Round(last, 4) : null,
            Percent = Percent(share),
            NaivePercent = Percent(Efficacy.Naive((double)before, (double)after)),
            Entries = [.. controls.Prepend(treated).SelectMany(pair => pair.Before.Concat(pair.After)).SelectMany(wash => wash.Entries).Distinct()],
        };
    }

    /// <summary>Not rounded: rounded infestations would move the percents.</summary>
    private static decimal Per100(IReadOnlyList<WashRow> washes) => 100m * washes.Sum(wash => wash.Mites) / washes.Sum(wash => wash.Bees);

    private static decimal? Percent(double? share) => share is { } known ? Math.Round(100 * (decimal)known, 1) : null;

    /// <summary>Two rounds of a yard that follow each other.</summary>
    private sealed class Pair
    {
        public Pair(RoundRow earlier, RoundRow later, IReadOnlyList<WashRow> ofYard)
        {
            (Earlier, Later) = (earlier, later);
            Before = [.. ofYard.Where(wash => wash.On >= earlier.From && wash.On <= earlier.To && DoseSince(wash) is null)];
            After = [.. ofYard.Where(wash => wash.On >= later.From && wash.On <= later.To)];
            Doses = [.. After.Select(DoseSince).OfType<DateOnly>()];
        }

        public RoundRow Earlier { get; }

        public RoundRow Later { get; }

        public IReadOnlyList<WashRow> Before { get; }

        public IReadOnlyList<WashRow> After { get; }

        /// <summary>When those washed afterwards had their last dose, where that was since the earlier round began.</summary>
        public IReadOnlyList<DateOnly> Doses { get; }

        public bool AllDosed => Doses.Count == After.Count;

        public bool IsBeside(Pair control) => control.Before.Count > 0 && Near(Earlier, control.Earlier) && Near(Later, control.Later);

        private static bool Near(RoundRow one, RoundRow other) =>
            other.From.DayNumber - one.To.DayNumber <= DaysBeside && one.From.DayNumber - other.To.DayNumber <= DaysBeside;

        private DateOnly? DoseSince(WashRow wash) => wash.DaysSinceDose is { } days && wash.On.AddDays(-days) is var dose && dose >= Earlier.From ? dose : null;
    }
}
