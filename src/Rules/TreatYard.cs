using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>'Half a dose on all of yard 7 but spots 4 and 9': one dose for each colony that stands there.</summary>
public sealed record TreatYard : ActRequest
{
    /// <summary>The yard.</summary>
    public required YardId Yard { get; init; }

    /// <summary>The numbers of the spots that were left out, with every colony on them.</summary>
    public IReadOnlyList<string> Except { get; init; } = [];

    /// <summary>The dose that each colony had.</summary>
    public required Dose Dose { get; init; }

    /// <summary>One treatment for each colony, in the order of the spots.</summary>
    public static Outcome Decide(TreatYard request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        var tenants = draft.TenantsOf(request.Yard, "yard");
        for (var i = 0; i < request.Except.Count && tenants.Count > 0; i++)
        {
            // A slip in the number would put a dose on a colony that had none, so it is not passed over.
            if (!tenants.Any(tenant => tenant.Spot.Number == request.Except[i]))
                draft.Refuse(Refusals.NobodyThere, $"except[{i}]", $"By the books nobody stands on spot {request.Except[i]} that day: mend the number or take it out of the list.");
        }

        foreach (var tenant in tenants.Where(tenant => !request.Except.Contains(tenant.Spot.Number)))
            request.Dose.AddTo(draft, request, tenant.Colony, "dose.");
        return draft.Finish(now);
    }
}
