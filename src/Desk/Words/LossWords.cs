using System.Globalization;
using ColonyLineage.Projections.Losses;

namespace ColonyLineage.Desk;

/// <summary>Losses in words.</summary>
public static class LossWords
{
    /// <summary>Below so many colonies it is said what one of them weighs (common practice, no source).</summary>
    public const int Few = 20;

    /// <summary>2025/26 where a period lies in two calendar years, 2026 where it lies in one.</summary>
    public static string Years(DateOnly from, DateOnly to) => from.Year == to.Year ? $"{from.Year}" : $"{from.Year}/{to.Year % 100:00}";

    /// <summary>'winter 2025/26'.</summary>
    public static string Period(LossRow row) => $"{Text.Word(row.Period)} {Years(row.From, row.To)}";

    /// <summary>What the colonies of a group have in common.</summary>
    public static string Of(LossBy by) => by switch
    {
        LossBy.All => "whole outfit",
        LossBy.QueenAge => "age of the queen",
        LossBy.Treatment => "courses before the winter",
        _ => Text.Word(by),
    };

    /// <summary>A group by its name: of the age of queens 'queen 1 season old', of lines 'line Alder'.</summary>
    public static string Group(LossBy by, string group) => by switch
    {
        LossBy.All => "whole outfit",
        _ when group == "unknown" => by switch { LossBy.Line => "line not known", LossBy.QueenAge => "age not known", _ => "not known" },
        LossBy.Line => $"line {group}",
        LossBy.QueenAge => group == "0" ? "queen born that season" : $"queen {group} {(group == "1" ? "season" : "seasons")} old",
        LossBy.Treatment => $"courses {group}",
        _ => group,
    };

    /// <summary>How a life ended.</summary>
    public static string How(string how) => how switch { "dead" => "found dead", "givenUp" => "given up", "combined" => "combined away", _ => Text.Word(how) };

    /// <summary>7.9 %.</summary>
    public static string Percent(decimal share) => $"{(100 * share).ToString("0.#", CultureInfo.InvariantCulture)} %";

    /// <summary>'5.8 to 10.5 %'.</summary>
    public static string Percent(decimal lower, decimal upper) => $"{(100 * lower).ToString("0.#", CultureInfo.InvariantCulture)} to {Percent(upper)}";

    /// <summary>An age in days: '90 days', '2 years'.</summary>
    public static string Age(double days) => days > 0 && days % 365 == 0 ? Text.Count((int)(days / 365), "year", "years") : $"{Text.Number((decimal)days)} days";

    /// <summary>What one colony weighs where there are few; null where there are more.</summary>
    public static string? Small(int colonies) => colonies >= Few ? null : $"few: one colony is {Percent(Math.Round(1m / colonies, 3))}";
}
