using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>A paper page is caught up on: one yard, one day, one row a spot.</summary>
public sealed record VisitPage : ActRequest
{
    /// <summary>The yard.</summary>
    public required YardId Yard { get; init; }

    /// <summary>The rows that say something; the colony of each stands there by the books or is named.</summary>
    public required IReadOnlyList<PageRow> Rows { get; init; }

    /// <summary>Row by row, what was seen and done.</summary>
    public static Outcome Decide(VisitPage request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        draft.Known(request.Yard, "yard");
        for (var i = 0; i < request.Rows.Count; i++)
        {
            var (row, at) = (request.Rows[i], $"rows[{i}].");
            if (row.IsBlank || draft.ColonyAt(request.Yard, row.Spot, row.Colony, at) is not { } colony) continue;
            draft.Once(colony, row.Colony is null ? $"{at}spot" : $"{at}colony", "colony");
            row.AddTo(draft, request, colony, at);
        }

        return draft.Finish(now);
    }
}
