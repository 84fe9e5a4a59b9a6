using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Rules;

namespace ColonyLineage.Desk.Forms.Acts;

/// <summary>Two colonies are made one.</summary>
public sealed class CombineForm : ActForm
{
    public override string Name => "combine";

    public override string Title => "Combine";

    public override string About => "One colony ends in another, and one queen goes on.";

    public override IReadOnlyList<Part> Parts(Bench bench) =>
    [
        new(null,
        [
            Blanks.Colony(bench, "colony", "Colony that ends", bench.ColonyWritten, true), Blanks.Colony(bench, "into", "Colony that goes on", needed: true),
            new("killed", "Queen killed first", BlankKind.Choice)
            {
                Needed = true, Choices = [new(nameof(KilledQueen.None), "none"), new(nameof(KilledQueen.OfTheOneThatEnds), "of the colony that ends"), new(nameof(KilledQueen.OfTheOneThatGoesOn), "of the colony that goes on")],
            },
            new("queenKept", "Queen that goes on") { Hint = "Only where the books have it otherwise" },
        ]),
    ];

    public override object Request(Reading read, Head head)
    {
        var killed = read.Word<KilledQueen>("killed");
        if (read.Filled["killed"] is null) read.Refuse(Refusals.Missing, "killed", "Say which queen was killed first, or that none was.");
        return Of(head, (act, on) => new Combine { Act = act, On = on, Colony = read.Colony("colony"), Into = read.Colony("into"), Killed = killed ?? KilledQueen.None, QueenKept = read.Queen("queenKept") });
    }
}

/// <summary>A dud gives way to a nuc.</summary>
public sealed class FixSpotForm : ActForm
{
    public override string Name => "fix-spot";

    public override string Title => "Fix a spot with a nuc";

    public override string About => "Set a nuc on a spot; a dud that still stands there is given up or combined away first.";

    public override IReadOnlyList<Part> Parts(Bench bench) =>
    [
        new(null, [Blanks.Yard(bench, "spot.yard"), new("spot.number", "Spot") { Needed = true, Initial = bench.Spot ?? bench.Colony?.Spot }, Blanks.Colony(bench, "nuc", "Nuc", needed: true)]),
        new("The dud, where one still stands there",
        [
            Blanks.Colony(bench, "dud", "Dud") with { Hint = "Only where it is not the one that the books have there" }, new("why", "Why it is a dud") { Hint = "Needed where it is given up" },
            new("killQueen", "Its queen was killed", BlankKind.Tick), Blanks.Colony(bench, "combineInto", "Combined into colony") with { Hint = "Else it is given up and ends" },
        ]),
        Blanks.Frames(bench),
    ];

    public override object Request(Reading read, Head head) => Of(head, (act, on) => new FixSpotWithNuc
    {
        Act = act, On = on, Spot = read.Spot("spot"), Nuc = read.Colony("nuc"), Dud = read.MaybeColony("dud"), KillQueen = read.Ticked("killQueen"),
        Why = read.Text("why"), CombineInto = read.MaybeColony("combineInto"), Frames = read.Frames(),
    });
}

/// <summary>Nucs go into full boxes.</summary>
public sealed class TransferForm : ActForm
{
    public override string Name => "transfer";

    public override string Title => "Transfer nucs";

    public override string About => "Nucs leave their nuc boxes for full ones. Each stays the same colony on the same spot.";

    public override IReadOnlyList<Part> Parts(Bench bench)
    {
        var boxed = bench.Namer.Register.Where(row => row is { Kind: SubjectKind.Colony, Ended: null, Housing: Housing.NucBox or Housing.MatingNuc } && (bench.Yard is null || row.YardId?.Value == bench.Yard.Id))
            .OrderBy(row => row.Yard, ByNumber.Order).ThenBy(row => row.Spot, ByNumber.Order).Take(300).ToList();
        var here = bench.Colony is { } colony && boxed.Any(row => row.Id == colony.Id);
        return
        [
            new(null,
            [
                .. boxed.Count == 0 ? Array.Empty<Blank>() : [new("nucs", "In nuc boxes by the books", BlankKind.Ticks) { Initial = here ? bench.Colony!.Id.ToString() : null, Choices = [.. boxed.Select(row => new Choice(row.Id.ToString(), $"{row.Name} ({row.Yard} {row.Spot})"))] }],
                new("others", "Others") { Hint = "Numbers with commas between them", Initial = here ? null : bench.ColonyWritten },
                Blanks.Words<Housing>("into", "Housed in now", true, Housing.Single),
            ]),
        ];
    }

    public override object Request(Reading read, Head head) => Of(head, (act, on) => new TransferNucs
    {
        Act = act, On = on, Into = read.Word<Housing>("into") ?? Housing.Single,
        Nucs = [.. read.Filled.All("nucs").Select(text => Guid.TryParse(text, out var id) ? new ColonyId(id) : default), .. read.Colonies("others")],
    });
}

/// <summary>Colonies change their spots.</summary>
public sealed class MoveForm : ActForm
{
    public override string Name => "move";

    public override string Title => "Move colonies";

    public override string About => "One by one, or every colony of a yard to the spots of the same number in another.";

    public override IReadOnlyList<Part> Parts(Bench bench) =>
    [
        Part.Table("One by one", "moves", bench.Filled.Lines("moves", 3), i =>
        [
            Blanks.Colony(bench, $"moves[{i}].colony", "Colony", i == 0 ? bench.ColonyWritten : null), Blanks.Yard(bench, $"moves[{i}].to.yard", "To yard") with { Needed = false, Initial = null },
            new($"moves[{i}].to.number", "To spot"), new($"moves[{i}].above", "Above another", BlankKind.Tick),
        ]),
        new("A whole yard", [Blanks.Yard(bench, "wholeYard.from", "From yard") with { Needed = false, Initial = null }, Blanks.Yard(bench, "wholeYard.to", "To yard") with { Needed = false, Initial = null }]) { Folded = true },
    ];

