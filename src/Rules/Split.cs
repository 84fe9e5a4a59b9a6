using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>A colony that bees and brood are taken from.</summary>
public sealed record Maker
{
    /// <summary>The colony.</summary>
    public required ColonyId Colony { get; init; }

    /// <summary>Frames of bees that went, 0 to 60.</summary>
    public decimal? FramesOfBees { get; init; }

    /// <summary>Frames of brood that went, 0 to 40.</summary>
    public decimal? FramesOfBrood { get; init; }
}

/// <summary>A queen cell that is given.</summary>
public sealed record Cell
{
    /// <summary>The queen in it; where no id is given, one is derived from the act.</summary>
    public QueenId? Queen { get; init; }

    /// <summary>Batch of cells, at most 60 characters.</summary>
    public string? Batch { get; init; }

    /// <summary>The mother of the queen in it.</summary>
    public QueenId? Mother { get; init; }

    /// <summary>The day of grafting.</summary>
    public DateOnly? Grafted { get; init; }
}

/// <summary>A colony is made out of bees and brood of one or more others.</summary>
public sealed record Split : ActRequest
{
    /// <summary>The colonies it is made of, at least one, each named once.</summary>
    public required IReadOnlyList<Maker> Makers { get; init; }

    /// <summary>The new colony; where no id is given, one is derived from the act.</summary>
    public ColonyId? Colony { get; init; }

    /// <summary>The outfit's number or name for the new colony, 1 to 40 characters.</summary>
    public required string Number { get; init; }

    /// <summary>It is a nuc.</summary>
    public bool IsNuc { get; init; }

    /// <summary>The spot it is set on.</summary>
    public Spot? At { get; init; }

    /// <summary>It stands above another colony over a screen board.</summary>
    public bool Above { get; init; }

    /// <summary>What it is housed in.</summary>
    public Housing? Housing { get; init; }

    /// <summary>The queen that goes with it, where she is known as an individual.</summary>
    public QueenId? Queen { get; init; }

    /// <summary>The queen cell that it is given.</summary>
    public Cell? Cell { get; init; }

    /// <summary>The colony established, bees and brood taken from each maker, the cell given.</summary>
    public static Outcome Decide(Split request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        var colony = request.Colony ?? new ColonyId(request.Derived("colony"));
        if (request.At is { } at) draft.Known(at.Yard, "at");
        // First, since what follows happens to it.
        draft.Add(new ColonyEstablished
        {
            Id = request.IdOf("established", colony), On = request.On, Act = request.Act, Colony = colony, Number = request.Number,
            How = request.IsNuc ? HowEstablished.Nuc : HowEstablished.Split, At = request.At, Above = request.Above, Housing = request.Housing, Queen = request.Queen,
            FramesOfBees = Sum(request.Makers, maker => maker.FramesOfBees), FramesOfBrood = Sum(request.Makers, maker => maker.FramesOfBrood),
        });
        if (request.Makers.Count == 0) draft.Refuse(Refusals.Missing, "makers", "Say at least one colony that its bees and brood came from.");
        for (var i = 0; i < request.Makers.Count; i++) Take(draft, request, request.Makers[i], colony, $"makers[{i}].");
        if (request.Cell is { } cell) Give(draft, request, cell, colony);
        return draft.Finish(now);
    }

    private static void Take(Draft draft, Split request, Maker maker, ColonyId colony, string at)
    {
        draft.Once(maker.Colony, $"{at}colony", "maker");
        // A colony made of itself is refused as that, whether the books know it or not.
        if (maker.Colony != colony) draft.Known(maker.Colony, $"{at}colony");
        draft.Add(
            new SplitFrom
            {
                Id = request.IdOf("split from", maker.Colony), On = request.On, Act = request.Act,
                Colony = maker.Colony, Into = colony, FramesOfBees = maker.FramesOfBees, FramesOfBrood = maker.FramesOfBrood,
            },
            at, ("into", $"{at}colony"));
    }

    private static void Give(Draft draft, Split request, Cell cell, ColonyId colony)
    {
        var queen = cell.Queen ?? new QueenId(request.Derived("queen in the cell"));
        draft.Known(cell.Mother, "cell.mother");
        if (cell.Mother is not null || cell.Grafted is not null)
        {
            draft.Add(
                new QueenRaised
                {
                    Id = request.IdOf("raised", queen), On = request.On, Act = request.Act, Queen = queen, Mother = cell.Mother,
                    MotherIs = cell.Mother is null ? Certainty.Unknown : Certainty.Known, From = cell.Grafted is null ? RaisedFrom.Cell : RaisedFrom.Graft,
                    Grafted = cell.Grafted, Batch = cell.Batch,
                },
                "cell.");
        }

        draft.Add(
            new QueenCellGiven { Id = request.IdOf("cell given", colony), On = request.On, Act = request.Act, Colony = colony, Queen = queen, Batch = cell.Batch },
            "cell.", ("colony", "colony"));
    }

    // Only where every maker's share is known is the sum; part of it would say that the new colony is smaller than it is.
    private static decimal? Sum(IReadOnlyList<Maker> makers, Func<Maker, decimal?> share) =>
        makers.Count > 0 && makers.All(maker => share(maker) is not null) ? makers.Sum(maker => share(maker)) : null;
}
