using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.MiteWatch;
using ColonyLineage.Projections.QueensByAge;
using ColonyLineage.Projections.SpotStory;

namespace ColonyLineage.Projections.OwedWork;

/// <summary>What a yard owes as a whole: by its washes, by the weeks without brood, and by its empty spots.</summary>
internal sealed class YardWork
{
    private readonly Facts _facts;
    private readonly DateOnly _firstDay;
    private readonly ILookup<YardId?, QueenRow> _living;
    private readonly ILookup<YardId?, DoseRow> _doses;
    private readonly ILookup<YardId, RoundRow> _rounds;
    private readonly ILookup<YardId, BandRow> _bands;
    private readonly HashSet<Guid> _matingNucs;

    public YardWork(Facts facts, IReadOnlyList<DoseRow> whole)
    {
        _facts = facts;
        _firstDay = Season.FirstDay(facts.ThisSeason, facts.Outfit.SeasonStartMonth);
        _living = facts.Living.ToLookup(row => row.YardId);
        _doses = whole.ToLookup(row => row.YardId);
        _rounds = Rounds.Of(facts.Washes.Where(wash => wash.On >= _firstDay), facts.Outfit).ToLookup(round => round.YardId);
        _bands = facts.Bands.ToLookup(band => band.YardId);
        _matingNucs = [.. facts.Register.Where(row => row is { Kind: SubjectKind.Colony, Housing: Housing.MatingNuc }).Select(row => row.Id)];
    }

    public IEnumerable<OwedRow> Rows()
    {
        foreach (var yard in _facts.Yards.Where(yard => yard.Closed is null))
        {
            if (ByWash(yard) is { } wash) yield return wash;
            if (WashAfterCourse(yard) is { } after) yield return after;
            if (Winter(yard) is { } winter) yield return winter;
            if (Empty(yard) is { } empty) yield return empty;
        }
    }

    /// <summary>The yard's last round of washes speaks: over the limit the whole yard is due, at the limit it is washed again. A dose since then closes either.</summary>
    private OwedRow? ByWash(YardCard yard)
    {
        if (_rounds[yard.Yard].LastOrDefault() is not { RuleOfThumb: not Thumb.Wanted } round) return null;
        var dosed = _doses[yard.Yard].Where(row => row.LastDose > round.MostOn).Select(row => row.ColonyId).ToHashSet();
        var living = _living[yard.Yard].Select(row => row.ColonyId).ToList();
        var without = living.Count(colony => !dosed.Contains(colony));
        if (without == 0) return null;
        var wash = $"{round.MostMites} mites in a wash of {round.MostOf} bees from {round.MostIn} on {Day(round.MostOn)}";
        if (round.RuleOfThumb == Thumb.YardDue)
            return Row(yard, Works.TreatYard, $"{wash}: over the limit, so the whole yard is due; {without} of {living.Count} colonies had no dose since", without, round.MostId, round.MostOn, round.MostOn.AddDays(1), round.MostOn.AddDays(Habits.WashFrom), round.Entries);
        return dosed.Count > 0 ? null
            : Row(yard, Works.WashAgain, $"{wash}: at the limit", 1, round.MostId, round.MostOn, round.To.AddDays(Habits.WashFrom), round.To.AddDays(Habits.WashBy), round.Entries);
    }

    /// <summary>A course is complete, and nobody has washed since.</summary>
    private OwedRow? WashAfterCourse(YardCard yard)
    {
        var last = _doses[yard.Yard].Where(row => row.LastDose is not null && Course(row)?.BroodlessWanted != true).MaxBy(row => (row.LastDose, row.LastDoseId));
        if (last is not { LastDose: { } day, LastDoseId: { } opened } || _doses[yard.Yard].Any(row => row.Course == last.Course && row.Owed is not 0)) return null;
        if (_rounds[yard.Yard].Any(round => round.To >= day)) return null;
        return Row(yard, Works.WashAgain, $"no wash since {last.Course} was complete on {Day(day)}", 1, opened, day, day.AddDays(Habits.WashAfterFrom), day.AddDays(Habits.WashAfterBy), last.Entries);
    }

    private OwedRow? Winter(YardCard yard)
    {
        var courses = _facts.Outfit.Courses.Values.Where(course => course.BroodlessWanted == true).OrderBy(course => course.Course, StringComparer.Ordinal).ToList();
        var living = _living[yard.Yard].ToList();
        if (courses.Count == 0 || living.Count == 0 || _doses[yard.Yard].Any(row => courses.Exists(course => course.Course == row.Course))) return null;
        var from = _facts.Outfit.BroodlessFrom.From(_firstDay);
        var row = Row(yard, Works.WinterTreatment, $"{string.Join(" or ", courses.Select(course => course.Course))} in the weeks without brood: none of {living.Count} colonies had it this season", living.Count,
            courses[0].Id.Value, courses[0].On.Day, from, _facts.Outfit.BroodlessTo.From(from), [.. courses.Select(course => course.Id)]);
        return courses.Count > 1 ? row : row is null ? null : row with { Load = StockOf.Doses, LoadWhich = courses[0].Course, LoadAmount = living.Count * courses[0].FullDoses };
    }

    private OwedRow? Empty(YardCard yard)
    {
        var bands = _bands[yard.Yard].ToLookup(band => band.Spot);
        var empty = yard.Spots.Values.Where(spot => spot.Retired is null && bands[spot.Number].Any() && bands[spot.Number].All(band => band.GoneTo is not null))
            .Select(spot => bands[spot.Number].MaxBy(band => (band.GoneTo, band.From, band.ColonyId.Value))!).Where(band => !_matingNucs.Contains(band.ColonyId.Value)).OrderBy(band => band.Spot, ByNumber.Order).ToList();
        if (empty.Count == 0) return null;
        var last = empty.MaxBy(band => (band.GoneTo, band.Spot))!;
        var row = Row(yard, Works.SpotEmpty, $"{(empty.Count == 1 ? "spot" : "spots")} {string.Join(", ", empty.Select(band => band.Spot))} empty; last {last.Colony}, {last.Went}, {Day(last.GoneTo!.Value)}", empty.Count,
            last.Entries[^1].Value, last.GoneTo!.Value, last.GoneTo.Value, null, [.. empty.Select(band => band.Entries[^1])]);
        return row is null ? null : row with { Load = StockOf.Nucs, LoadAmount = empty.Count };
    }

    /// <summary>Null where somebody closed it.</summary>
    private OwedRow? Row(YardCard yard, string work, string what, int of, Guid openedBy, DateOnly opened, DateOnly from, DateOnly? by, IReadOnlyList<EntryId> entries)
    {
        var about = yard.Entries.OfType<OwedEntry>().Where(word => word.Work == work && word.Opened.Value == openedBy).ToList();
        if (about.OfType<WorkDoneElsewhere>().Any()) return null;
        var putOff = about.OfType<WorkPutOff>().LastOrDefault()?.Until;
        return new OwedRow
        {
            YardId = yard.Yard,
            Yard = Names.Of(yard),
            Work = work,
            What = what,
            Of = of,
            OpenedBy = openedBy,
            Opened = opened,
            From = from,
            By = by,
            State = Owed.State(_facts.Today, from, by, putOff),
            Visits = 0,
            PutOffUntil = putOff,
            Entries = [.. entries.Concat(about.Select(word => word.Id)).Distinct()],
        };
    }

    private CourseDefined? Course(DoseRow row) => _facts.Outfit.Courses.GetValueOrDefault(row.Course);

    private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
