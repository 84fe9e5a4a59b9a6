using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Rules;

namespace ColonyLineage.Desk.Forms.Acts;

/// <summary>A colony is made of others.</summary>
public sealed class SplitForm : ActForm
{
    public override string Name => "split";

    public override string Title => "Split";

    public override string About => "Make a colony or a nuc out of bees and brood of one or more others.";

    public override IReadOnlyList<Part> Parts(Bench bench) =>
    [
        Part.Table("Made of", "makers", bench.Filled.Lines("makers", 3), i =>
        [
            Blanks.Colony(bench, $"makers[{i}].colony", "Colony", i == 0 ? bench.ColonyWritten : null),
            Blanks.Number($"makers[{i}].framesOfBees", "Frames of bees"), Blanks.Number($"makers[{i}].framesOfBrood", "Frames of brood"),
        ]),
        new("The new colony",
        [
            new("number", "Number") { Needed = true }, new("isNuc", "It is a nuc", BlankKind.Tick), Blanks.Words<Housing>("housing", "Housed in"),
            Blanks.Yard(bench, "at.yard") with { Needed = false }, new("at.number", "Spot") { Initial = bench.Colony is null ? bench.Spot : null },
            new("above", "Above another colony, over a screen board", BlankKind.Tick), new("queen", "Queen that goes with it") { Hint = "Where the books know her" },
        ]),
        new("A queen cell was given", [new("cellGiven", "It was given a cell", BlankKind.Tick), new("cell.batch", "Batch of cells"), new("cell.mother", "Mother of the queen in it"), new("cell.grafted", "Grafted", BlankKind.Day)]) { Folded = true },
    ];

    public override object Request(Reading read, Head head) => Of(head, (act, on) => new Split
    {
        Act = act, On = on, Number = read.Text("number") ?? "", IsNuc = read.Ticked("isNuc"), At = read.MaybeSpotByNumber("at"), Above = read.Ticked("above"), Housing = read.Word<Housing>("housing"), Queen = read.Queen("queen"),
        Makers = read.Lines("makers", ["colony", "framesOfBees", "framesOfBrood"], at => new Maker { Colony = read.Colony(at + "colony"), FramesOfBees = read.Number(at + "framesOfBees"), FramesOfBrood = read.Number(at + "framesOfBrood") }),
        Cell = read.Ticked("cellGiven") || read.Filled["cell.batch"] is not null || read.Filled["cell.mother"] is not null || read.Filled["cell.grafted"] is not null
            ? new Cell { Batch = read.Text("cell.batch"), Mother = read.Queen("cell.mother"), Grafted = read.Day("cell.grafted") }
            : null,
    });
}
