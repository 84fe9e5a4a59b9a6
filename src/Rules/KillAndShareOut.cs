using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>A colony is given up: its queen is killed, its frames are shared out to others, and it ends.</summary>
public sealed record KillAndShareOut : ActRequest
{
    /// <summary>The colony that is given up.</summary>
    public required ColonyId Colony { get; init; }

    /// <summary>Its queen was found and killed; false where there was none.</summary>
    public bool KillQueen { get; init; } = true;

    /// <summary>Where its frames went; frames that were thrown out are not named.</summary>
    public IReadOnlyList<FrameShare> Frames { get; init; } = [];

    /// <summary>Why, 1 to 200 characters.</summary>
    public required string Why { get; init; }

    /// <summary>The queen killed, the frames moved, the colony ended.</summary>
    public static Outcome Decide(KillAndShareOut request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        draft.Known(request.Colony, "colony");
        SharingOut.Add(draft, request, standing, request.Colony, "colony", request.KillQueen, request.Why, request.Frames);
        draft.Add(new Ended { Id = request.IdOf("ended", request.Colony), On = request.On, Act = request.Act, Colony = request.Colony, Why = request.Why });
        return draft.Finish(now);
    }
}
