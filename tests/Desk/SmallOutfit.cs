using System.Globalization;
using ColonyLineage.Entries;

namespace ColonyLineage.Desk.Tests;

/// <summary>
/// A small invented outfit, made by hand: three yards, three seasons, and one of everything that a page has to show: a nuc over a colony, a
/// dead-out found late, a supersedure seen late, a voided dose, conflicts, an unnamed queen, a retired spot, half a course.
/// </summary>
public sealed class SmallOutfit
{
    public static readonly DateOnly Today = new(2026, 10, 1);
    private static readonly Guid Space = new("5b3c0000-0000-8000-8000-000000000001");
    private readonly List<Recorded> _recorded = [];
    private int _next;

    public IReadOnlyList<Recorded> Recorded => _recorded;

    public static YardId YardNamed(string name) => new(NamedId.Of(Space, "yard " + name));

    public static ColonyId ColonyNamed(string name) => new(NamedId.Of(Space, "colony " + name));

    public static QueenId QueenNamed(string name) => new(NamedId.Of(Space, "queen " + name));

    public static SmallOutfit Make()
    {
        var outfit = new SmallOutfit();
        outfit.Settings();
        outfit.Alder();
        outfit.Quarry();
        outfit.Riverside();
        outfit.Many();
        outfit.Washes();
        return outfit;
    }

    private void Settings()
    {
        Put("2024-03-01", (id, on, act) => new OutfitDescribed { Id = id, On = on, Act = act, Name = "Three Yards Outfit", SeasonStartMonth = 3, FewFramesOfBees = 4 });
        Put("2024-03-01", (id, on, act) => new CourseDefined { Id = id, On = on, Act = act, Course = "thymol", FullDoses = 2, Substance = "thymol" });
        Put("2024-03-01", (id, on, act) => new CourseDefined { Id = id, On = on, Act = act, Course = "winter oxalic", FullDoses = 1, Substance = "oxalic acid" });
        Put("2024-03-01", (id, on, act) => new ReadinessSet
        {
            Id = id, On = on, Act = act, QueenSeasonsBackAtMost = 1, BroodSeenWithinDays = 60, FramesOfBeesAtLeast = 5, StoresAtTarget = true, MitesAtMost = 2, CoursesComplete = ["thymol"], NothingOwed = true,
        });
    }

