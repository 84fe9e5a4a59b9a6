using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.MiteWatch;
using ColonyLineage.Projections.OwedWork;
using ColonyLineage.Projections.QueensByAge;
using ColonyLineage.Projections.StoresAndFeed;

namespace ColonyLineage.Projections.WinterReadiness;

/// <summary>Will she do? Each living colony against the owner's own criteria. No score.</summary>
public static class Readiness
{
    /// <summary>Colony by colony, criterion by criterion. Empty where the owner has set no criteria.</summary>
    /// <param name="facts">What is known, for a day.</param>
    /// <param name="stores">What colonies have on.</param>
    public static IReadOnlyList<ReadinessRow> Of(Facts facts, IEnumerable<StoresRow> stores)
    {
        if (facts.Outfit.Readiness is not { } asked) return [];
        var judge = new Judge(facts, asked, [.. stores]);
        return
        [
            .. facts.Living.OrderBy(row => row.Yard, ByNumber.Order).ThenBy(row => row.YardId?.Value).ThenBy(row => row.Spot, ByNumber.Order).ThenBy(row => row.Colony, ByNumber.Order).ThenBy(row => row.ColonyId.Value)
                .SelectMany(judge.Colony),
        ];
    }

    private sealed class Judge
    {
        private readonly Facts _facts;
        private readonly ReadinessSet _asked;
        private readonly Dictionary<ColonyId, StoresRow> _stores;
        private readonly ILookup<ColonyId, DoseRow> _doses;
        private readonly ILookup<ColonyId, WashRow> _washes;
        private readonly ILookup<ColonyId?, OwedRow> _owed;
        private readonly ILookup<YardId?, QueenRow> _yards;

        public Judge(Facts facts, ReadinessSet asked, IReadOnlyList<StoresRow> stores)
        {
            (_facts, _asked) = (facts, asked);
            _stores = stores.ToDictionary(row => row.ColonyId);
            _doses = facts.WholeYards().ToLookup(row => row.ColonyId);
            _washes = facts.Washes.ToLookup(row => row.ColonyId);
            _owed = Owed.Of(facts, ahead: 0).ToLookup(row => row.ColonyId);
            _yards = facts.Living.ToLookup(row => row.YardId);
        }

        public IEnumerable<ReadinessRow> Colony(QueenRow colony)
        {
            if (_asked.QueenSeasonsBackAtMost is { } back) yield return Queen(colony, back);
            if (_asked.BroodSeenWithinDays is { } within) yield return Brood(colony, within);
            if (_asked.FramesOfBeesAtLeast is { } frames) yield return Bees(colony, frames);
            if (_asked.StoresAtTarget == true) yield return Stores(colony);
            if (_asked.MitesAtMost is { } mites) yield return Mites(colony, mites);
            foreach (var course in _asked.CoursesComplete ?? []) yield return Course(colony, course);
            if (_asked.NothingOwed == true) yield return Nothing(colony);
        }

        private ReadinessRow Queen(QueenRow colony, int back)
        {
            if (colony.Presence == "none known") return Row(colony, "queen", Met.NotMet, "no queen known", "requeen, or combine", colony.Entries);
            if (colony.SeasonFrom is not { } from || colony.SeasonTo is not { } to) return Row(colony, "queen", Met.NotKnown, "nobody knows her age", "look for her and her mark", colony.Entries);
            var (oldest, youngest) = (_facts.ThisSeason - from, _facts.ThisSeason - to);
            var found = from == to ? $"born in season {from}" : $"born in season {from} or {to}";
            return oldest <= back ? Row(colony, "queen", Met.Met, found, null, colony.Entries)
                : youngest > back ? Row(colony, "queen", Met.NotMet, found, "requeen", colony.Entries)
                : Row(colony, "queen", Met.NotKnown, found, "look for her and her mark", colony.Entries);
        }

        private ReadinessRow Brood(QueenRow colony, int within)
        {
            var soon = _doses[colony.ColonyId].Where(row => row.BroodTooSoonUntil is not null).MaxBy(row => row.BroodTooSoonUntil);
            if (colony.BroodSeen is { } seen && seen >= _facts.Today.AddDays(-within)) return Row(colony, "brood", Met.Met, $"seen on {Day(seen)}", null, colony.Entries);
            if (soon?.BroodTooSoonUntil >= colony.LastLook) return Row(colony, "brood", Met.NotKnown, $"last look {Day(colony.LastLook!.Value)}: too soon after {soon.Course} to judge", $"look after {Day(soon.BroodTooSoonUntil!.Value)}", [.. colony.Entries.Concat(soon.Entries).Distinct()]);
            return colony.LastLook is { } look && look >= _facts.Today.AddDays(-within)
                ? Row(colony, "brood", Met.NotMet, $"looked on {Day(look)} and seen no brood", "requeen, or combine", colony.Entries)
                : Row(colony, "brood", Met.NotKnown, colony.LastLook is { } last ? $"nobody looked since {Day(last)}" : "nobody has looked", "look", colony.Entries);
        }

