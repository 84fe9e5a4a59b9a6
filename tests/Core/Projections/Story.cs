using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>
/// Tells a history in the words of the trade: facts in, answers out. Entries of one day follow each other in the order in which they
/// are told. Days are written '20 Jul 2026'.
/// </summary>
public sealed class Story
{
    private static readonly Guid Space = new("57012000-0000-8000-8000-000000000000");
    private readonly List<Recorded> _recorded = [];
    private int _told;

    public DateTimeOffset? RecordedAt { get; set; }

    public IReadOnlyList<Recorded> Recorded => _recorded;

    public static DateOnly Day(string day) => DateOnly.ParseExact(day, "d MMM yyyy", CultureInfo.InvariantCulture);

    public static ColonyId Colony(string name) => new(NamedId.Of(Space, "colony " + name));

    public static QueenId Queen(string name) => new(NamedId.Of(Space, "queen " + name));

    public static YardId Yard(string name) => new(NamedId.Of(Space, "yard " + name));

    public static Spot Spot(string spot) => new(Yard(spot.Split(' ')[0]), spot.Split(' ')[1]);

    public EntryId NextId => new(NamedId.Of(Space, $"entry {_told}"));

    /// <summary>Tells one fact; the id, act and order are filled in.</summary>
    public Entry Tell(Func<EntryId, ActId, int, Entry> fact)
    {
        var entry = fact(NextId, new ActId(NamedId.Of(Space, $"act {_told}")), _told);
        _told++;
        Assert.Empty(entry.Check());
        _recorded.Add(new Recorded(entry, RecordedAt ?? new DateTimeOffset(entry.On.Day.ToDateTime(new TimeOnly(18, 0)), TimeSpan.Zero)));
        return entry;
    }

    public Entry Season(int startMonth) => Tell((id, act, order) => new OutfitDescribed { Id = id, Act = act, Order = order, On = Day("1 Jan 2015"), SeasonStartMonth = startMonth });

    public Entry Course(string course, decimal full) => Tell((id, act, order) => new CourseDefined { Id = id, Act = act, Order = order, On = Day("1 Jan 2015"), Course = course, FullDoses = full });

    public Entry OpenYard(string yard) => Tell((id, act, order) => new YardOpened { Id = id, Act = act, Order = order, On = Day("1 Jan 2015"), Yard = Yard(yard), Name = yard });

    public Entry Begins(string colony, string day, string? at = null, string? queen = null, HowEstablished how = HowEstablished.OpeningCount, bool above = false, Housing? housing = null) =>
        Tell((id, act, order) => new ColonyEstablished
        {
            Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(colony), Number = colony, How = how, Above = above, Housing = housing,
            At = at is null ? null : Spot(at), Queen = queen is null ? null : Queen(queen),
        });

    /// <summary>A new colony out of its makers.</summary>
    public void Made(string colony, string day, string[] makers, string? at = null, string? queen = null)
    {
        Begins(colony, day, at, queen, HowEstablished.Nuc, housing: Housing.NucBox);
        foreach (var maker in makers)
            Tell((id, act, order) => new SplitFrom { Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(maker), Into = Colony(colony) });
    }

    public Entry Dose(string colony, string day, decimal doses, string course = "T") =>
        Tell((id, act, order) => new Treated { Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(colony), Course = course, Doses = doses });

    public Entry Combine(string colony, string into, string day) =>
        Tell((id, act, order) => new Combined { Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(colony), Into = Colony(into) });

    public Entry Move(string colony, string to, string day, string? from = null) =>
        Tell((id, act, order) => new Moved { Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(colony), To = Spot(to), From = from is null ? null : Spot(from) });

    public Entry Frames(string from, string to, string day, decimal frames, FramesOf of) =>
        Tell((id, act, order) => new FramesMoved { Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(from), To = Colony(to), Frames = frames, Of = of });

    public Entry Look(string colony, string day, QueenFinding? finding = null, MarkColour? mark = null, decimal? bees = null, bool? eggs = null) =>
        Tell((id, act, order) => new Inspected
        {
            Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(colony), Queen = finding, FramesOfBees = bees, EggsSeen = eggs,
            MarkSeen = mark is { } colour ? new QueenMark(colour) : null,
        });

    public Entry Raise(string queen, string? born, string? mother = null) =>
        Tell((id, act, order) => new QueenRaised
        {
            Id = id, Act = act, Order = order, On = Day(born ?? "1 Jan 2015"), Queen = Queen(queen), Name = queen,
            Born = born is null ? null : (Occurred)Day(born), Mother = mother is null ? null : Queen(mother), From = RaisedFrom.Graft,
        });

    public Entry Requeen(string colony, string queen, string day, OldQueen old = OldQueen.Killed) =>
        Tell((id, act, order) => new Requeened { Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(colony), Queen = Queen(queen), OldQueen = old });

    public Entry Superseded(string colony, string queen, string day) =>
        Tell((id, act, order) => new SupersedureSeen { Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(colony), Queen = Queen(queen) });

    public Entry Kill(string colony, string day) =>
        Tell((id, act, order) => new QueenKilled { Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(colony) });

    public Entry Dead(string colony, string day, string? lastAlive = null) =>
        Tell((id, act, order) => new FoundDead { Id = id, Act = act, Order = order, On = new Occurred(Day(day), lastAlive is null ? null : Day(lastAlive)), Colony = Colony(colony) });

    public Entry GivenUp(string colony, string day, string why) =>
        Tell((id, act, order) => new Ended { Id = id, Act = act, Order = order, On = Day(day), Colony = Colony(colony), Why = why });

    public Entry Void(Entry wrong, string day, string why = "it was another colony") =>
        Tell((id, act, order) => new Voided { Id = id, Act = act, Order = order, On = Day(day), Entry = wrong.Id, Why = why, Of = wrong.Stream, AlsoOf = [.. wrong.AlsoConcerns] });

    public WholeBooks Books(string? asOf = null, string? knownAt = null) =>
        WholeBooks.Of(_recorded, asOf is null ? null : Day(asOf), knownAt is null ? null : new DateTimeOffset(Day(knownAt).ToDateTime(new TimeOnly(23, 59)), TimeSpan.Zero));
}
