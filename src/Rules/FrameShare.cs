using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>Frames that go to one colony.</summary>
public sealed record FrameShare
{
    /// <summary>The colony that gets them.</summary>
    public required ColonyId To { get; init; }

    /// <summary>How many, above 0, at most 40.</summary>
    public required decimal Frames { get; init; }

    /// <summary>Frames of what.</summary>
    public required FramesOf Of { get; init; }
}

/// <summary>What two acts have in common: the queen is killed, the frames go here and there.</summary>
internal static class SharingOut
{
    /// <param name="from">The colony that is given up.</param>
    /// <param name="field">Where the request names that colony.</param>
    public static void Add(Draft draft, ActRequest request, IStanding standing, ColonyId from, string field, bool killQueen, string? why, IReadOnlyList<FrameShare> frames)
    {
        if (killQueen)
        {
            draft.Add(
                new QueenKilled { Id = request.IdOf("queen killed", from), On = request.On, Act = request.Act, Colony = from, Queen = standing.QueenOf(from), Why = why },
                named: ("colony", field));
        }

        for (var i = 0; i < frames.Count; i++)
        {
            var share = frames[i];
            draft.Known(share.To, $"frames[{i}].to");
            draft.Add(
                new FramesMoved { Id = request.IdOf($"frames {i}", from), On = request.On, Act = request.Act, Colony = from, To = share.To, Frames = share.Frames, Of = share.Of },
                $"frames[{i}].", ("colony", field));
        }
    }
}