    public override object Request(Reading read, Head head) => Of(head, (act, on) => new MoveColonies
    {
        Act = act, On = on,
        Moves = read.Lines("moves", ["colony", "to.yard", "to.number"], at => new ColonyMove { Colony = read.Colony(at + "colony"), To = read.Spot(at + "to"), Above = read.Ticked(at + "above") }),
        WholeYard = read.Filled["wholeYard.from"] is null && read.Filled["wholeYard.to"] is null ? null : new YardMove(read.Yard("wholeYard.from"), read.Yard("wholeYard.to")),
    });
}

/// <summary>The bees replaced their queen.</summary>
public sealed class SupersedureForm : ActForm
{
    public override string Name => "supersedure";

    public override string Title => "Supersedure found";

    public override string About => "The bees have replaced their queen; it is found only now.";

    public override string AfterLabel => "Old queen last seen";

    public override IReadOnlyList<Part> Parts(Bench bench) =>
    [
        new(null, [Blanks.Colony(bench, "colony", "Colony", bench.ColonyWritten, true), new("old", "Old queen") { Hint = "Only where she is not the one the books have there" }, new("oldStillThere", "The old one is still there too", BlankKind.Tick)]),
        new("Seen", [Blanks.Words<QueenFinding>("look.queen", "Queen"), Blanks.Words<MarkColour>("look.markSeen", "Mark seen"), Blanks.YesOrNo("look.eggsSeen", "Eggs seen"), Blanks.Words<MarkColour>("mark", "Mark put on her now")]),
    ];

    public override object Request(Reading read, Head head) => Of(head, (act, on) => new SupersedureFound
    {
        Act = act, On = on, Colony = read.Colony("colony"), Old = read.Queen("old"), OldStillThere = read.Ticked("oldStillThere"), Mark = read.Mark("mark"),
        Look = new Look { Queen = read.Word<QueenFinding>("look.queen"), MarkSeen = read.Mark("look.markSeen"), EggsSeen = read.YesNo("look.eggsSeen") },
    });
}

/// <summary>A colony is found dead.</summary>
public sealed class DeadForm : ActForm
{
    public override string Name => "dead-out";

    public override string Title => "Dead-out";

    public override string About => "A colony is found dead. The cause is a supposition, never a diagnosis.";

    public override string AfterLabel => "Last seen alive";

    public override IReadOnlyList<Part> Parts(Bench bench) => [new(null, [Blanks.Colony(bench, "colony", "Colony", bench.ColonyWritten, true), new("cause", "Supposed cause")])];

    public override object Request(Reading read, Head head) => new RecordOne(new FoundDead
    {
        Id = OneEntry.IdOf(head), On = head.On, Act = head.Act, Order = head.FirstOrder, By = head.By, Note = head.Note, Colony = read.Colony("colony"), Cause = read.Text("cause"),
    });
}

/// <summary>A colony is given up.</summary>
public sealed class KillForm : ActForm
{
    public override string Name => "share-out";

    public override string Title => "Kill and share out";

    public override string About => "Give a colony up: its queen is killed, its frames go to others, and it ends.";

    public override IReadOnlyList<Part> Parts(Bench bench) =>
    [
        new(null, [Blanks.Colony(bench, "colony", "Colony", bench.ColonyWritten, true), new("why", "Why") { Needed = true }, new("killQueen", "Its queen was found and killed", BlankKind.Tick)]),
        Blanks.Frames(bench),
    ];

    public override object Request(Reading read, Head head) => Of(head, (act, on) => new KillAndShareOut
    {
        Act = act, On = on, Colony = read.Colony("colony"), Why = read.Text("why") ?? "", KillQueen = read.Ticked("killQueen"), Frames = read.Frames(),
    });
}

/// <summary>Something worth keeping.</summary>
public sealed class NoteForm : ActForm
{
    public override string Name => "note";

    public override string Title => "Note";

    public override string About => "Anything about a colony that has no form of its own.";

    public override IReadOnlyList<Part> Parts(Bench bench) =>
        [new(null, [Blanks.Colony(bench, "colony", "Colony", bench.ColonyWritten, true), new("about", "What it is about"), new("text", "Text", BlankKind.Lines) { Needed = true }])];

    public override object Request(Reading read, Head head) => new RecordOne(new Noted
    {
        Id = OneEntry.IdOf(head), On = head.On, Act = head.Act, Order = head.FirstOrder, By = head.By, Note = head.Note, Colony = read.Colony("colony"), Text = read.Text("text") ?? "", About = read.Text("about"),
    });
}

/// <summary>What the forms of more than one kind read.</summary>
internal static class OneEntry
{
    /// <summary>The id of the only entry of an act: the same form sent twice gives the same entry.</summary>
    public static EntryId IdOf(Head head) => new(NamedId.Of(head.Act.Value, "one"));

    public static IReadOnlyList<FrameShare> Frames(this Reading read) => read.Lines("frames", ["to", "frames", "of"], at =>
    {
        var of = read.Word<FramesOf>(at + "of");
        if (read.Filled[at + "of"] is null) read.Refuse(Refusals.Missing, at + "of", "Say what was on the frames.");
        if (read.Filled[at + "frames"] is null) read.Refuse(Refusals.Missing, at + "frames", "Say how many frames.");
        return new FrameShare { To = read.Colony(at + "to"), Frames = read.Number(at + "frames") ?? 0, Of = of ?? FramesOf.Brood };
    });
}