        private ReadinessRow Bees(QueenRow colony, decimal frames)
        {
            if (colony.FramesOfBees is not { } bees) return Row(colony, "bees", Met.NotKnown, "nobody has counted", "count", colony.Entries);
            var found = $"{Number(bees)} frames of bees";
            return bees >= frames ? Row(colony, "bees", Met.Met, found, null, colony.Entries) : Row(colony, "bees", Met.NotMet, found, Neighbour(colony) is { } other ? $"combine with {other}, or replace by a nuc" : "replace by a nuc", colony.Entries);
        }

        private ReadinessRow Stores(QueenRow colony)
        {
            if (!_stores.TryGetValue(colony.ColonyId, out var row)) return Row(colony, "stores", Met.NotKnown, "nobody has weighed or lifted it", "lift or weigh", colony.Entries);
            if (row is { StoresKg: { } stores, TargetKg: { } target, LackingKg: { } lacking })
                return lacking <= 0 ? Row(colony, "stores", Met.Met, $"{Number(stores)} of {Number(target)} kg", null, row.Entries)
                    : Row(colony, "stores", Met.NotMet, $"{Number(stores)} of {Number(target)} kg", $"feed: {Number((decimal)Math.Round((double)lacking / Feed.StoresOfSugar, 1))} kg of sugar", row.Entries);
            // A heft is no weight: heavy and light are told apart from not knowing, fair is not.
            return row.Heft switch
            {
                Heft.Heavy => Row(colony, "stores", Met.Met, $"heavy on {Day(row.HeftOn!.Value)}", null, row.Entries),
                Heft.Light => Row(colony, "stores", Met.NotMet, $"light on {Day(row.HeftOn!.Value)}", "feed", row.Entries),
                Heft.Fair => Row(colony, "stores", Met.NotKnown, $"fair on {Day(row.HeftOn!.Value)}, never weighed", "weigh", row.Entries),
                _ => Row(colony, "stores", Met.NotKnown, row.TargetKg is null ? "no target is set for its housing" : "nobody has weighed or lifted it", "lift or weigh", row.Entries),
            };
        }

        private ReadinessRow Mites(QueenRow colony, decimal most)
        {
            var last = _doses[colony.ColonyId].Max(row => row.LastDose);
            var wash = _washes[colony.ColonyId].LastOrDefault();
            if (wash is null || wash.On < last) return Row(colony, "mites", Met.NotKnown, wash is null ? "never washed" : $"not washed since the dose of {Day(last!.Value)}", "wash", wash?.Entries ?? colony.Entries);
            var found = $"{Number(Math.Round(wash.Per100Bees, 2))} per 100 bees on {Day(wash.On)}";
            return wash.Per100Bees <= most ? Row(colony, "mites", Met.Met, found, null, wash.Entries) : Row(colony, "mites", Met.NotMet, found, "treat: by the label and the course the owner chooses", wash.Entries);
        }

        private ReadinessRow Course(QueenRow colony, string course)
        {
            var row = _doses[colony.ColonyId].FirstOrDefault(row => row.Course == course);
            var judged = row is null ? Row(colony, "course", Met.NotMet, $"nothing of {course} this season", $"complete {course}", colony.Entries)
                : row.Owed is null ? Row(colony, "course", Met.NotKnown, $"{course} is not defined", $"define {course}", row.Entries)
                : row.Owed == 0 ? Row(colony, "course", Met.Met, $"{Number(row.Had)} of {Number(row.FullDoses!.Value)}", null, row.Entries)
                : Row(colony, "course", Met.NotMet, $"{Number(row.Had)} of {Number(row.FullDoses!.Value)}{(row.Story is { } story ? $": {story}" : "")}", $"complete {course}", row.Entries);
            return judged with { Of = course };
        }

        private ReadinessRow Nothing(QueenRow colony)
        {
            // What the course owes is a criterion of its own where it is asked for.
            var owed = _owed[colony.ColonyId].Where(row => row.State is Due.Now or Due.Late && !(row.Work == Works.Course && _asked.CoursesComplete?.Contains(row.LoadWhich ?? "") == true)).ToList();
            return owed.Count == 0 ? Row(colony, "owed", Met.Met, "nothing", null, colony.Entries)
                : Row(colony, "owed", Met.NotMet, string.Join(", ", owed.Select(row => row.Work)), "do what is owed", [.. owed.SelectMany(row => row.Entries).Distinct()]);
        }

        /// <summary>The strongest colony of the yard that has bees enough and a queen.</summary>
        private string? Neighbour(QueenRow colony) =>
            colony.YardId is null ? null : _yards[colony.YardId].Where(other => other.ColonyId != colony.ColonyId && other.FramesOfBees >= _asked.FramesOfBeesAtLeast && other.Presence != "none known")
                .OrderByDescending(other => other.FramesOfBees).ThenBy(other => other.Spot, ByNumber.Order).ThenBy(other => other.ColonyId.Value).FirstOrDefault()?.Colony;

        private static ReadinessRow Row(QueenRow colony, string criterion, Met met, string found, string? remedy, IReadOnlyList<EntryId> entries) => new()
        {
            YardId = colony.YardId,
            Yard = colony.Yard,
            Spot = colony.Spot,
            ColonyId = colony.ColonyId,
            Colony = colony.Colony,
            Criterion = criterion,
            Met = met,
            Found = found,
            Remedy = remedy,
            Entries = entries,
        };

        private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

        private static string Number(decimal number) => number.ToString("0.##", CultureInfo.InvariantCulture);
    }
}
