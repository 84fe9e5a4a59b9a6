namespace ColonyLineage.Projections.OwedWork;

/// <summary>The fixed names of what can be owed. <c>work-put-off</c> and <c>work-done-elsewhere</c> name them.</summary>
public static class Works
{
    /// <summary>A nuc stands in its box: to be transferred.</summary>
    public const string Transfer = "transfer";

    /// <summary>A queen was given: is she laying?</summary>
    public const string Laying = "laying";

    /// <summary>A queen cell was given: did she hatch, and does she lay?</summary>
    public const string Cell = "cell";

    /// <summary>It has no queen: give one, or combine it.</summary>
    public const string Queenless = "queenless";

    /// <summary>Colonies were combined: look whether they took to each other.</summary>
    public const string Combined = "combined";

    /// <summary>A feeder is on: take it off.</summary>
    public const string FeederOff = "feeder-off";

    /// <summary>The queen is in doubt, or her brood was: look again.</summary>
    public const string QueenAgain = "queen-again";

    /// <summary>The queen is old: look before winter.</summary>
    public const string OldQueen = "old-queen";

    /// <summary>Supplement, every other round.</summary>
    public const string Supplement = "supplement";

    /// <summary>Doses are missing to a course.</summary>
    public const string Course = "course";

    /// <summary>Strips or trays to take out.</summary>
    public const string StripsOut = "strips-out";

    /// <summary>One wash over the limit: the whole yard is due.</summary>
    public const string TreatYard = "treat-yard";

    /// <summary>A wash at the limit, or none since a course: wash.</summary>
    public const string WashAgain = "wash-again";

    /// <summary>The treatment in the weeks without brood.</summary>
    public const string WinterTreatment = "winter-treatment";

    /// <summary>A spot stands empty.</summary>
    public const string SpotEmpty = "spot-empty";

    /// <summary>All of them, in the order in which they are listed at a colony.</summary>
    public static readonly IReadOnlyList<string> All =
    [
        TreatYard, Course, StripsOut, WinterTreatment, WashAgain, Queenless, QueenAgain, Laying, Cell, OldQueen, Transfer, Combined, FeederOff, Supplement, SpotEmpty,
    ];
}
