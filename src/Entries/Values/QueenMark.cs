using System.Text.Json.Serialization;

namespace ColonyLineage.Entries;

/// <summary>The colours of the international convention for marking queens, and 'unmarked'.</summary>
[JsonConverter(typeof(WordJson<MarkColour>))]
public enum MarkColour
{
    /// <summary>She carries no mark.</summary>
    Unmarked,

    /// <summary>Years that end in 1 or 6.</summary>
    White,

    /// <summary>Years that end in 2 or 7.</summary>
    Yellow,

    /// <summary>Years that end in 3 or 8.</summary>
    Red,

    /// <summary>Years that end in 4 or 9.</summary>
    Green,

    /// <summary>Years that end in 5 or 0.</summary>
    Blue,
}

/// <summary>A mark that was put on a queen or seen on her.</summary>
/// <param name="Colour">Its colour, or unmarked.</param>
/// <param name="Tag">What is written on the tag, if she carries one; at most 20 characters.</param>
public sealed record QueenMark(MarkColour Colour, string? Tag = null)
{
    /// <summary>The colour due for a queen born in this calendar year, by the last digit of the year (international convention).</summary>
    public static MarkColour DueFor(int calendarYear) => (calendarYear % 5) switch
    {
        1 => MarkColour.White,
        2 => MarkColour.Yellow,
        3 => MarkColour.Red,
        4 => MarkColour.Green,
        _ => MarkColour.Blue,
    };
}
