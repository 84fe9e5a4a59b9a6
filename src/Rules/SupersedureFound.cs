using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>
/// The bees have replaced their queen, found only now. <see cref="ActRequest.On"/> is the day it was found, with 'after' the day
/// on which the old queen was last seen, where that is known.
/// </summary>
public sealed record SupersedureFound : ActRequest
{
    /// <summary>The colony.</summary>
    public required ColonyId Colony { get; init; }

    /// <summary>The new queen; where no id is given, one is derived from the act.</summary>
    public QueenId? Queen { get; init; }

    /// <summary>The queen that was replaced, where it is not the one that the books have in the colony.</summary>
    public QueenId? Old { get; init; }

    /// <summary>Mother and daughter are both still there.</summary>
    public bool OldStillThere { get; init; }

    /// <summary>What was seen, for instance eggs and that the queen is unmarked.</summary>
    public Look? Look { get; init; }

    /// <summary>The mark that the new queen was given at once.</summary>
    public QueenMark? Mark { get; init; }

    /// <summary>The supersedure, what was seen, and the mark given.</summary>
    public static Outcome Decide(SupersedureFound request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        var queen = request.Queen ?? new QueenId(request.Derived("queen"));
        draft.Known(request.Colony, "colony");
        draft.Known(request.Old, "old");
        draft.Add(
            new SupersedureSeen
            {
                Id = request.IdOf("supersedure", request.Colony), On = request.On, Act = request.Act, Colony = request.Colony,
                Queen = queen, Old = request.Old ?? standing.QueenOf(request.Colony), OldStillThere = request.OldStillThere,
            },
            named: ("old", request.Old is null ? "queen" : "old"));
        // After it, so that the mark that was seen is the new queen's and does not speak against the old one.
        if (request.Look is { } look && look != Look.Blank) look.AddTo(draft, request, request.Colony, "look.");
        if (request.Mark is { } mark)
            draft.Add(new QueenMarked { Id = request.IdOf("marked", queen), On = request.On.Day, Act = request.Act, Queen = queen, Mark = mark });
        return draft.Finish(now);
    }
}
