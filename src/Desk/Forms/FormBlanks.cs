namespace ColonyLineage.Desk.Forms;

/// <summary>The blanks that every form has.</summary>
internal static class FormBlanks
{
    /// <summary>The day it was done, and the day after which it happened where it was found later.</summary>
    public static IReadOnlyList<Blank> When(DateOnly today, DateOnly? asked, string? afterLabel)
    {
        var on = new Blank("on", afterLabel is null ? "Day" : "Day it was found", BlankKind.Day) { Initial = Text.Iso(asked ?? today), Needed = true };
        return afterLabel is null ? [on] : [on, new Blank("after", afterLabel, BlankKind.Day) { Hint = "Where it is known: it happened after that day" }];
    }

    /// <summary>Who, and anything else.</summary>
    public static IReadOnlyList<Blank> Who(string? by = null) => [new("by", "By whom") { Initial = by }, new("note", "Anything else worth keeping", BlankKind.Lines)];
}
