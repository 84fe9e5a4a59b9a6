using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>One colony that gets another queen.</summary>
public sealed record RequeenRow
{
    /// <summary>The number of the spot it stands on.</summary>
    public string? Spot { get; init; }

    /// <summary>The colony, where the spot alone does not say which.</summary>
    public ColonyId? Colony { get; init; }

    /// <summary>The new queen. One that the books do not know is new; where no id is given, one is derived from the act.</summary>
    public QueenId? Queen { get; init; }

    /// <summary>The outfit's number or name for a queen that is new, at most 40 characters.</summary>
    public string? Name { get; init; }

    /// <summary>The mark that she was given.</summary>
    public QueenMark? Mark { get; init; }

    /// <summary>What became of the queen before her.</summary>
    public required OldQueen OldQueen { get; init; }
}

/// <summary>Where the new queens of a batch were raised.</summary>
public sealed record RaisedBatch
{
    /// <summary>Their mother.</summary>
    public QueenId? Mother { get; init; }

    /// <summary>How surely the mother is known.</summary>
    public Certainty MotherIs { get; init; } = Certainty.Known;

    /// <summary>How they were raised.</summary>
    public RaisedFrom From { get; init; } = RaisedFrom.Unknown;

    /// <summary>When they emerged.</summary>
    public Occurred? Born { get; init; }

    /// <summary>The day of grafting.</summary>
    public DateOnly? Grafted { get; init; }

    /// <summary>The batch, in the outfit's words, at most 60 characters.</summary>
    public string? Batch { get; init; }
}

/// <summary>Where the new queens of a batch were bought.</summary>
public sealed record BoughtBatch
{
    /// <summary>The seller, at most 200 characters.</summary>
    public string? Seller { get; init; }

    /// <summary>Their mother, where she is in the books.</summary>
    public QueenId? Mother { get; init; }

    /// <summary>When they emerged, by the seller's word.</summary>
    public Occurred? Born { get; init; }
}

/// <summary>A batch of queens is given to colonies of a yard.</summary>
public sealed record RequeenYard : ActRequest
{
    /// <summary>The yard.</summary>
    public required YardId Yard { get; init; }

    /// <summary>The colonies, each named once, with the queen that each gets.</summary>
    public required IReadOnlyList<RequeenRow> Rows { get; init; }

    /// <summary>How the new ones among the queens were raised.</summary>
    public RaisedBatch? Raised { get; init; }

    /// <summary>How the new ones among the queens were bought, instead. With neither, they were raised nobody knows how.</summary>
    public BoughtBatch? Bought { get; init; }

    /// <summary>For each colony: the queen raised or bought where she is new, marked where she was, and given.</summary>
    public static Outcome Decide(RequeenYard request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        draft.Known(request.Yard, "yard");
        draft.Known(request.Raised?.Mother, "raised.mother");
        draft.Known(request.Bought?.Mother, "bought.mother");
        if (request.Raised is not null && request.Bought is not null)
            draft.Refuse(Refusals.NamedTwice, "bought", "The batch was raised or bought, not both: take one of the two out.");
        for (var i = 0; i < request.Rows.Count; i++) Give(draft, request, standing, request.Rows[i], $"rows[{i}].");
        return draft.Finish(now);
    }

    private static void Give(Draft draft, RequeenYard request, IStanding standing, RequeenRow row, string at)
    {
        if (draft.ColonyAt(request.Yard, row.Spot, row.Colony, at) is not { } colony) return;
        var queen = row.Queen ?? new QueenId(request.Derived($"queen for {colony}"));
        draft.Once(colony, row.Colony is null ? $"{at}spot" : $"{at}colony", "colony");
        if (row.Queen is not null) draft.Once(queen, $"{at}queen", "queen");
        if (!standing.Knows(queen)) draft.Add(Begin(request, queen, row.Name), request.Bought is null ? "raised." : "bought.", ("name", $"{at}name"), ("queen", $"{at}queen"));
        if (row.Mark is { } mark)
            draft.Add(new QueenMarked { Id = request.IdOf("marked", queen), On = request.On, Act = request.Act, Queen = queen, Mark = mark }, at);
        draft.Add(
            new Requeened
            {
                Id = request.IdOf("requeened", colony), On = request.On, Act = request.Act, Colony = colony, Queen = queen,
                OldQueen = row.OldQueen, Old = row.OldQueen == OldQueen.NoneThere ? null : standing.QueenOf(colony),
            },
            at, ("old", $"{at}queen"));
    }

    private static QueenEntry Begin(RequeenYard request, QueenId queen, string? name)
    {
        if (request.Bought is { } bought)
        {
            return new QueenBought
            {
                Id = request.IdOf("bought", queen), On = request.On, Act = request.Act, Queen = queen, Name = name, Seller = bought.Seller, Mother = bought.Mother, Born = bought.Born,
            };
        }

        var raised = request.Raised ?? new RaisedBatch();
        return new QueenRaised
        {
            Id = request.IdOf("raised", queen), On = request.On, Act = request.Act, Queen = queen, Name = name,
            Mother = raised.Mother, MotherIs = raised.Mother is null ? Certainty.Unknown : raised.MotherIs,
            From = raised.From, Born = raised.Born, Grafted = raised.Grafted, Batch = raised.Batch,
        };
    }
}
