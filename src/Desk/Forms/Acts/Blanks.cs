using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Desk.Forms.Acts;

/// <summary>Blanks that several forms have.</summary>
internal static class Blanks
{
    /// <summary>More suggestions than this only slow a page down; a number is typed faster.</summary>
    private const int MostSuggested = 120;

    public static readonly IReadOnlyList<Choice> YesNo = [new("yes", "yes"), new("no", "no")];

    public static Blank Colony(Bench bench, string name, string label, string? initial = null, bool needed = false) => new(name, label)
    {
        Initial = initial, Needed = needed, Hint = null, Choices = Suggested(bench),
    };

    public static Blank Yard(Bench bench, string name = "yard", string label = "Yard", string? initial = null) => new(name, label, BlankKind.Choice)
    {
        Needed = true, Initial = initial ?? bench.YardId,
        Choices = [.. bench.Namer.Register.Where(row => row.Kind == SubjectKind.Yard && row.Ended is null).OrderBy(row => row.Name, ByNumber.Order).Select(row => new Choice(row.Id.ToString(), row.Name))],
    };

    public static Blank Number(string name, string label, string? hint = null, bool needed = false) => new(name, label, BlankKind.Number) { Hint = hint, Needed = needed };

    public static Blank Words<TWord>(string name, string label, bool needed = false, TWord? initial = null) where TWord : struct, Enum => new(name, label, BlankKind.Choice)
    {
        Needed = needed, Initial = initial?.ToString(), Choices = [.. Enum.GetValues<TWord>().Select(word => new Choice(word.ToString(), Text.Word(word)))],
    };

    public static Blank YesOrNo(string name, string label) => new(name, label, BlankKind.Choice) { Choices = YesNo };

    public static Blank Course(OutfitCard outfit, string name = "dose.course", string label = "Course") => new(name, label)
    {
        Choices = [.. outfit.Courses.Keys.Order(StringComparer.OrdinalIgnoreCase).Select(course => new Choice(course, course))],
    };

    public static Blank Unit(string name, string label = "Unit") => new(name, label, BlankKind.Choice) { Choices = [.. Units.All.Select(unit => new Choice(unit, unit))] };

    /// <summary>Where the frames of a colony went.</summary>
    public static Part Frames(Bench bench) => Part.Table("Where its frames went", "frames", bench.Filled.Lines("frames", 3), i =>
    [
        Colony(bench, $"frames[{i}].to", "To colony"), Number($"frames[{i}].frames", "Frames"), Words<FramesOf>($"frames[{i}].of", "Of what"),
    ]) with { Hint = "Frames that were thrown out are not named." };

    private static IReadOnlyList<Choice> Suggested(Bench bench)
    {
        if (bench.Yard is null) return [];
        return
        [
            .. bench.Namer.Register.Where(row => row.Kind == SubjectKind.Colony && row.Ended is null && row.YardId?.Value == bench.Yard.Id).OrderBy(row => row.Spot, ByNumber.Order)
                .Take(MostSuggested).Select(row => new Choice(bench.Namer.Write(row), $"spot {row.Spot}")),
        ];
    }
}
