using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>
/// Courses to start from, as data. Each is an example: the label of the packet and the law of the place bind, and they differ by country. Nothing
/// here is a dose; how much is given is not part of a course.
/// </summary>
public static class ExampleCourses
{
    private const string Binds = "example, your label binds";
    private static readonly DateOnly Written = new(2026, 11, 27);

    /// <summary>All of them, by name. Ids are made when one is recorded.</summary>
    public static IReadOnlyList<CourseDefined> All { get; } =
    [
        Of("thymol gel 25 %, two doses", 2, "thymol", "United Kingdom",
            "daily maximum, supers and the whole yard: UK SPC AN 01316/2014; two full doses or four halves about two weeks apart: common practice, no source", "When it is hot four halves are given in place of two full doses; each counts 0.5.") with
        {
            DaysBetweenAtLeast = 5, DaysBetweenAtMost = 18, CoolestMaximum = 15, WarmestMaximum = 40, SupersOff = true, WholeYard = true, BroodTooSoonDays = 21,
        },
        Of("oxalic acid, vapour", 1, "oxalic acid", "United States",
            "per brood chamber, broodless for full effect; seven times at five-day intervals with brood did not hold mites below threshold in 99 colonies: J. Insect Sci. 22 (2022), PMC8825467", "Acid vapour: respirator for acid gas, goggles, gloves, never indoors.") with
        {
            BroodlessWanted = true, DoseBy = DosedBy.BroodChamber, SupersOff = true,
        },
        Of("oxalic acid, trickle (US)", 1, "oxalic acid", "United States", "EPA label, as quoted by extension guides", "The recipe stands on the label. Say whether a concentration is of the dihydrate or anhydrous: 1 g anhydrous is 1.40 g dihydrate.") with
        {
            BroodlessWanted = true, MostPerSeason = 1, DoseBy = DosedBy.Colony,
        },
        Of("oxalic acid, trickle (France)", 1, "oxalic acid", "France", "authorised leaflet: once", "The recipe stands in the leaflet; it is twice as strong as the US one in the same volume.") with
        {
            BroodlessWanted = true, MostPerSeason = 1, DoseBy = DosedBy.Colony,
        },
        Of("formic acid strips, 7 days", 1, "formic acid", "United Kingdom", "authorised leaflet Vm 40476/4000: two strips, 7 days, 10 to 29.5 °C on the day, at least 6 brood frames, withdrawal 0 days", "Corrosive; in heat it kills queens and brood.") with
        {
            DaysInAtLeast = 7, DaysInAtMost = 7, CoolestMaximum = 10, WarmestMaximum = 29.5m, WithholdingDays = 0, DoseBy = DosedBy.Colony,
        },
        Of("amitraz strips", 1, "amitraz", "United States", "42 to 56 days, taken out, by frames of bees: UK SPC AN 00561/2015; 14 days before supers: US label, from memory", "Affects the nervous system. Strips are not cut and not used again.") with
        {
            DaysInAtLeast = 42, DaysInAtMost = 56, TakenOut = true, SupersOff = true, WithholdingDays = 14, DoseBy = DosedBy.FramesOfBees,
        },
    ];

    /// <summary>The one of a name; null where there is none.</summary>
    public static CourseDefined? Named(string? name) => All.FirstOrDefault(course => course.Course == name);

    private static CourseDefined Of(string name, decimal full, string substance, string country, string source, string note) => new()
    {
        Id = default, On = Written, Act = default, Course = name, FullDoses = full, Substance = substance, Country = country, Source = $"{Binds}; {source}", Note = note,
    };
}
