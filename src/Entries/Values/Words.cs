using System.Text.Json.Serialization;

namespace ColonyLineage.Entries;

/// <summary>How a colony came to be in the outfit.</summary>
[JsonConverter(typeof(WordJson<HowEstablished>))]
public enum HowEstablished
{
    /// <summary>Made out of bees and brood of one or more colonies; each maker has a <see cref="SplitFrom"/>.</summary>
    Split,

    /// <summary>A small colony in a nuc box, made or bought.</summary>
    Nuc,

    /// <summary>Loose bees in a package.</summary>
    Package,

    /// <summary>A swarm that was taken.</summary>
    Swarm,

    /// <summary>A colony that was bought.</summary>
    Bought,

    /// <summary>It was there when the books were opened.</summary>
    OpeningCount,
}

/// <summary>What a colony is housed in.</summary>
[JsonConverter(typeof(WordJson<Housing>))]
public enum Housing
{
    /// <summary>A nuc box that exists to get a queen mated.</summary>
    MatingNuc,

    /// <summary>A nuc box, usually 3 to 5 frames.</summary>
    NucBox,

    /// <summary>Brood nest in one full-depth box.</summary>
    Single,

    /// <summary>Brood nest in two full-depth boxes.</summary>
    Double,

    /// <summary>Anything else; say it in the note.</summary>
    Other,
}

/// <summary>What was found of the queen at an inspection.</summary>
[JsonConverter(typeof(WordJson<QueenFinding>))]
public enum QueenFinding
{
    /// <summary>She was seen.</summary>
    Seen,

    /// <summary>Not seen, but eggs say that she is there.</summary>
    Queenright,

    /// <summary>Not seen, and nothing says that she is there.</summary>
    NotSeen,

    /// <summary>A virgin was seen.</summary>
    VirginSeen,

    /// <summary>No queen.</summary>
    Queenless,

    /// <summary>A queen that lays only drones.</summary>
    DroneLayer,

    /// <summary>Workers lay.</summary>
    LayingWorkers,
}

/// <summary>Stores judged by lifting.</summary>
[JsonConverter(typeof(WordJson<Heft>))]
public enum Heft
{
    /// <summary>Little food on.</summary>
    Light,

    /// <summary>Enough for now.</summary>
    Fair,

    /// <summary>Plenty of food on.</summary>
    Heavy,
}

/// <summary>What became of the queen that was there before.</summary>
[JsonConverter(typeof(WordJson<OldQueen>))]
public enum OldQueen
{
    /// <summary>There was none.</summary>
    NoneThere,

    /// <summary>She was killed.</summary>
    Killed,

    /// <summary>She was taken out alive: banked, or set into another colony.</summary>
    TakenOut,

    /// <summary>She was not found; nobody knows.</summary>
    NotFound,
}

/// <summary>What kind of frames were moved.</summary>
[JsonConverter(typeof(WordJson<FramesOf>))]
public enum FramesOf
{
    /// <summary>Brood, with or without the bees on it.</summary>
    Brood,

    /// <summary>Bees shaken or moved without brood.</summary>
    Bees,

    /// <summary>Empty comb. It carries no bees, so it makes no path.</summary>
    EmptyComb,

    /// <summary>Food. It carries no bees, so it makes no path.</summary>
    Food,
}

/// <summary>How a sample of bees was taken off its mites.</summary>
[JsonConverter(typeof(WordJson<WashMethod>))]
public enum WashMethod
{
    /// <summary>Alcohol wash.</summary>
    Alcohol,

    /// <summary>Soap wash.</summary>
    Soap,

    /// <summary>Sugar roll.</summary>
    SugarRoll,
}

/// <summary>How surely a queen's mother is known.</summary>
[JsonConverter(typeof(WordJson<Certainty>))]
public enum Certainty
{
    /// <summary>Known: she was grafted or raised from that queen.</summary>
    Known,

    /// <summary>Supposed: that queen was there when she was raised.</summary>
    Supposed,

    /// <summary>Nobody knows.</summary>
    Unknown,
}

/// <summary>How a queen came to be raised.</summary>
[JsonConverter(typeof(WordJson<RaisedFrom>))]
public enum RaisedFrom
{
    /// <summary>A grafted larva.</summary>
    Graft,

    /// <summary>A cell that was given or left on purpose, without grafting.</summary>
    Cell,

    /// <summary>The bees raised her because they were queenless.</summary>
    EmergencyCell,

    /// <summary>The bees replaced their queen.</summary>
    Supersedure,

    /// <summary>A swarm cell.</summary>
    SwarmCell,

    /// <summary>Nobody knows.</summary>
    Unknown,
}

/// <summary>What a dose is reckoned by.</summary>
[JsonConverter(typeof(WordJson<DosedBy>))]
public enum DosedBy
{
    /// <summary>The colony as a whole.</summary>
    Colony,

    /// <summary>Each brood chamber.</summary>
    BroodChamber,

    /// <summary>Frames of bees.</summary>
    FramesOfBees,
}

/// <summary>Where a feeder sits.</summary>
[JsonConverter(typeof(WordJson<FeederPlace>))]
public enum FeederPlace
{
    /// <summary>Over the bees.</summary>
    Above,

    /// <summary>Under them, or at the entrance.</summary>
    Below,

    /// <summary>In the box, in place of frames.</summary>
    Inside,
}

/// <summary>By what the parts of a syrup were measured. A ratio by volume is not a ratio by weight.</summary>
[JsonConverter(typeof(WordJson<PartsBy>))]
public enum PartsBy
{
    /// <summary>Weighed.</summary>
    Weight,

    /// <summary>Measured by volume: loose sugar in the same vessel as the water.</summary>
    Volume,
}

/// <summary>What is counted in the outfit's stock.</summary>
[JsonConverter(typeof(WordJson<StockOf>))]
public enum StockOf
{
    /// <summary>Feeders; their size is told by what they hold.</summary>
    Feeders,

    /// <summary>Full-depth boxes with floor and lid.</summary>
    Boxes,

    /// <summary>Frames of drawn comb.</summary>
    DrawnComb,

    /// <summary>Honey supers.</summary>
    Supers,

    /// <summary>Nucs with a laying queen, at hand.</summary>
    Nucs,

    /// <summary>Mated queens at hand.</summary>
    MatedQueens,

    /// <summary>Queen cells at hand.</summary>
    QueenCells,

    /// <summary>Sugar.</summary>
    Sugar,

    /// <summary>Syrup, ready mixed.</summary>
    Syrup,

    /// <summary>Pollen substitute, patties.</summary>
    Supplement,

    /// <summary>Doses of a treatment; the name says of which course.</summary>
    Doses,
}
