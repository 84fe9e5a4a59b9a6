using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>
/// A spot is fixed: the dud on it, if one still stands there, is given up or combined away, and a nuc is set on the spot. The
/// nuc stays in its nuc box; it is transferred at a later visit.
/// </summary>
public sealed record FixSpotWithNuc : ActRequest
{
    /// <summary>The spot.</summary>
    public required Spot Spot { get; init; }

    /// <summary>The nuc that is set on it.</summary>
    public required ColonyId Nuc { get; init; }

    /// <summary>The dud, where it is not the one that stands there by the books.</summary>
    public ColonyId? Dud { get; init; }

    /// <summary>The dud's queen was found and killed; false where there was none.</summary>
    public bool KillQueen { get; init; }

    /// <summary>Where the dud's frames went.</summary>
    public IReadOnlyList<FrameShare> Frames { get; init; } = [];

    /// <summary>The colony that the rest of the dud was combined into; where none is named, the dud is given up and ends.</summary>
    public ColonyId? CombineInto { get; init; }

    /// <summary>Why it is a dud, 1 to 200 characters; needed where it is given up.</summary>
    public string? Why { get; init; }

    /// <summary>The dud's queen killed, its frames moved, the dud ended or combined; then the nuc moved onto the spot.</summary>
    public static Outcome Decide(FixSpotWithNuc request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        draft.Known(request.Spot.Yard, "spot");
        draft.Known(request.Nuc, "nuc");
        if (request.Dud is { } named) draft.Known(named, "dud");
        if ((request.Dud ?? standing.ColonyOn(request.Spot)) is { } dud) GiveUp(draft, request, standing, dud);
        else if (request.KillQueen || request.Frames.Count > 0 || request.CombineInto is not null || request.Why is not null)
            draft.Refuse(Refusals.NobodyThere, "spot", $"By the books nobody stands on spot {request.Spot.Number} that day: name the dud, or leave out what was done with it.");

        var from = standing.SpotOf(request.Nuc);
        draft.Add(
            new Moved
            {
                Id = request.IdOf("nuc set", request.Nuc), On = request.On, Act = request.Act, Colony = request.Nuc, To = request.Spot, From = from == request.Spot ? null : from,
            },
            named: [("colony", "nuc"), ("to", "spot")]);
        return draft.Finish(now);
    }

    private static void GiveUp(Draft draft, FixSpotWithNuc request, IStanding standing, ColonyId dud)
    {
        if (dud == request.Nuc)
            draft.Refuse(Refusals.OfItself, "nuc", "The nuc is itself the colony on that spot: name the dud, or another nuc.");
        SharingOut.Add(draft, request, standing, dud, "dud", request.KillQueen, request.Why, request.Frames);
        if (request.CombineInto is not { } into)
        {
            draft.Add(new Ended { Id = request.IdOf("ended", dud), On = request.On, Act = request.Act, Colony = dud, Why = request.Why! }, named: ("colony", "dud"));
            return;
        }

        draft.Known(into, "combineInto");
        // A combination has no field for the reason; where the killed queen does not carry it either, it is noted.
        if (request.Why is { } why && !request.KillQueen)
            draft.Add(new Noted { Id = request.IdOf("why", dud), On = request.On, Act = request.Act, Colony = dud, Text = why, About = "dud" }, named: [("colony", "dud"), ("text", "why")]);
        draft.Add(
            new Combined { Id = request.IdOf("combined", dud), On = request.On, Act = request.Act, Colony = dud, Into = into },
            named: [("colony", "dud"), ("into", "combineInto")]);
    }
}
