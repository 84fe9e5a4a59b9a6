using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Desk;

/// <summary>What may be said of two lines, in words. What differs is said; of all else it is said why not, and what it would take.</summary>
public static class LineWords
{
    /// <summary>A trait or a way to compare as addresses write it.</summary>
    public static string Word(Enum word) => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(word.ToString());

    /// <summary>What is compared: one and many. A maker is the colony that another was made of.</summary>
    public static (string One, string Many) Of(ComparedBy by) => by switch
    {
        ComparedBy.Line => ("line", "lines"),
        ComparedBy.Mother => ("mother", "mothers"),
        ComparedBy.Queen => ("queen", "queens"),
        _ => ("maker", "makers"),
    };

    /// <summary>'Sloe has more honey than Brindle: 5.1 kg a season (2.0 to 8.2), 6 and 5 mothers, 31 and 24 colonies', with the one that has more of what is wanted first.</summary>
    public static string Differ(Comparison comparison, LinePairRow pair)
    {
        var (trait, straight) = (comparison.Trait, IsBetter(pair));
        var (better, other) = straight ? (pair.Line, pair.Other) : (pair.Other, pair.Line);
        var (lower, upper) = Interval(comparison, pair)!.Value;
        // Of shares the difference is told as how many fewer, of factors as how many times as many: both as the better one stands to the other.
        var (size, from, to) = (straight ? pair.Difference!.Value : -pair.Difference!.Value, straight ? lower : -upper, straight ? upper : -lower);
        if (!TraitWords.IsFactor(trait) && !Traits.MoreIsBetter(trait)) (size, from, to) = (-size, -to, -from);
        var (one, two) = (Row(comparison, better), Row(comparison, other));
        return $"{TraitWords.Better(trait, better, other)}: {TraitWords.Size(trait, size)} ({TraitWords.Interval(trait, from, to)}), {one.Mothers} and {two.Mothers} mothers, {one.Colonies} and {two.Colonies} colonies";
    }

    /// <summary>Why nothing can be said of two, and what it would take.</summary>
    public static string CannotSay(Comparison comparison, LinePairRow pair)
    {
        var why = $"cannot say: {Reason(pair)}";
        if (comparison.By != ComparedBy.Line || pair.Difference is not { } difference) return why;
        var (one, other) = (Row(comparison, pair.Line), Row(comparison, pair.Other));
        // What one mother's daughters differ by is no measure of what lines differ by.
        if (one.Mothers < 2 || other.Mothers < 2) return $"{why}. It takes two mothers in each line at the least to say anything; there are {one.Mothers} and {other.Mothers}";
        if (pair.MothersNeeded is not { } mothers)
            return $"{why}. To see a difference as small as this one ({TraitWords.Size(comparison.Trait, Math.Abs(difference))}) 500 mothers in each line would not do; there are {one.Mothers} and {other.Mothers}";
        var enough = mothers <= Math.Min(one.Mothers, other.Mothers) ? ", if they stood side by side in the same yards" : "";
        return $"{why}. To see a difference as large as this one ({TraitWords.Size(comparison.Trait, Math.Abs(difference))}) in four of five cases it would take {Text.Count(mothers, "mother", "mothers")} in each line, about {Text.Count(pair.ColoniesNeeded ?? mothers, "colony", "colonies")}{enough}; there are {one.Mothers} and {other.Mothers}";
    }

    /// <summary>
    /// The interval of a difference that holds for all pairs at once, by the range that the verdict goes by: it leaves nothing out exactly where the two differ. Null where there is no
    /// difference, or the mothers leave no degrees of freedom.
    /// </summary>
    public static (decimal Lower, decimal Upper)? Interval(Comparison comparison, LinePairRow pair)
    {
        if (pair is not { Difference: { } difference, StandardError: { } error, P: not null }) return null;
        var fitted = comparison.Lines.Count(line => line.Blup is not null);
        var half = (decimal)(StudentizedRange.Quantile(.95, fitted, (double?)pair.Freedom ?? double.PositiveInfinity) / Math.Sqrt(2)) * error;
        return (difference - half, difference + half);
    }

