using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Tests;

/// <summary>Entries for tests, with ids made from small numbers.</summary>
internal static class Sample
{
    public static readonly DateOnly Day = new(2026, 7, 20);

    private static int _made;

    public static Guid Id(string what) => NamedId.Of(Guid.Empty, what);

    public static EntryId NewEntry() => new(Id($"entry {Interlocked.Increment(ref _made)}"));

    public static ActId NewAct() => new(Id($"act {Interlocked.Increment(ref _made)}"));

    public static ColonyId Colony(int number) => new(Id($"colony {number}"));

    public static QueenId Queen(int number) => new(Id($"queen {number}"));

    public static YardId Yard(int number) => new(Id($"yard {number}"));

    public static YardOpened OpenYard(int yard, string? name = null) =>
        new() { Id = NewEntry(), Act = NewAct(), On = Day.AddDays(-100), Yard = Yard(yard), Name = name ?? $"Yard {yard}" };

    public static ColonyEstablished Establish(int colony, int yard = 1, string? spot = null, int? queen = null, int day = -90) => new()
    {
        Id = NewEntry(), Act = NewAct(), On = Day.AddDays(day), Colony = Colony(colony), Number = $"{colony}", How = HowEstablished.OpeningCount,
        At = new Spot(Yard(yard), spot ?? $"{colony}"), Queen = queen is { } q ? Queen(q) : null,
    };

    public static Treated Treat(int colony, decimal doses = 1, int day = 0, ActId? act = null) =>
        new() { Id = NewEntry(), Act = act ?? NewAct(), On = Day.AddDays(day), Colony = Colony(colony), Course = "T", Doses = doses };

    public static CourseDefined Course(decimal full = 2) => new() { Id = NewEntry(), Act = NewAct(), On = Day.AddDays(-200), Course = "T", FullDoses = full };

    public static Voided Void(Entry entry, string why = "It was another colony.") => new()
    {
        Id = NewEntry(), Act = NewAct(), On = Day.AddDays(30), Entry = entry.Id, Why = why, Of = entry.Stream, AlsoOf = [.. entry.AlsoConcerns],
    };
}
