namespace ColonyLineage.Projections.LineComparison;

/// <summary>What lines can be compared by.</summary>
public enum Trait
{
    /// <summary>Frames of bees, mean of the looks of a season.</summary>
    Strength,

    /// <summary>Honey taken off in a season, kilograms.</summary>
    Honey,

    /// <summary>Temper, mean of a season, 1 (hot) to 5 (gentle).</summary>
    Temper,

    /// <summary>Brood pattern, mean of a season without looks that came too soon, 1 (spotty) to 5 (solid).</summary>
    BroodPattern,

    /// <summary>Mites per 100 bees in the first wash of a season, as ln(x + 0.5).</summary>
    MitesFirst,

    /// <summary>The same of the last wash of a season in which there were several.</summary>
    MitesLast,

    /// <summary>Growth of the same between these two where nothing was given between, a month of 30 days.</summary>
    MiteGrowth,

    /// <summary>Of the colonies that went into a winter, the share that was lost.</summary>
    WinterLosses,

    /// <summary>Of the queens that came to a colony, the share superseded or lost within a year; killed, taken out, set elsewhere, or her colony ended: left out.</summary>
    QueenGone,
}

/// <summary>What is known of a trait itself.</summary>
public static class Traits
{
    /// <summary>Added before the logarithm: half a mite in a hundred bees, so that no mites have a place on the scale (a choice of ours).</summary>
    public const double HalfAMite = .5;

    /// <summary>Whether more of it is wanted. Strength is not wanted for itself by everybody: it is shown with the larger first.</summary>
    public static bool MoreIsBetter(Trait trait) => trait is Trait.Strength or Trait.Honey or Trait.Temper or Trait.BroodPattern;

    /// <summary>Whether each record is a yes or a no.</summary>
    public static bool IsShare(Trait trait) => trait is Trait.WinterLosses or Trait.QueenGone;

    /// <summary>Whether the treatments of a season stand between the lines and what was measured, and are taken into the model.</summary>
    public static bool DependsOnTreatment(Trait trait) => trait is Trait.MitesLast;

    /// <summary>In words, with the unit.</summary>
    public static string Words(Trait trait) => trait switch
    {
        Trait.Strength => "frames of bees",
        Trait.Honey => "honey, kg a season",
        Trait.Temper => "temper, 1 hot to 5 gentle",
        Trait.BroodPattern => "brood pattern, 1 spotty to 5 solid",
        Trait.MitesFirst => "mites in the season's first wash, ln(per 100 bees + 0.5)",
        Trait.MitesLast => "mites in the season's last wash, ln(per 100 bees + 0.5)",
        Trait.MiteGrowth => "growth of mites without treatment between, ln per 30 days",
        Trait.WinterLosses => "share lost in winter",
        _ => "share of queens gone within a year",
    };
}
