using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Desk.Tests;

/// <summary>
/// An outfit made so that lines differ, and so that some may not be compared. In East and West stand Sloe (with 12 kg more honey), Brindle and Ember (twice as many colonies) of four mothers
/// each, and Rowan of one; Quill stands in Far alone; two colonies have queens of no line. Each colony was looked at, harvested and washed in 2025 and 2026.
/// </summary>
internal sealed class LinesOutfit
{
    public static readonly DateOnly Today = new(2026, 10, 1);
    private static readonly Guid Space = new("5b3c0000-0000-8000-8000-000000000002");
    private readonly List<Recorded> _recorded = [];

    public static IReadOnlyList<Recorded> Make()
    {
        var outfit = new LinesOutfit();
        foreach (var yard in new[] { "East", "West", "Far" }) outfit.Put(new YardOpened { Id = outfit.New(), On = new DateOnly(2023, 3, 1), Act = outfit.Act(), Yard = Yard(yard), Name = yard });
        outfit.Line("Sloe", 4, 4, 12, ["East", "West"]);
        outfit.Line("Brindle", 4, 4, 0, ["East", "West"]);
        outfit.Line("Ember", 4, 8, 0, ["East", "West"]);
        outfit.Line("Rowan", 1, 4, 30, ["East", "West"]);
        outfit.Line("Quill", 3, 2, 5, ["Far"]);
        outfit.Colonies("none", null, 2, 0, ["East", "West"]);
        return outfit._recorded;
    }

    public static ColonyId Colony(string number) => new(NamedId.Of(Space, "colony " + number));

    private static YardId Yard(string name) => new(NamedId.Of(Space, "yard " + name));

    private static QueenId Queen(string name) => new(NamedId.Of(Space, "queen " + name));

    private void Line(string line, int mothers, int colonies, decimal honey, string[] yards)
    {
        Raise($"{line} 0", null, new DateOnly(2022, 6, 1));
        Put(new LineStarted { Id = New(), On = new DateOnly(2023, 3, 1), Act = Act(), Line = line, Breeder = Queen($"{line} 0") });
        for (var mother = 1; mother <= mothers; mother++)
        {
            Raise($"{line} {mother}", $"{line} 0", new DateOnly(2023, 6, 1));
            Colonies($"{line} {mother}", $"{line} {mother}", colonies, honey + (mother % 2), yards);
        }
    }

    private void Colonies(string name, string? mother, int colonies, decimal honey, string[] yards)
    {
        for (var i = 0; i < colonies; i++)
        {
            var number = $"{name}-{i + 1}";
            var (colony, spread) = (Colony(number), (((i * 7) + name.Length + (mother?[^1] ?? 0)) % 5) - 2);
            Raise(number, mother, new DateOnly(2024, 5, 20));
            Put(new ColonyEstablished { Id = New(), On = new DateOnly(2024, 6, 15), Act = Act(), Colony = colony, Number = number, How = HowEstablished.Nuc, At = new Spot(Yard(yards[i % yards.Length]), number), Queen = Queen(number) });
            foreach (var year in new[] { 2025, 2026 })
            {
                Put(new Inspected { Id = New(), On = new DateOnly(year, 5, 10), Act = Act(), Colony = colony, FramesOfBees = 12 + spread, Temper = 3 + (spread % 2), BroodPattern = 4 });
                Put(new Harvested { Id = New(), On = new DateOnly(year, 7, 20), Act = Act(), Colony = colony, Honey = new Quantity(20 + honey + (2 * spread) + (year % 2), "kg") });
                Put(new Washed { Id = New(), On = new DateOnly(year, 8, 10), Act = Act(), Colony = colony, Mites = 6 + (2 * spread), Bees = 300, Method = WashMethod.Alcohol });
            }
        }
    }

    private void Raise(string name, string? mother, DateOnly born) =>
        Put(new QueenRaised { Id = New(), On = born, Act = Act(), Queen = Queen(name), Name = name, Mother = mother is null ? null : Queen(mother), Born = born, From = RaisedFrom.Graft });

    private EntryId New() => new(NamedId.Of(Space, $"entry {_recorded.Count}"));

    private ActId Act() => new(NamedId.Of(Space, $"act {_recorded.Count}"));

    private void Put(Entry entry)
    {
        var faults = entry.Check();
        if (faults.Count > 0) throw new RefusedException(faults);
        _recorded.Add(new Recorded(entry with { Order = _recorded.Count % 1000 }, new DateTimeOffset(entry.On.Day, TimeOnly.MinValue, TimeSpan.Zero)));
    }
}