    /// <summary>Twelve spots in two rows, most of the history.</summary>
    private void Alder()
    {
        Yard("Alder Bottom", "2024-03-02", "singles", "Through the second gate; the key hangs under the trough.");
        for (var spot = 1; spot <= 12; spot++) Mark("Alder Bottom", spot.ToString(CultureInfo.InvariantCulture), 1 + ((spot - 1) / 6), 1 + ((spot - 1) % 6));
        Raise("B1", null, "2023-06-10", "breeder");
        Line("Alder", "B1");
        Raise("B2", null, "2023-06-12", null);
        for (var i = 1; i <= 8; i++)
        {
            var name = $"24-{i:00}";
            Raise(name, i % 2 == 1 ? "B1" : "B2", "2024-05-20", "May grafts");
            if (i <= 6) MarkQueen(name, MarkColour.Green, "2024-06-20");
            Begin($"{i}", "2024-06-15", HowEstablished.Nuc, "Alder Bottom", $"{i}", Housing.Single, name);
        }

        for (var i = 1; i <= 8; i++)
        {
            Look($"{i}", "2024-08-20", 8 + i, 5, i <= 6 ? MarkColour.Green : null);
            Treat($"{i}", "2024-08-22", "thymol", 1);
            Treat($"{i}", "2024-09-05", "thymol", i == 4 ? 0.5m : 1);
        }

        Look("5", "2024-12-03", 4, 0, null);
        Put("2025-02-20", (id, on, act) => new FoundDead { Id = id, On = on, Act = act, Colony = ColonyNamed("5"), Cause = "few bees on the comb, food left", By = "Ine" });
        // A dose recorded on the dead colony: a conflict.
        Treat("5", "2025-04-02", "thymol", 1);

        // A nuc from two colonies on the spot of the dead one; its bees are few.
        Split("1", "N25-1", "2025-05-10", 2, 2);
        Split("3", "N25-1", "2025-05-10", 2, 1);
        Raise("25-01", "24-01", "2025-05-24", "first grafts");
        Begin("N25-1", "2025-05-10", HowEstablished.Split, "Alder Bottom", "5", Housing.NucBox, null);
        Put("2025-05-13", (id, on, act) => new QueenCellGiven { Id = id, On = on, Act = act, Colony = ColonyNamed("N25-1"), Queen = QueenNamed("25-01"), Batch = "first grafts" });
        Look("N25-1", "2025-06-08", 5, 3, null);
        MarkQueen("25-01", MarkColour.Blue, "2025-06-08");
        Put("2025-06-20", (id, on, act) => new NucTransferred { Id = id, On = on, Act = act, Colony = ColonyNamed("N25-1"), Into = Housing.Single });

        // A supersedure seen late: the old queen of 2 was last seen in October.
        Look("2", "2025-10-02", 7, 2, MarkColour.Green);
        Put("2026-04-14", (id, on, act) => new SupersedureSeen { Id = id, On = on, Act = act, Colony = ColonyNamed("2"), Queen = QueenNamed("S26-2"), Old = QueenNamed("24-02"), By = "Ine", Note = "Unmarked, laying well." });

        // Requeened in 2026, killed the old ones; one was not accepted.
        Put("2026-05-30", (id, on, act) => new QueenMated { Id = id, On = on, Act = act, Queen = QueenNamed("25-01"), Where = "in the open at Alder Bottom" });
        foreach (var i in new[] { 1, 3, 6 })
        {
            Raise($"26-0{i}", "25-01", "2026-06-03", "June grafts");
            Put("2026-06-20", (id, on, act) => new Requeened { Id = id, On = on, Act = act, Colony = ColonyNamed($"{i}"), Queen = QueenNamed($"26-0{i}"), OldQueen = OldQueen.Killed, Old = QueenNamed($"24-0{i}"), By = "Joost" });
            MarkQueen($"26-0{i}", MarkColour.White, "2026-07-01");
        }

        // A nuc over colony 1, on a screen board.
        Split("6", "N26-9", "2026-06-22", 1, 1);
        Begin("N26-9", "2026-06-22", HowEstablished.Split, "Alder Bottom", "1", Housing.NucBox, null, above: true);
        Look("N26-9", "2026-08-18", 3, 2, MarkColour.Unmarked);

        foreach (var i in new[] { "1", "2", "3", "4", "6", "7", "8", "N25-1" })
        {
            Treat(i, "2025-08-20", "thymol", 1);
            Treat(i, "2025-09-04", "thymol", 1);
            Look(i, "2026-08-18", i is "4" or "7" ? 3 : 11, 4, i is "8" ? MarkColour.Blue : null);
            if (i != "7") Treat(i, "2026-08-20", "thymol", 1);
            if (i is not ("7" or "3")) Treat(i, "2026-09-03", "thymol", 1);
            Wash(i, "2026-08-18", i == "7" ? 14 : 3, 300);
        }

        // A dose that was written on the wrong colony, voided in the same week.
        var wrong = Treat("3", "2026-09-03", "thymol", 1, by: "Joost");
        Void(wrong, "2026-09-06", "It was colony 8, which has its own entry.", ColonyNamed("3"));
        // Four and seven were combined; a full dose on seven afterwards contradicts it.
        Put("2026-09-12", (id, on, act) => new FramesMoved { Id = id, On = on, Act = act, Colony = ColonyNamed("8"), To = ColonyNamed("4"), Frames = 2, Of = FramesOf.Brood });
        Put("2026-09-14", (id, on, act) => new Combined { Id = id, On = on, Act = act, Colony = ColonyNamed("7"), Into = ColonyNamed("4"), QueenKept = QueenNamed("24-04") });
        Treat("7", "2026-09-16", "thymol", 1);
        Put("2025-11-01", (id, on, act) => new SpotRetired { Id = id, On = on, Act = act, Spot = new Spot(YardNamed("Alder Bottom"), "12"), Why = "Wet in winter." });
    }

