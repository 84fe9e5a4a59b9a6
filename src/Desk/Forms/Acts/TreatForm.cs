using ColonyLineage.Rules;

namespace ColonyLineage.Desk.Forms.Acts;

/// <summary>A dose for every colony of a yard but some.</summary>
public sealed class TreatForm : ActForm
{
    public override string Name => "treat-yard";

    public override string Title => "Treat a yard";

    public override string About => "A dose on every colony that stands in the yard that day, but for the spots that you leave out. The label and local law bind. Acids and their vapours burn eyes, skin and lungs: protect yourself as the label says.";

    public override IReadOnlyList<Part> Parts(Bench bench) =>
    [
        new(null, [Blanks.Yard(bench), new("except", "Spots left out") { Hint = "Numbers with commas between them" }]),
        new("Dose of each colony",
        [
            Blanks.Course(bench.Outfit) with { Needed = true, Hint = "By the outfit's name for it" }, Blanks.Number("dose.doses", "Share of a full dose", "1 for a full one, 0.5 for half", true),
            new("dose.substance", "Active substance"), new("dose.product", "Product"), new("dose.lot", "Lot"),
            Blanks.Number("dose.amount", "Amount for one colony"), Blanks.Unit("dose.amount.unit"), Blanks.YesOrNo("dose.supersOn", "Honey supers on"),
        ]),
    ];

    public override object Request(Reading read, Head head) => Of(head, (act, on) => new TreatYard
    {
        Act = act, On = on, Yard = read.Yard("yard"), Except = read.Several("except"),
        Dose = new Dose
        {
            Course = read.Text("dose.course"), Doses = read.Number("dose.doses"), Substance = read.Text("dose.substance"), Product = read.Text("dose.product"), Lot = read.Text("dose.lot"),
            Amount = read.Amount("dose.amount"), SupersOn = read.YesNo("dose.supersOn"),
        },
    });
}
