using ColonyLineage.Entries;
using ColonyLineage.Rules;

namespace ColonyLineage.Desk.Forms.Acts;

/// <summary>Queens are given to colonies of one yard.</summary>
public sealed class RequeenForm : ActForm
{
    public override string Name => "requeen";

    public override string Title => "Requeen";

    public override string About => "Give queens to colonies of a yard, each with what became of the queen before her.";

    public override IReadOnlyList<Part> Parts(Bench bench) =>
    [
        new(null, [Blanks.Yard(bench)]),
        Part.Table("Colonies and their new queens", "rows", bench.Filled.Lines("rows", 4), i =>
        [
            new($"rows[{i}].spot", "Spot") { Initial = i == 0 && bench.Colony is null ? bench.Spot : null },
            Blanks.Colony(bench, $"rows[{i}].colony", "or colony", i == 0 ? bench.ColonyWritten : null),
            new($"rows[{i}].name", "New queen"), Blanks.Words<MarkColour>($"rows[{i}].mark", "Mark put on her"), Blanks.Words<OldQueen>($"rows[{i}].oldQueen", "Old queen", true),
        ]) with { Hint = "A queen whom the books know is named as they have her; any other name is a new queen. Leave the name empty for a queen without one." },
        new("Where the new queens were raised", [new("raised.mother", "Mother"), Blanks.Words<RaisedFrom>("raised.from", "Raised from"), new("raised.born", "Emerged", BlankKind.Day), new("raised.grafted", "Grafted", BlankKind.Day), new("raised.batch", "Batch")]) { Folded = true },
        new("Or where they were bought", [new("bought.seller", "Seller"), new("bought.mother", "Mother"), new("bought.born", "Emerged", BlankKind.Day)]) { Folded = true },
    ];

    public override object Request(Reading read, Head head)
    {
        var bought = new[] { "seller", "mother", "born" }.Any(field => read.Filled["bought." + field] is not null);
        var raised = new[] { "mother", "from", "born", "grafted", "batch" }.Any(field => read.Filled["raised." + field] is not null);
        return Of(head, (act, on) => new RequeenYard
        {
            Act = act, On = on, Yard = read.Yard("yard"),
            Raised = raised ? new RaisedBatch { Mother = read.Queen("raised.mother"), From = read.Word<RaisedFrom>("raised.from") ?? RaisedFrom.Unknown, Born = read.Day("raised.born"), Grafted = read.Day("raised.grafted"), Batch = read.Text("raised.batch") } : null,
            Bought = bought ? new BoughtBatch { Seller = read.Text("bought.seller"), Mother = read.Queen("bought.mother"), Born = read.Day("bought.born") } : null,
            Rows = read.Lines("rows", ["spot", "colony", "name", "mark", "oldQueen"], at => Row(read, at)),
        });
    }

    private static RequeenRow Row(Reading read, string at)
    {
        var old = read.Word<OldQueen>(at + "oldQueen");
        if (read.Filled[at + "oldQueen"] is null) read.Refuse(Refusals.Missing, at + "oldQueen", "Say what became of the queen before her, or that there was none.");
        return new RequeenRow
        {
            Spot = read.Text(at + "spot"), Colony = read.MaybeColony(at + "colony"), Queen = read.QueenIfKnown(at + "name"), Name = read.Text(at + "name"),
            Mark = read.Mark(at + "mark"), OldQueen = old ?? OldQueen.NotFound,
        };
    }
}