    /// <summary>A trait in one line: of all lines, or of one against the others.</summary>
    public static string InShort(Comparison comparison, string? line = null)
    {
        var pairs = comparison.Pairs.Where(pair => line is null || pair.Line == line || pair.Other == line).ToList();
        var differ = pairs.Where(pair => pair.Verdict == Verdict.Differ).ToList();
        if (differ.Count > 0) return $"{string.Join("; ", differ.Take(2).Select(pair => Differ(comparison, pair)))}{(differ.Count > 2 ? $"; and {Text.Count(differ.Count - 2, "more pair differs", "more pairs differ")}" : "")}";
        if (comparison.Lines.Count < 2) return "nothing to compare";
        if (comparison.By != ComparedBy.Line) return $"nothing is claimed of {Of(comparison.By).Many}; predictions are shown";
        if (pairs.Any(pair => pair.P is not null)) return line is null ? $"cannot say: no two of {Compared(comparison)} differ by more than chance makes" : $"cannot say: {line} differs from none of the {pairs.Count} others by more than chance makes";
        return pairs.CountBy(Reason).OrderByDescending(why => why.Value).Select(why => $"cannot say: {why.Key}").FirstOrDefault() ?? "nothing to compare";
    }

    /// <summary>What stands above a picture of lines one below the other, so that nobody reads a ranking into it.</summary>
    public static string NoRanking(Comparison comparison)
    {
        var differ = comparison.Pairs.Count(pair => pair.Verdict == Verdict.Differ);
        if (comparison.By == ComparedBy.Queen) return "Nothing is claimed of queens: these are predictions, the wanted end first. The next one in the list may as well be the better one: the interval and the reliability say how far to go by it.";
        if (comparison.By != ComparedBy.Line) return $"Nothing is claimed of {Of(comparison.By).Many}: these are predictions, in the order of their names, no ranking.";
        return differ == 0 ? "No two lines can be said to differ: which stands above which means nothing here."
            : differ == comparison.Pairs.Count ? "All pairs differ."
            : $"Only the {(differ == 1 ? "pair" : $"{differ} pairs")} named above can be said to differ: of the others, which stands above which means nothing.";
    }

    /// <summary>'6 mothers, 31 colonies'; of a mother or a queen herself, and of a maker whose splits have unknown mothers, the colonies.</summary>
    public static string Counts(LineRow row, ComparedBy by) => $"{(by is ComparedBy.Mother or ComparedBy.Queen || (by == ComparedBy.Maker && row.Mothers == 0) ? "" : $"{Text.Count(row.Mothers, "mother", "mothers")}, ")}{Text.Count(row.Colonies, "colony", "colonies")}";

    /// <summary>'5 lines', or 'the 4 lines that can be compared' where others cannot.</summary>
    private static string Compared(Comparison comparison) =>
        comparison.Lines.Count(row => row.Blup is not null) is var fitted && fitted == comparison.Lines.Count ? $"{fitted} lines" : $"the {fitted} lines that can be compared";

    /// <summary>What is said of each of several comparisons before any figure.</summary>
    public static IReadOnlyList<string> FirstOfAll(IEnumerable<Comparison> comparisons) =>
        comparisons.Where(comparison => comparison.Lines.Count > 1).Select(comparison => comparison.First.AsEnumerable()).ToList() is { Count: > 0 } all ? [.. all.Aggregate((one, other) => one.Intersect(other))] : [];

    /// <summary>Why nothing can be said, to go on within a sentence.</summary>
    private static string Reason(LinePairRow pair)
    {
        var why = pair.Why?.TrimEnd('.') ?? "";
        return why.Length == 0 || why.StartsWith(pair.Line, StringComparison.Ordinal) || why.StartsWith(pair.Other, StringComparison.Ordinal) ? why : char.ToLowerInvariant(why[0]) + why[1..];
    }

    private static LineRow Row(Comparison comparison, string line) => comparison.Lines.Single(row => row.Line == line);

    /// <summary>Whether the first of two has more of what is wanted.</summary>
    private static bool IsBetter(LinePairRow pair) => Traits.MoreIsBetter(pair.Trait) == (pair.Difference > 0);
}
