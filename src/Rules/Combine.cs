using System.Text.Json.Serialization;
using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>Which queen was killed before two colonies were combined.</summary>
[JsonConverter(typeof(WordJson<KilledQueen>))]
public enum KilledQueen
{
    /// <summary>None: one had no queen, or the bees were left to settle it.</summary>
    None,

    /// <summary>The queen of the colony that ends.</summary>
    OfTheOneThatEnds,

    /// <summary>The queen of the colony that goes on; the other queen goes on with it.</summary>
    OfTheOneThatGoesOn,
}

/// <summary>Two colonies are made one: one ends, the other goes on, and one queen with it.</summary>
public sealed record Combine : ActRequest
{
    /// <summary>The colony that ends.</summary>
    public required ColonyId Colony { get; init; }

    /// <summary>The colony that goes on.</summary>
    public required ColonyId Into { get; init; }

    /// <summary>Which queen was killed first.</summary>
    public KilledQueen Killed { get; init; }

    /// <summary>The queen that goes on, where the person knows her; else the books are asked, by who was killed.</summary>
    public QueenId? QueenKept { get; init; }

    /// <summary>The queen killed, where one was; then the colonies combined.</summary>
    public static Outcome Decide(Combine request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        draft.Known(request.Colony, "colony");
        draft.Known(request.Into, "into");
        draft.Known(request.QueenKept, "queenKept");
        if (!Enum.IsDefined(request.Killed)) draft.Refuse(Refusals.UnknownWord, "killed", "Take one of none, ofTheOneThatEnds, ofTheOneThatGoesOn.");

        ColonyId? of = request.Killed switch
        {
            KilledQueen.OfTheOneThatEnds => request.Colony,
            KilledQueen.OfTheOneThatGoesOn => request.Into,
            _ => null,
        };
        if (of is { } killedIn)
        {
            // Where the person says that the queen whom the books have there goes on, another one was killed.
            var killed = standing.QueenOf(killedIn);
            draft.Add(new QueenKilled
            {
                Id = request.IdOf("queen killed", killedIn), On = request.On, Act = request.Act, Colony = killedIn, Queen = killed == request.QueenKept ? null : killed,
            });
        }

        draft.Add(new Combined
        {
            Id = request.IdOf("combined", request.Colony), On = request.On, Act = request.Act,
            Colony = request.Colony, Into = request.Into, QueenKept = request.QueenKept ?? QueenLeft(request, standing),
        });
        return draft.Finish(now);
    }

    // Where none was killed nobody knows which one is left, so the books are not asked.
    private static QueenId? QueenLeft(Combine request, IStanding standing) => request.Killed switch
    {
        KilledQueen.OfTheOneThatEnds => standing.QueenOf(request.Into),
        KilledQueen.OfTheOneThatGoesOn => standing.QueenOf(request.Colony),
        _ => null,
    };
}