    /// <summary>A yard without a drawing, queens nobody named, a moved colony.</summary>
    private void Quarry()
    {
        Yard("The Old Quarry above Tarrant's Lane", "2025-04-01", "doubles", null);
        for (var i = 31; i <= 34; i++)
        {
            Begin($"{i}", "2025-04-12", HowEstablished.Bought, "The Old Quarry above Tarrant's Lane", $"{i - 30}", Housing.Double, null);
            Look($"{i}", "2025-05-01", 14, 7, i == 31 ? MarkColour.Yellow : null);
            Look($"{i}", "2026-05-02", 18 - (i - 31), 8, null);
            Treat($"{i}", "2025-12-20", "winter oxalic", 1);
        }

        Put("2026-05-20", (id, on, act) => new Moved { Id = id, On = on, Act = act, Colony = ColonyNamed("8"), From = new Spot(YardNamed("Alder Bottom"), "8"), To = new Spot(YardNamed("The Old Quarry above Tarrant's Lane"), "5") });
        Put("2026-07-11", (id, on, act) => new FoundQueenless { Id = id, On = on, Act = act, Colony = ColonyNamed("34") });
        Put("2026-07-12", (id, on, act) => new Noted { Id = id, On = on, Act = act, Colony = ColonyNamed("34"), Text = "Give a cell next week." });
        Put("2026-07-12", (id, on, act) => new Harvested { Id = id, On = on, Act = act, Colony = ColonyNamed("31"), Supers = 2, Honey = new Quantity(31.5m, "kg") });
        Put("2026-09-20", (id, on, act) => new Weighed { Id = id, On = on, Act = act, Colony = ColonyNamed("31"), Gross = new Quantity(38, "kg") });
        Put("2026-09-20", (id, on, act) => new Fed { Id = id, On = on, Act = act, Colony = ColonyNamed("31"), Feed = "syrup 2:1", Amount = new Quantity(6, "L") });
    }

    /// <summary>A yard with spots and no colony.</summary>
    private void Riverside()
    {
        Yard("Riverside", "2026-03-10", null, null);
        for (var spot = 1; spot <= 4; spot++) Mark("Riverside", $"R{spot}", 1, spot);
    }

    /// <summary>A breeder queen with 150 descendants, some with long names, none of them in a colony any more.</summary>
    private void Many()
    {
        Raise("M0", null, "2021-06-01", null);
        for (var i = 1; i <= 150; i++)
        {
            var mother = i <= 30 ? "M0" : $"M{1 + (i % 30)}{(1 + (i % 30) == 7 ? " the long-named one of the east hedge" : "")}";
            Raise($"M{i}{(i == 7 ? " the long-named one of the east hedge" : "")}", mother, i <= 30 ? "2022-05-20" : i <= 100 ? "2023-06-10" : "2023-07-15", null);
        }
    }

    /// <summary>A second round at Alder Bottom with next to nothing in it; at the Quarry many mites in every wash.</summary>
    private void Washes()
    {
        foreach (var (colony, i) in new[] { "31", "32", "33", "34" }.Select((colony, i) => (colony, i))) Wash(colony, "2026-08-25", 28 + (2 * i), 300);
        foreach (var colony in new[] { "1", "2", "4", "6", "N25-1" }) Wash(colony, "2026-09-24", colony == "2" ? 1 : 0, 300);
    }

