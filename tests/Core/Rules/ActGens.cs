using ColonyLineage.Entries;
using ColonyLineage.Rules;
using CsCheck;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

/// <summary>Requests of every kind over the small books, sound ones and broken ones.</summary>
internal static class ActGens
{
    private static readonly Gen<ColonyId> Colonies = Gen.OneOf("12", "40", "13", "A1", "N3", "Z", "12", "40", "unheard").Select(Colony);
    private static readonly Gen<ColonyId?> MaybeColonies = Gen.Nullable(Colonies);
    private static readonly Gen<QueenId?> Queens = Gen.Nullable(Gen.OneOf("Q12", "Q40", "QN", "B", "fresh 1", "fresh 2").Select(Queen));
    private static readonly Gen<YardId> Yards = Gen.OneOf("M", "M", "K", "P", "nowhere").Select(Yard);
    private static readonly Gen<string> Numbers = Gen.OneOf("4", "7", "10", "3", "99", "");
    private static readonly Gen<Spot> Spots = Gen.Select(Yards, Numbers, (yard, number) => new Spot(yard, number));
    private static readonly Gen<decimal> Frames = Gen.OneOf(0m, 0.5m, 3m, 40m, 61m);
    private static readonly Gen<string> Texts = Gen.OneOf("", "a dud", "a dud", new string('x', 300));
    private static readonly Gen<string?> MaybeTexts = Gen.Null(Texts)!;

    private static readonly Gen<FrameShare[]> Shares =
        Gen.Select(Colonies, Frames, Gen.Enum<FramesOf>(), (to, frames, of) => new FrameShare { To = to, Frames = frames, Of = of }).Array[0, 3];

    private static readonly Gen<Dose> Doses =
        Gen.Select(Texts, Gen.Nullable(Gen.OneOf(0.5m, 1m, 1m, 9m)), (course, doses) => new Dose { Course = course, Doses = doses });

    private static readonly Gen<PageRow> Rows = Gen.Select(
        Gen.Select(Gen.OneOf("4", "7", "10", "4", "7", "10", "99"), Gen.Nullable(Colonies, 0.8)), Gen.Null(Gen.Int[0, 5].Select(temper => new Look { Temper = temper })), Gen.Null(Doses, 0.7), Gen.Null(Texts, 0.7)!,
        Gen.Null(Gen.Select(Gen.Nullable(Gen.Int[0, 9], 0.1), Gen.Nullable(Gen.Int[0, 300], 0.1), (mites, bees) => new WashCount { Mites = mites, Bees = bees })), Gen.Bool,
        (on, look, dose, note, wash, dead) => new PageRow { Spot = on.Item1, Colony = on.Item2, Look = look, Dose = dose, Note = note, Wash = wash, Dead = dead, SupersPutOn = dead ? null : 2 });

    private static readonly Gen<ActRequest> Heads = Gen.Select(
        Gen.Int[1, 1000], Gen.OneOf("2026-09-01", "2026-09-01", "2026-09-01", "2026-09-11", "2026-09-12", "1899-12-31"), Gen.OneOf(0, 0, 0, 7, 999_998, int.MaxValue, -1), MaybeTexts,
        (act, day, order, note) => (ActRequest)new TransferNucs { Act = Act($"{act}"), On = Day(day), FirstOrder = order, Note = note, Nucs = [] });

