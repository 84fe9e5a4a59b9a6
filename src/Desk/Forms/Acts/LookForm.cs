using ColonyLineage.Entries;
using ColonyLineage.Rules;

namespace ColonyLineage.Desk.Forms.Acts;

/// <summary>One colony: what was seen, a wash, a feed, a dose, supers.</summary>
public sealed class LookForm : ActForm
{
    private const string Row = "rows[0].";

    public override string Name => "look";

    public override string Title => "Look into a colony";

    public override string About => "What was seen, washed, fed or given at one colony. Leave empty what was not done.";

    public override IReadOnlyList<Part> Parts(Bench bench) =>
    [
        new(null, [Blanks.Yard(bench), Blanks.Colony(bench, Row + "colony", "Colony", bench.ColonyWritten, true)]),
        new("Seen", RowBlanks.Look(Row)),
        new("Wash", [Blanks.Number(Row + "wash.mites", "Mites counted"), Blanks.Number(Row + "wash.bees", "Bees in the sample"), new(Row + "wash.beesEstimated", "Bees by volume, not counted", BlankKind.Tick), Blanks.Words<WashMethod>(Row + "wash.method", "Method")]),
        new("Fed", [new(Row + "feed.feed", "What"), Blanks.Number(Row + "feed.amount", "Amount"), Blanks.Unit(Row + "feed.amount.unit")]),
        new("Dose", [Blanks.Course(bench.Outfit, Row + "dose.course"), Blanks.Number(Row + "dose.doses", "Share of a full dose", "1 for a full one, 0.5 for half")]),
        new("Done besides", [Blanks.Number(Row + "supersPutOn", "Supers put on")]),
    ];

    public override object Request(Reading read, Head head) =>
        Of(head, (act, on) => new VisitPage { Act = act, On = on, Yard = read.Yard("yard"), Rows = [RowBlanks.Read(read, Row, null, read.Colony(Row + "colony"))] });
}