    private EntryId Put(string day, Func<EntryId, Occurred, ActId, Entry> make, string? recorded = null)
    {
        var number = _next++;
        var id = new EntryId(NamedId.Of(Space, $"entry {number}"));
        var on = DateOnly.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        var entry = make(id, new Occurred(on), new ActId(NamedId.Of(Space, $"act {number}"))) with { Order = number % 1000 };
        var faults = entry.Check();
        if (faults.Count > 0) throw new RefusedException(faults);
        _recorded.Add(new Recorded(entry, new DateTimeOffset(on, new TimeOnly(19, number % 60), TimeSpan.Zero)));
        return id;
    }

    private void Yard(string name, string day, string? runAs, string? access) =>
        Put(day, (id, on, act) => new YardOpened { Id = id, On = on, Act = act, Yard = YardNamed(name), Name = name, RunAs = runAs, Access = access, Landowner = name == "Riverside" ? null : "the parish" });

    private void Mark(string yard, string number, int row, int place) =>
        Put(yard == "Riverside" ? "2026-03-10" : "2024-03-02", (id, on, act) => new SpotMarked { Id = id, On = on, Act = act, Spot = new Spot(YardNamed(yard), number), Row = row, Place = place });

    private void Raise(string name, string? mother, string born, string? batch) =>
        Put(born, (id, on, act) => new QueenRaised { Id = id, On = on, Act = act, Queen = QueenNamed(name), Name = name, Mother = mother is null ? null : QueenNamed(mother), Born = on, From = RaisedFrom.Graft, Batch = batch });

    private void Line(string line, string breeder) =>
        Put("2024-03-01", (id, on, act) => new LineStarted { Id = id, On = on, Act = act, Line = line, Breeder = QueenNamed(breeder) });

    private void MarkQueen(string queen, MarkColour colour, string day) =>
        Put(day, (id, on, act) => new QueenMarked { Id = id, On = on, Act = act, Queen = QueenNamed(queen), Mark = new QueenMark(colour) });

    private void Begin(string number, string day, HowEstablished how, string yard, string spot, Housing housing, string? queen, bool above = false) =>
        Put(day, (id, on, act) => new ColonyEstablished { Id = id, On = on, Act = act, Colony = ColonyNamed(number), Number = number, How = how, At = new Spot(YardNamed(yard), spot), Above = above, Housing = housing, Queen = queen is null ? null : QueenNamed(queen) });

    private void Split(string from, string into, string day, decimal bees, decimal brood) =>
        Put(day, (id, on, act) => new SplitFrom { Id = id, On = on, Act = act, Colony = ColonyNamed(from), Into = ColonyNamed(into), FramesOfBees = bees, FramesOfBrood = brood });

    private void Look(string colony, string day, decimal bees, decimal brood, MarkColour? mark) =>
        Put(day, (id, on, act) => new Inspected
        {
            Id = id, On = on, Act = act, Colony = ColonyNamed(colony), FramesOfBees = bees, FramesOfBrood = brood, EggsSeen = true, BroodPattern = 4, Temper = 4, Heft = Heft.Fair,
            Queen = mark is null ? QueenFinding.Queenright : QueenFinding.Seen, MarkSeen = mark is { } seen ? new QueenMark(seen) : null, By = "Ine",
        });

    private EntryId Treat(string colony, string day, string course, decimal doses, string? by = null) =>
        Put(day, (id, on, act) => new Treated { Id = id, On = on, Act = act, Colony = ColonyNamed(colony), Course = course, Doses = doses, Substance = course == "thymol" ? "thymol" : "oxalic acid", By = by });

    private void Wash(string colony, string day, int mites, int bees) =>
        Put(day, (id, on, act) => new Washed { Id = id, On = on, Act = act, Colony = ColonyNamed(colony), Mites = mites, Bees = bees, BeesEstimated = true, Method = WashMethod.Alcohol });

    private void Void(EntryId entry, string day, string why, Subject of) =>
        Put(day, (id, on, act) => new Voided { Id = id, On = on, Act = act, Entry = entry, Why = why, Of = of, By = "Ine" });
}