    private static readonly Dictionary<string, Gen<ActRequest>> All = new()
    {
        [nameof(Combine)] = Gen.Select(Heads, Colonies, Colonies, Queens, Gen.Enum<KilledQueen>(), (head, one, other, kept, killed) =>
            (ActRequest)new Combine { Act = head.Act, On = head.On, Colony = one, Into = other, QueenKept = kept, Killed = killed }.Like(head)),
        [nameof(Split)] = Gen.Select(Heads, Gen.Select(Colonies, Frames).Array[0, 3], Queens, Spots, Gen.Bool, (head, makers, queen, spot, cell) => (ActRequest)new Split
        {
            Act = head.Act, On = head.On, Makers = [.. makers.Select(maker => new Maker { Colony = maker.Item1, FramesOfBees = maker.Item2 })], Number = "N",
            At = spot, Queen = queen, Cell = cell ? new Cell { Mother = queen } : null,
        }.Like(head)),
        [nameof(FixSpotWithNuc)] = Gen.Select(Heads, Spots, Gen.Select(Colonies, MaybeColonies), Gen.Bool, Shares, MaybeTexts, MaybeColonies, (head, spot, nuc, kill, shares, why, into) => (ActRequest)new FixSpotWithNuc
        {
            Act = head.Act, On = head.On, Spot = spot, Nuc = nuc.Item1, Dud = nuc.Item2, KillQueen = kill, Frames = shares, Why = why, CombineInto = into,
        }.Like(head)),
        [nameof(KillAndShareOut)] = Gen.Select(Heads, Colonies, Gen.Bool, Shares, Texts, (head, colony, kill, shares, why) =>
            (ActRequest)new KillAndShareOut { Act = head.Act, On = head.On, Colony = colony, KillQueen = kill, Frames = shares, Why = why }.Like(head)),
        [nameof(TransferNucs)] = Gen.Select(Heads, Colonies.Array[0, 3], (head, nucs) => (ActRequest)new TransferNucs { Act = head.Act, On = head.On, Nucs = nucs }.Like(head)),
        [nameof(MoveColonies)] = Gen.Select(Heads, Gen.Select(Colonies, Spots).Array[0, 3], Gen.Bool, Yards, Yards, (head, moves, whole, from, to) => (ActRequest)new MoveColonies
        {
            Act = head.Act, On = head.On, Moves = [.. moves.Select(move => new ColonyMove { Colony = move.Item1, To = move.Item2 })], WholeYard = whole ? new YardMove(from, to) : null,
        }.Like(head)),
        [nameof(RequeenYard)] = Gen.Select(Heads, Yards, Gen.Select(Numbers, Queens, Gen.Enum<OldQueen>()).Array[0, 3], Gen.Bool, Gen.Bool, Queens, (head, yard, rows, raised, bought, mother) => (ActRequest)new RequeenYard
        {
            Act = head.Act, On = head.On, Yard = yard, Rows = [.. rows.Select(row => new RequeenRow { Spot = row.Item1, Queen = row.Item2, OldQueen = row.Item3, Mark = new QueenMark(MarkColour.White) })],
            Raised = raised ? new RaisedBatch { Mother = mother } : null, Bought = bought ? new BoughtBatch { Mother = mother } : null,
        }.Like(head)),
        [nameof(TreatYard)] = Gen.Select(Heads, Yards, Numbers.Array[0, 2], Doses, (head, yard, except, dose) =>
            (ActRequest)new TreatYard { Act = head.Act, On = head.On, Yard = yard, Except = except, Dose = dose }.Like(head)),
        [nameof(VisitPage)] = Gen.Select(Heads, Yards, Rows.Array[0, 4], (head, yard, rows) => (ActRequest)new VisitPage { Act = head.Act, On = head.On, Yard = yard, Rows = rows }.Like(head)),
        [nameof(SupersedureFound)] = Gen.Select(Heads, Colonies, Queens, Queens, Gen.Int[1, 6], (head, colony, queen, old, temper) => (ActRequest)new SupersedureFound
        {
            Act = head.Act, On = head.On, Colony = colony, Queen = queen, Old = old, Look = new Look { Temper = temper }, Mark = new QueenMark(MarkColour.White),
        }.Like(head)),
        [nameof(VoidEntries)] = Gen.Select(Heads, Gen.OneOf("dose", "joined", "dose", "joined", "void", "unheard").Array[0, 3], Texts, (head, ids, why) =>
            (ActRequest)new VoidEntries { Act = head.Act, On = head.On, Entries = [.. ids.Select(Entry)], Why = why }.Like(head)),
    };

    public static IEnumerable<string> Acts => All.Keys;

    public static Gen<ActRequest> Of(string act) => All[act];

    public static Outcome Decide(ActRequest request, IStanding standing, Now now) => request switch
    {
        Combine combine => Combine.Decide(combine, standing, now),
        Split split => Split.Decide(split, standing, now),
        FixSpotWithNuc fix => FixSpotWithNuc.Decide(fix, standing, now),
        KillAndShareOut share => KillAndShareOut.Decide(share, standing, now),
        TransferNucs transfer => TransferNucs.Decide(transfer, standing, now),
        MoveColonies move => MoveColonies.Decide(move, standing, now),
        RequeenYard requeen => RequeenYard.Decide(requeen, standing, now),
        TreatYard treat => TreatYard.Decide(treat, standing, now),
        VisitPage page => VisitPage.Decide(page, standing, now),
        SupersedureFound found => SupersedureFound.Decide(found, standing, now),
        VoidEntries voids => VoidEntries.Decide(voids, standing, now),
        _ => throw new ArgumentException($"No act {request.GetType().Name} here.", nameof(request)),
    };

    private static ActRequest Like(this ActRequest request, ActRequest head) => request with { FirstOrder = head.FirstOrder, Note = head.Note };
}
