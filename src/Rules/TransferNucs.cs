using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>Nucs are transferred from their nuc boxes into full ones. Each stays the same colony on the same spot.</summary>
public sealed record TransferNucs : ActRequest
{
    /// <summary>The nucs, each named once.</summary>
    public required IReadOnlyList<ColonyId> Nucs { get; init; }

    /// <summary>What they are housed in now.</summary>
    public Housing Into { get; init; } = Housing.Single;

    /// <summary>One transfer for each nuc.</summary>
    public static Outcome Decide(TransferNucs request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        for (var i = 0; i < request.Nucs.Count; i++)
        {
            var nuc = request.Nucs[i];
            draft.Known(nuc, $"nucs[{i}]");
            draft.Once(nuc, $"nucs[{i}]", "nuc");
            draft.Add(
                new NucTransferred { Id = request.IdOf("transferred", nuc), On = request.On, Act = request.Act, Colony = nuc, Into = request.Into },
                named: ("colony", $"nucs[{i}]"));
        }

        return draft.Finish(now);
    }
}
