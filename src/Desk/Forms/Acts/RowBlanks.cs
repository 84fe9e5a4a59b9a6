using ColonyLineage.Entries;
using ColonyLineage.Rules;

namespace ColonyLineage.Desk.Forms.Acts;

/// <summary>What one row of a paper page holds, for one colony or for a whole page.</summary>
internal static class RowBlanks
{
    public static IReadOnlyList<Blank> Look(string row) =>
    [
        Blanks.Number(row + "look.framesOfBees", "Frames of bees"), Blanks.Number(row + "look.framesOfBrood", "Frames of brood"),
        Blanks.Number(row + "look.broodPattern", "Brood pattern", "1 spotty to 5 solid"), Blanks.YesOrNo(row + "look.eggsSeen", "Eggs seen"),
        Blanks.Words<QueenFinding>(row + "look.queen", "Queen"), Blanks.Words<MarkColour>(row + "look.markSeen", "Mark seen"),
        Blanks.Number(row + "look.temper", "Temper", "1 hot to 5 gentle"), Blanks.Words<Heft>(row + "look.heft", "Heft"),
        Blanks.Number(row + "look.supersOn", "Supers on"),
        new(row + "look.signs", "Signs", BlankKind.Lines) { Hint = "A suspicion in your own words, one a line; never a diagnosis" },
    ];

    public static IReadOnlyList<Blank> Compact(string row) =>
    [
        Blanks.Number(row + "look.framesOfBees", "Bees"), Blanks.Number(row + "look.framesOfBrood", "Brood"),
        Blanks.Words<QueenFinding>(row + "look.queen", "Queen"), Blanks.Words<MarkColour>(row + "look.markSeen", "Mark seen"),
        Blanks.Words<Heft>(row + "look.heft", "Heft"), Blanks.Number(row + "dose.doses", "Dose"),
        Blanks.Number(row + "wash.mites", "Mites"), Blanks.Number(row + "wash.bees", "of bees"),
        new(row + "feed.feed", "Fed"), new(row + "dead", "Dead", BlankKind.Tick), new(row + "note", "Note"),
    ];

    /// <summary>A row as it was filled in.</summary>
    /// <param name="course">The course of the page, where its rows only say the dose.</param>
    public static PageRow Read(Reading read, string row, string? spot, ColonyId? colony, string? course = null)
    {
        var look = new Look
        {
            FramesOfBees = read.Number(row + "look.framesOfBees"), FramesOfBrood = read.Number(row + "look.framesOfBrood"), BroodPattern = read.Whole(row + "look.broodPattern"),
            EggsSeen = read.YesNo(row + "look.eggsSeen"), Queen = read.Word<QueenFinding>(row + "look.queen"), MarkSeen = read.Mark(row + "look.markSeen"),
            Temper = read.Whole(row + "look.temper"), Heft = read.Word<Heft>(row + "look.heft"), SupersOn = read.Whole(row + "look.supersOn"),
            Signs = read.Text(row + "look.signs") is { } signs ? signs.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) : null,
        };
        var wash = new WashCount
        {
            Mites = read.Whole(row + "wash.mites"), Bees = read.Whole(row + "wash.bees"), BeesEstimated = read.Ticked(row + "wash.beesEstimated"), Method = read.Word<WashMethod>(row + "wash.method"),
        };
        var doses = read.Number(row + "dose.doses");
        var own = read.Text(row + "dose.course");
        return new PageRow
        {
            Spot = spot, Colony = colony, Look = look, Wash = wash, Dead = read.Ticked(row + "dead"), Cause = read.Text(row + "cause"),
            Dose = doses is null && own is null ? null : new Dose { Course = own ?? course, Doses = doses },
            Feed = new Feeding { Feed = read.Text(row + "feed.feed"), Amount = read.Amount(row + "feed.amount") },
            SupersPutOn = read.Whole(row + "supersPutOn"), Note = read.Text(row + "note"),
        };
    }
}
