using ColonyLineage.Entries;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk;

/// <summary>What is said of a queen in words.</summary>
public static class QueenWords
{
    /// <summary>The colour due by the calendar year of birth; two or more with 'or' between them where the interval spans years.</summary>
    public static string MarkDue(Occurred born) => string.Join(" or ",
        Enumerable.Range(born.Earliest.Year, born.Day.Year - born.Earliest.Year + 1).Select(year => Text.Word(QueenMark.DueFor(year))).Distinct().Take(5));

    /// <summary>Whether the books know of no end of hers, and of a colony that she is in.</summary>
    public static bool IsAlive(RegisterRow? row) => row is { Ended: null, ColonyId: not null };
}

/// <summary>The words of what became of a colony or a queen.</summary>
public static class FateWords
{
    /// <summary>A fate of the register; null is 'not known'.</summary>
    public static string Of(string? fate) => fate switch
    {
        null => "not known what became of her",
        "dead" => "found dead",
        "combined" => "combined",
        "givenUp" => "given up",
        "takenOut" => "taken out alive",
        "notKept" => "not kept when combined",
        "colonyEnded" => "her colony ended",
        _ => Text.Word(fate),
    };
}
