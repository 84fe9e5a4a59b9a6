using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>One colony that is set on another spot.</summary>
public sealed record ColonyMove
{
    /// <summary>The colony.</summary>
    public required ColonyId Colony { get; init; }

    /// <summary>The spot it is set on.</summary>
    public required Spot To { get; init; }

    /// <summary>The spot it was taken from, where the person knows it; else the books are asked.</summary>
    public Spot? From { get; init; }

    /// <summary>It stands above another colony over a screen board.</summary>
    public bool Above { get; init; }
}

/// <summary>Every colony of a yard goes to another, to the spot of the same number.</summary>
/// <param name="From">The yard that is cleared.</param>
/// <param name="To">The yard that they go to.</param>
public sealed record YardMove(YardId From, YardId To);

/// <summary>Colonies are moved, one by one or a yard at a time. Their history goes with them; the spots stay.</summary>
public sealed record MoveColonies : ActRequest
{
    /// <summary>The colonies moved one by one, each named once.</summary>
    public IReadOnlyList<ColonyMove> Moves { get; init; } = [];

    /// <summary>The yard that is moved as a whole, apart from colonies that are moved one by one.</summary>
    public YardMove? WholeYard { get; init; }

    /// <summary>One move for each colony.</summary>
    public static Outcome Decide(MoveColonies request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        for (var i = 0; i < request.Moves.Count; i++)
        {
            var (move, at) = (request.Moves[i], $"moves[{i}].");
            draft.Known(move.Colony, $"{at}colony");
            draft.Known(move.To.Yard, $"{at}to");
            draft.Once(move.Colony, $"{at}colony", "colony");
            // What the books say is left out where it says the same spot: the books may be wrong, the person saw the colony set down.
            var from = move.From ?? (standing.SpotOf(move.Colony) is { } there && there != move.To ? there : null);
            draft.Add(Move(request, move.Colony, from, move.To, move.Above), at);
        }

        if (request.WholeYard is { } yard) MoveYard(draft, request, yard);
        return draft.Finish(now);
    }

    private static void MoveYard(Draft draft, MoveColonies request, YardMove yard)
    {
        draft.Known(yard.To, "wholeYard.to");
        if (yard.From == yard.To)
        {
            draft.Refuse(Refusals.OfItself, "wholeYard.to", "A yard cannot be moved to itself: name another yard.");
            return;
        }

        var oneByOne = request.Moves.Select(move => move.Colony).ToHashSet();
        foreach (var tenant in draft.TenantsOf(yard.From, "wholeYard.from").Where(tenant => !oneByOne.Contains(tenant.Colony)))
            draft.Add(Move(request, tenant.Colony, tenant.Spot, tenant.Spot with { Yard = yard.To }, tenant.Above), "wholeYard.");
    }

    private static Moved Move(MoveColonies request, ColonyId colony, Spot? from, Spot to, bool above) =>
        new() { Id = request.IdOf("moved", colony), On = request.On, Act = request.Act, Colony = colony, To = to, From = from, Above = above };
}
