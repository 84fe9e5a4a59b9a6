using System.Globalization;
using ColonyLineage.Projections.LineComparison;

namespace ColonyLineage.Desk;

/// <summary>
/// Traits and their figures in words. What is reckoned in logarithms is told as how many times as many, of shares as how many times the odds: an owner reads no ln.
/// </summary>
public static class TraitWords
{
    /// <summary>The trait by its name, as it stands in a heading.</summary>
    public static string Name(Trait trait) => trait switch
    {
        Trait.Strength => "strength",
        Trait.Honey => "honey",
        Trait.Temper => "temper",
        Trait.BroodPattern => "brood pattern",
        Trait.MitesFirst => "mites in the season's first wash",
        Trait.MitesLast => "mites in the season's last wash",
        Trait.MiteGrowth => "growth of mites",
        Trait.WinterLosses => "winter losses",
        _ => "queens gone within a year",
    };

    /// <summary>What is measured, with its unit.</summary>
    public static string Measured(Trait trait) => trait switch
    {
        Trait.Strength => "Frames of bees, mean of the looks of a season.",
        Trait.Honey => "Honey taken off in a season and weighed, in kilograms.",
        Trait.Temper => "Temper, mean of a season, from 1 (hot) to 5 (gentle).",
        Trait.BroodPattern => "Brood pattern, mean of a season, from 1 (spotty) to 5 (solid), without looks that came too soon after a course that stops the queen's laying.",
        Trait.MitesFirst => "Mites per 100 bees in the first wash of a season.",
        Trait.MitesLast => "Mites per 100 bees in the last wash of a season in which there were several; the season's treatments stand in the model.",
        Trait.MiteGrowth => "How many times as many mites there are after 30 days, between the first and the last wash of a season where nothing was given between.",
        Trait.WinterLosses => "Of the colonies that went into a winter, those that were lost in it.",
        _ => "Of the queens that came to a colony, those superseded or lost within a year.",
    };

    /// <summary>What is wanted of it: 'more honey'. Strength is not wanted for itself by everybody.</summary>
    public static string Wanted(Trait trait) => trait switch
    {
        Trait.Strength => "more bees",
        Trait.Honey => "more honey",
        Trait.Temper => "gentler",
        Trait.BroodPattern => "more solid",
        Trait.MitesFirst or Trait.MitesLast => "fewer mites",
        Trait.MiteGrowth => "slower growth",
        Trait.WinterLosses => "fewer lost",
        _ => "fewer gone",
    };

    /// <summary>The one that has more of what is wanted, held against the other: 'Sloe has more honey than Brindle'.</summary>
    public static string Better(Trait trait, string better, string other) => trait switch
    {
        Trait.Strength => $"{better} has more bees than {other}",
        Trait.Honey => $"{better} has more honey than {other}",
        Trait.Temper => $"{better} is gentler than {other}",
        Trait.BroodPattern => $"{better} has a more solid brood pattern than {other}",
        Trait.MitesFirst => $"{better} has fewer mites than {other} in the season's first wash",
        Trait.MitesLast => $"{better} has fewer mites than {other} in the season's last wash",
        Trait.MiteGrowth => $"mites grow more slowly in {better} than in {other}",
        Trait.WinterLosses => $"{better} lost fewer colonies in winter than {other}",
        _ => $"{better} lost fewer queens within a year than {other}",
    };

    /// <summary>Whether it is reckoned in logarithms, so that differences are factors.</summary>
    public static bool IsFactor(Trait trait) => trait is Trait.MitesFirst or Trait.MitesLast or Trait.MiteGrowth || Traits.IsShare(trait);

    /// <summary>The size of a difference with its unit, whichever way it points: '5.1 kg a season', '0.62 times as many', '0.4 times the odds of loss'.</summary>
    public static string Size(Trait trait, decimal difference) => $"{Plain(trait, difference)} {Counted(trait)}";

    /// <summary>A difference with its sign, without its unit: '+5.1', '−2', '× 1.31'.</summary>
    public static string Signed(Trait trait, decimal difference) => IsFactor(trait) ? $"× {Plain(trait, difference)}" : Sign(Plain(trait, difference));

    /// <summary>An interval of differences, without its unit: '−2 to 8.2'.</summary>
    public static string Interval(Trait trait, decimal lower, decimal upper) => $"{Plain(trait, lower)} to {Plain(trait, upper)}";

    /// <summary>What a difference is counted in: of a factor what it multiplies.</summary>
    public static string Counted(Trait trait) => trait switch
    {
        Trait.Strength => "frames of bees",
        Trait.Honey => "kg a season",
        Trait.Temper or Trait.BroodPattern => "points",
        Trait.MitesFirst or Trait.MitesLast => "times as many mites",
        Trait.MiteGrowth => "times as many in 30 days",
        Trait.WinterLosses => "times the odds of loss",
        _ => "times the odds of being gone",
    };

    /// <summary>A mean as it was recorded. Of logarithms it is the geometric mean, with the half mite taken off again.</summary>
    public static string Mean(Trait trait, decimal mean) => trait switch
    {
        Trait.Strength => $"{Number(mean, 1)} frames",
        Trait.Honey => $"{Number(mean, 1)} kg",
        Trait.MitesFirst or Trait.MitesLast => $"{Number(PerHundred(mean), 2)} per 100",
        Trait.MiteGrowth => $"× {Plain(trait, mean)} in 30 days",
        Trait.WinterLosses or Trait.QueenGone => LossWords.Percent(mean),
        _ => Number(mean, 2),
    };

    /// <summary>The value of one record.</summary>
    public static string Value(Trait trait, double value) => trait switch
    {
        Trait.WinterLosses => value > 0 ? "lost" : "came through",
        Trait.QueenGone => value > 0 ? "gone" : "still there",
        _ => Mean(trait, (decimal)value),
    };

    /// <summary>A number with so many places, with a minus that is one, and nothing never below nothing.</summary>
    public static string Number(decimal number, int places) =>
        Math.Round(number, places, MidpointRounding.AwayFromZero).ToString($"F{places}", CultureInfo.InvariantCulture).Replace('-', '−');

    private static string Plain(Trait trait, decimal difference) => trait switch
    {
        Trait.Strength or Trait.Honey => Number(difference, 1),
        _ when IsFactor(trait) => Factor((double)difference),
        _ => Number(difference, 2),
    };

    // Beyond a thousandfold nobody measures: an interval without an end.
    private static string Factor(double logarithm) => Math.Exp(logarithm) switch
    {
        > 1000 => "1000 and more",
        < .001 => "less than 0.001",
        < .1 and var small => Number((decimal)small, 3),
        < 10 and var times => Number((decimal)times, 2),
        var many => Number((decimal)many, 0),
    };

    private static decimal PerHundred(decimal logarithm) => (decimal)Math.Max(0, Math.Exp((double)logarithm) - Traits.HalfAMite);

    private static string Sign(string number) => number[0] == '−' || number.All(letter => letter is '0' or '.') ? number : $"+{number}";
}
