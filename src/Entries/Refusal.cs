namespace ColonyLineage.Entries;

/// <summary>Why something was not recorded, at the field that is wrong.</summary>
/// <param name="Name">The refusal's fixed name, for instance <c>count-out-of-range</c>: see <see cref="Refusals"/>.</param>
/// <param name="Field">The field that is wrong, as it is written in JSON; empty where it is the whole.</param>
/// <param name="Message">What is wrong and what to do about it, in plain words.</param>
public sealed record Refusal(string Name, string Field, string Message);

/// <summary>The names of all refusals. Only nonsense is refused; what contradicts other entries is kept and shown as a conflict.</summary>
public static class Refusals
{
    /// <summary>A text that must be there is missing or blank.</summary>
    public const string Missing = "missing";

    /// <summary>A text is longer than its field allows.</summary>
    public const string TooLong = "too-long";

    /// <summary>A count, score or amount lies outside what is possible.</summary>
    public const string OutOfRange = "out-of-range";

    /// <summary>The unit is not one of <see cref="Units.All"/>, or not of the kind the field takes.</summary>
    public const string UnknownUnit = "unknown-unit";

    /// <summary>The day lies after today.</summary>
    public const string DayInFuture = "day-in-future";

    /// <summary>The day lies before 1900, or an interval runs backwards.</summary>
    public const string DayImpossible = "day-impossible";

    /// <summary>Two limits of one thing contradict each other: the least is more than the most.</summary>
    public const string LimitsContradict = "limits-contradict";

    /// <summary>An id is all zeros.</summary>
    public const string NoId = "no-id";

    /// <summary>A colony made of itself, combined with itself, or a queen that is her own mother.</summary>
    public const string OfItself = "of-itself";

    /// <summary>The entry says nothing: no field that can be filled is filled.</summary>
    public const string SaysNothing = "says-nothing";

    /// <summary>A word is not one of those that the field takes.</summary>
    public const string UnknownWord = "unknown-word";

    /// <summary>The entry's kind, or its version, is not known here.</summary>
    public const string UnknownKind = "unknown-kind";

    /// <summary>The text is not the JSON of an entry.</summary>
    public const string NotReadable = "not-readable";

    /// <summary>The same id was recorded before with other content. Both are kept visible.</summary>
    public const string SameIdOtherContent = "same-id-other-content";

    /// <summary>A void names an entry that is itself a void: record the right entry again instead.</summary>
    public const string VoidOfVoid = "void-of-void";

    /// <summary>What is named does not exist in the books.</summary>
    public const string NotFound = "not-found";

    /// <summary>The request carries no entries, or more than fit one act.</summary>
    public const string EmptyAct = "empty-act";

    /// <summary>The entries of one request belong to more than one act.</summary>
    public const string SeveralActs = "several-acts";

    /// <summary>By the books no colony stands there on that day, so nobody can tell which one is meant.</summary>
    public const string NobodyThere = "nobody-there";

    /// <summary>Something that an act can name once is named twice: a maker, a colony, a queen.</summary>
    public const string NamedTwice = "named-twice";
}
