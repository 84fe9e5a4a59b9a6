using ColonyLineage.Entries;
using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>How a kind of link is drawn, by dash and width, and what it is called.</summary>
/// <param name="Class">The class of the line.</param>
/// <param name="Said">The word.</param>
public sealed record KinLook(string Class, string Said)
{
    /// <summary>The look of a link.</summary>
    public static KinLook Of(LinkRow link) => link.Link switch
    {
        LinkKind.Mother when link.Sure == Certainty.Supposed => new("supposed", "mother, supposed"),
        LinkKind.Mother => new("mother", "mother"),
        LinkKind.Drones => new("drones", "drones"),
        LinkKind.Split => new("mother", "made from"),
        LinkKind.Combined => new("combined", "combined into"),
        LinkKind.Brood => new("supposed", "frames of brood"),
        _ => new("drones", "frames of bees"),
    };
}
