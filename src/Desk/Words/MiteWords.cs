using System.Globalization;
using ColonyLineage.Projections.MiteWatch;

namespace ColonyLineage.Desk;

/// <summary>What a round of washes says, in words.</summary>
public static class MiteWords
{
    /// <summary>What the rule of thumb says.</summary>
    public static string Of(Thumb thumb) => thumb switch
    {
        Thumb.Wanted => "wanted",
        Thumb.AtLimit => "at the limit",
        _ => "whole yard is due",
    };

    /// <summary>What the statistics allow to be said. Never 'free of mites'.</summary>
    public static string Of(RoundRow round) => round.IsBelow switch
    {
        Claim.Below => $"below {Text.Number(round.Threshold)} per 100, error {Percent(round.ErrorOfBelow)}",
        Claim.Above => $"above {Text.Number(round.Threshold)} per 100, error 5 % at most",
        _ => round.MoreWashes is { } more
            ? $"cannot say: {Text.Count(more, "more colony", "more colonies")} to wash"
            : "cannot say: up to 100 washes like these would not show it below",
    };

    /// <summary>The whole yard is due by the rule of thumb, or is above the threshold by the statistics.</summary>
    public static bool StandsOut(RoundRow round) => round.RuleOfThumb == Thumb.YardDue || round.IsBelow == Claim.Above;

    /// <summary>Mites per 100 bees: 0.57, 12.3.</summary>
    public static string Per100(double per100) => per100.ToString(per100 < 10 ? "0.00" : "0.0", CultureInfo.InvariantCulture);

    /// <summary>Mites per 100 bees.</summary>
    public static string Per100(decimal per100) => Per100((double)per100);

    /// <summary>The days of a round.</summary>
    public static string Days(RoundRow round) => round.From == round.To ? Text.Day(round.From) : $"{Text.Day(round.From)} to {Text.Day(round.To)}";

    /// <summary>An error: 1.2 %. A chance so small that nothing would be left of it is said to be small, never to be none.</summary>
    private static string Percent(decimal share) => share < 0.001m ? "below 0.1 %" : $"{(100 * share).ToString("0.0", CultureInfo.InvariantCulture)} %";
}
