using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.QueensByAge;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Projections.DoseCompleteness;

/// <summary>See question.md.</summary>
public sealed class DoseCompletenessQuestion : Question<DoseRow>
{
    public override string Name => "dose-completeness";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    public override IEnumerable<DoseRow> RowsFor(Books books, Subject subject)
    {
        var colony = books.Colony(new ColonyId(subject.Id));
        foreach (var (course, season) in CoursesGiven.To(books, colony))
            yield return Row(books, colony, course, season);
    }

    /// <summary>
    /// The rows of a yard made whole: every living colony owes a course of the season as soon as a dose of it was given in the yard, or more than
    /// half of its colonies brought one with them: a nuc that came in treated does not begin the course for others. A colony that existed in the
    /// season and has no row had nothing.
    /// </summary>
    /// <param name="rows">The rows of living colonies, of one season, of any yards.</param>
    /// <param name="living">All living colonies, with the day they began.</param>
    /// <param name="season">The season asked for.</param>
    /// <param name="startMonth">The month in which a season starts.</param>
    public static IReadOnlyList<DoseRow> WholeYards(IReadOnlyList<DoseRow> rows, IEnumerable<(DoseRow Blank, DateOnly? Began)> living, int season, int startMonth)
    {
        var standing = living.Where(colony => colony.Blank.YardId is not null).ToList();
        var size = standing.GroupBy(colony => colony.Blank.YardId).ToDictionary(yard => yard.Key!.Value, yard => yard.Count());
        var begun = rows.Where(row => row.YardId is not null).GroupBy(row => (row.YardId, row.Course))
            .Where(yard => yard.Any(row => row.GivenHere) || 2 * yard.Count() > size.GetValueOrDefault(yard.Key.YardId!.Value))
            .Select(group => group.First()).ToLookup(row => row.YardId);
        var have = rows.Select(row => (row.ColonyId, row.Course)).ToHashSet();
        var lastDay = Season.LastDay(season, startMonth);
        return
        [
            .. rows,
            .. from colony in standing
               where colony.Began is null || colony.Began <= lastDay
               from course in begun[colony.Blank.YardId]
               where !have.Contains((colony.Blank.ColonyId, course.Course))
               select colony.Blank with { Course = course.Course, Season = season, FullDoses = course.FullDoses, Had = 0, Owed = course.FullDoses, TooMany = course.FullDoses is null ? null : 0 },
        ];
    }

    /// <summary>The same, by the rows of the living colonies and the register.</summary>
    public static IReadOnlyList<DoseRow> WholeYards(IReadOnlyList<DoseRow> rows, IEnumerable<QueenRow> living, IReadOnlyDictionary<Guid, RegisterRow> register, int season, int startMonth) =>
        WholeYards(rows, living.Select(row => (Nothing(row, register.GetValueOrDefault(row.ColonyId.Value)), register.GetValueOrDefault(row.ColonyId.Value)?.Began)), season, startMonth);

    /// <summary>The row of a living colony that had nothing, of no course yet.</summary>
    private static DoseRow Nothing(QueenRow living, RegisterRow? colony) => new()
    {
        YardId = living.YardId,
        Yard = living.Yard,
        Spot = living.Spot,
        ColonyId = living.ColonyId,
        Colony = living.Colony,
        Course = "",
        Season = 0,
        Had = 0,
        Path = living.Colony,
        Entries = colony?.Entries ?? [],
    };

    private static DoseRow Row(Books books, ColonyCard colony, string course, int season)
    {
        var paths = new DosePaths(books, course, season);
        var path = paths.Of(colony.Colony);
        var entries = InSeason.Of(colony, season, books.Outfit.SeasonStartMonth);
        var doses = entries.OfType<Treated>().Where(dose => dose.Course == course).ToList();
        var frames = LeastTreatedFrames(books, colony, entries, doses, paths);
        var less = frames is { } least && least.Had < path.Doses ? frames : null;
        var defined = books.Outfit.Courses.GetValueOrDefault(course);
        var full = defined?.FullDoses;
        var limits = Limits.Of(books, colony, defined, path, doses.LastOrDefault());
        var stay = colony.Standing;
        return new DoseRow
        {
            YardId = stay?.Spot.Yard,
            Yard = stay is null ? null : Names.Of(books.Yard(stay.Spot.Yard)),
            Spot = stay?.Spot.Number,
            ColonyId = colony.Colony,
            Colony = Names.Of(colony),
            Ended = colony.End?.On.Day,
            Course = course,
            Season = season,
            FullDoses = full,
            Had = path.Doses,
            Owed = full is null ? null : Math.Max(0, full.Value - path.Doses),
            TooMany = full is null ? null : Math.Max(0, path.Doses - full.Value),
            Path = string.Join(" → ", path.Colonies.Select(id => Names.Of(books.Colony(id)))),
            FramesRemark = less?.Remark,
            FramesHad = less?.Had,
            LastDose = path.LastDose,
            LastDoseId = path.Entries.OfType<Treated>().LastOrDefault()?.Id.Value,
            OwnDoseId = limits.Own?.Id.Value,
            GivenHere = stay is not null && doses.Any(dose => colony.Stays.LastOrDefault(at => Place.Of(at.CameBy) <= Place.Of(dose))?.Spot.Yard == stay.Spot.Yard),
            Story = PathStory.Of(books, path),
            TooSoon = limits.TooSoon,
            TooLate = limits.TooLate,
            TooHot = limits.TooHot,
            TooCold = limits.TooCold,
            WarmthUnknown = limits.WarmthUnknown,
            SupersOn = limits.SupersOn,
            OutFrom = limits.OutFrom,
            OutBy = limits.OutBy,
            OutOn = limits.OutOn,
            NextFrom = limits.NextFrom,
            NextBy = limits.NextBy,
            WithholdingUntil = limits.WithholdingUntil,
            BroodTooSoonUntil = limits.BroodTooSoonUntil,
            Remarks = limits.Words(defined, path.Doses),
            Entries = Evidence.Of([.. path.Entries, .. limits.By, defined, less?.By]),
        };
    }

    private static (decimal Had, string Remark, Entry By)? LeastTreatedFrames(Books books, ColonyCard colony, IReadOnlyList<Entry> entries, IReadOnlyList<Treated> doses, DosePaths paths)
    {
        (decimal Had, string Remark, Entry By)? least = null;
        foreach (var frames in entries.OfType<FramesMoved>())
        {
            if (frames.To != colony.Colony || frames.Of is not (FramesOf.Brood or FramesOf.Bees)) continue;
            var at = Place.Of(frames);
            var brought = paths.Before(frames.Colony, at).Doses;
            var since = doses.Where(dose => Place.Of(dose) > at).Sum(dose => dose.Doses);
            if (least is null || brought + since < least.Value.Had)
                least = (brought + since, FormattableString.Invariant($"{frames.Frames:0.##} frames of {frames.Of.ToString().ToLowerInvariant()} from {Names.Of(books.Colony(frames.Colony))}, {frames.On}"), frames);
        }

        return least;
    }
}
