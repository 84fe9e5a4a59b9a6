using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>What a course's limits say of one path, dose by dose, and the further entries that this rests on.</summary>
public sealed class OracleLimits
{
    public int TooSoon { get; set; }
    public int TooLate { get; set; }
    public int TooHot { get; set; }
    public int TooCold { get; set; }
    public int WarmthUnknown { get; set; }
    public int SupersOn { get; set; }
    public DateOnly? OutFrom { get; set; }
    public DateOnly? OutBy { get; set; }
    public DateOnly? OutOn { get; set; }
    public DateOnly? NextFrom { get; set; }
    public DateOnly? NextBy { get; set; }
    public DateOnly? WithholdingUntil { get; set; }
    public DateOnly? BroodTooSoonUntil { get; set; }
    public HashSet<EntryId> Rests { get; } = [];
}

public sealed partial class OracleBooks
{
    public OracleLimits Limits(ColonyId id, OraclePath path, CourseDefined? course, int season)
    {
        var limits = new OracleLimits();
        if (course is null) return limits;
        Treated? before = null;
        foreach (var step in path.Steps)
        {
            if (step is not Treated dose) continue;
            if (before is not null)
            {
                var wait = dose.On.Day.DayNumber - before.On.Day.DayNumber;
                if (course.DaysBetweenAtLeast is { } least && wait < least) limits.TooSoon++;
                if (course.DaysBetweenAtMost is { } most && wait > most) limits.TooLate++;
            }

            if (course.SupersOff is true && dose.SupersOn is true) limits.SupersOn++;
            WarmthOf(dose, course, limits);
            before = dose;
        }

        if (before is not null && path.Doses < course.FullDoses)
        {
            if (course.DaysBetweenAtLeast is { } from) limits.NextFrom = before.On.Day.AddDays(from);
            if (course.DaysBetweenAtMost is { } by) limits.NextBy = before.On.Day.AddDays(by);
        }

        Treated? own = null;
        Entry? taken = null;
        foreach (var entry in Colony(id).Counted)
        {
            if (entry is Treated dose && Of(dose, course.Course, new DateOnly(season, SeasonStart(), 1))) (own, taken) = (dose, null);
            if (entry is TreatmentTakenOut happened && happened.Course == course.Course && own is not null) taken ??= happened;
        }

        if (own is not null && course.BroodTooSoonDays is { } soon) limits.BroodTooSoonUntil = own.On.Day.AddDays(soon);
        if (course.TakenOut is true && own is not null)
        {
            limits.OutFrom = own.On.Day.AddDays(course.DaysInAtLeast ?? 0);
            if (course.DaysInAtMost is { } most) limits.OutBy = own.On.Day.AddDays(most);
            limits.OutOn = taken?.On.Day;
            limits.Rests.Add(own.Id);
        }

        if (taken is not null) limits.Rests.UnionWith([own!.Id, taken.Id]);
        var stillIn = course.TakenOut is true && own is not null && taken is null;
        if (course.WithholdingDays is { } days && !stillIn && (taken ?? before) is { } last) limits.WithholdingUntil = last.On.Day.AddDays(days);
        return limits;
    }

    private void WarmthOf(Treated dose, CourseDefined course, OracleLimits limits)
    {
        if (course.CoolestMaximum is null && course.WarmestMaximum is null) return;
        YardId? yard = null;
        foreach (var stay in Colony(dose.Colony).Stays)
            if (!Before(dose, stay.Came))
                yard = stay.Spot.Yard;
        var (hot, cold, unknown) = (false, false, yard is null);
        for (var day = 0; yard is not null && day < (course.MaximumMattersDays ?? 1); day++)
        {
            DailyMaximum? known = null;
            foreach (var entry in _standing)
                if (entry is DailyMaximum maximum && maximum.Yard == yard && maximum.On.Day == dose.On.Day.AddDays(day))
                    known = maximum;
            if (known is null)
            {
                unknown = true;
                continue;
            }

            limits.Rests.Add(known.Id);
            var warm = known.Maximum.Scale == "F" ? (known.Maximum.Degrees - 32m) * 5m / 9m : known.Maximum.Degrees;
            if (course.WarmestMaximum is { } most && warm > most) hot = true;
            if (course.CoolestMaximum is { } least && warm < least) cold = true;
        }

        if (hot) limits.TooHot++;
        if (cold) limits.TooCold++;
        if (unknown) limits.WarmthUnknown++;
    }
}
