using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.DoseCompleteness;

/// <summary>What was done along a path against the limits of the course as the owner wrote them. It judges what is recorded and proposes nothing.</summary>
internal sealed record Limits
{
    /// <summary>The last dose that the colony itself was given; null where the course is not defined, too.</summary>
    public Treated? Own { get; private init; }

    /// <summary>Doses given sooner after the one before than the course allows.</summary>
    public int TooSoon { get; private init; }

    /// <summary>Doses given later after the one before than the course allows.</summary>
    public int TooLate { get; private init; }

    /// <summary>Doses with a day in their window whose maximum was above the course's limit.</summary>
    public int TooHot { get; private init; }

    /// <summary>The same below.</summary>
    public int TooCold { get; private init; }

    /// <summary>Doses with a day in their window whose maximum nobody recorded, where the course has a limit.</summary>
    public int WarmthUnknown { get; private init; }

    /// <summary>Doses given with supers on, where they must be off.</summary>
    public int SupersOn { get; private init; }

    /// <summary>The colony's own last dose is to be taken out from this day on; null where nothing is to be taken out.</summary>
    public DateOnly? OutFrom { get; private init; }

    /// <summary>… and by this day.</summary>
    public DateOnly? OutBy { get; private init; }

    /// <summary>When it was taken out; null while it was not.</summary>
    public DateOnly? OutOn { get; private init; }

    /// <summary>The next dose that is owed may be given from this day on.</summary>
    public DateOnly? NextFrom { get; private init; }

    /// <summary>… and by this day.</summary>
    public DateOnly? NextBy { get; private init; }

    /// <summary>No supers before this day; null where the course has no such days, or where what must be taken out is still in.</summary>
    public DateOnly? WithholdingUntil { get; private init; }

    /// <summary>Brood seen up to this day is too soon to judge.</summary>
    public DateOnly? BroodTooSoonUntil { get; private init; }

    /// <summary>The entries it rests on beyond the path's own.</summary>
    public IReadOnlyList<Entry> By { get; private init; } = [];

    /// <param name="own">The last dose of the course that the colony itself was given in the season.</param>
    public static Limits Of(Books books, ColonyCard colony, CourseDefined? course, Path path, Treated? own)
    {
        if (course is null) return new Limits();
        var doses = path.Entries.OfType<Treated>().ToList();
        var days = doses.Zip(doses.Skip(1), (one, next) => next.On.Day.DayNumber - one.On.Day.DayNumber).ToList();
        var warmth = doses.Select(dose => Warmth.Of(books, course, dose)).ToList();
        var takenOut = own is null ? null : colony.Counted.OfType<TreatmentTakenOut>().FirstOrDefault(taken => taken.Course == course.Course && Place.Of(taken) > Place.Of(own));
        var comesOut = course.TakenOut == true && own is not null;
        return new Limits
        {
            Own = own,
            TooSoon = days.Count(between => between < course.DaysBetweenAtLeast),
            TooLate = days.Count(between => between > course.DaysBetweenAtMost),
            TooHot = warmth.Count(dose => dose.Above),
            TooCold = warmth.Count(dose => dose.Under),
            WarmthUnknown = warmth.Count(dose => dose.Unknown),
            SupersOn = course.SupersOff == true ? doses.Count(dose => dose.SupersOn == true) : 0,
            OutFrom = comesOut ? own!.On.Day.AddDays(course.DaysInAtLeast ?? 0) : null,
            OutBy = comesOut && course.DaysInAtMost is { } most ? own!.On.Day.AddDays(most) : null,
            OutOn = comesOut ? takenOut?.On.Day : null,
            NextFrom = Next(course.DaysBetweenAtLeast),
            NextBy = Next(course.DaysBetweenAtMost),
            WithholdingUntil = course.WithholdingDays is { } withheld && (course.TakenOut != true || own is null || takenOut is not null) && (takenOut?.On.Day ?? path.LastDose) is { } last ? last.AddDays(withheld) : null,
            BroodTooSoonUntil = course.BroodTooSoonDays is { } soon ? own?.On.Day.AddDays(soon) : null,
            By = [.. warmth.SelectMany(dose => dose.By), .. comesOut || takenOut is not null ? new Entry?[] { own, takenOut }.OfType<Entry>() : []],
        };

        DateOnly? Next(int? between) => between is { } wait && path.Doses < course.FullDoses && path.LastDose is { } last ? last.AddDays(wait) : null;
    }

    /// <summary>What is not as the course wants it, in words; nothing that depends on today.</summary>
    public IReadOnlyList<string> Words(CourseDefined? course, decimal had)
    {
        var words = new List<string>();
        Say(TooSoon, "dose too soon after the one before", "doses too soon after the one before");
        Say(TooLate, "dose too late after the one before", "doses too late after the one before");
        Say(TooHot, "dose on too hot a day", "doses on too hot a day");
        Say(TooCold, "dose on too cold a day", "doses on too cold a day");
        Say(SupersOn, "dose with supers on", "doses with supers on");
        if (OutOn < OutFrom) words.Add(FormattableString.Invariant($"taken out too soon, {OutOn:yyyy-MM-dd}"));
        if (OutOn > OutBy) words.Add(FormattableString.Invariant($"taken out too late, {OutOn:yyyy-MM-dd}"));
        if (OutBy is { } by && OutOn is null) words.Add(FormattableString.Invariant($"taken out: not recorded, due by {by:yyyy-MM-dd}"));
        if (had > course?.MostPerSeason) words.Add(FormattableString.Invariant($"more than the most in a season, {course.MostPerSeason:0.##}"));
        Say(WarmthUnknown, "dose without a recorded daily maximum", "doses without a recorded daily maximum");
        return words;

        void Say(int count, string one, string several)
        {
            if (count > 0) words.Add(FormattableString.Invariant($"{count} {(count == 1 ? one : several)}"));
        }
    }
}
