using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>What the crew does with colonies and queens: it changes the truth and writes it down, entry by entry.</summary>
internal sealed class Hand(World world)
{
    private readonly Pen _pen = world.Pen;

    /// <summary>A colony begins on a spot. Its queen is named where the books know her.</summary>
    public DemoColony Establish(DemoYard yard, string spot, HowEstablished how, Housing housing, string number, DemoQueen? queen, bool above = false, decimal? bees = null, decimal? brood = null, string? source = null, IReadOnlyList<(DemoColony Maker, decimal Bees, decimal Brood)>? makers = null)
    {
        var colony = new DemoColony { Id = new ColonyId(_pen.NewId("colony")), Number = number, Yard = yard, Spot = spot, Above = above, Housing = housing, Queen = queen };
        foreach (var (maker, frames, brooded) in makers ?? [])
        {
            _pen.Write(new SplitFrom { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = maker.Id, Into = colony.Id, FramesOfBees = frames, FramesOfBrood = brooded });
            maker.Vigour -= 0.06;
        }

        _pen.Write(new ColonyEstablished
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Number = number, How = how, At = new Spot(yard.Id, spot), Above = above, Housing = housing,
            Queen = queen is { Known: true } ? queen.Id : null, FramesOfBees = bees, FramesOfBrood = brood, Source = source,
        });
        if (queen is not null) queen.LastSeen = _pen.Day;
        Stand(colony);
        return colony;
    }

    /// <summary>A colony is set on another spot.</summary>
    public void Move(DemoColony colony, DemoYard yard, string spot, bool above = false, Spot? saidFrom = null)
    {
        var from = new Spot(colony.Yard.Id, colony.Spot);
        var to = new Spot(yard.Id, spot);
        Leave(colony);
        (colony.Yard, colony.Spot, colony.Above) = (yard, spot, above);
        Stand(colony);
        _pen.Write(new Moved { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, To = to, From = saidFrom ?? (from == to ? null : from), Above = above });
    }

    public void FoundDead(DemoColony colony, string? cause, DateOnly? after = null)
    {
        _pen.Write(new FoundDead { Id = _pen.Next(), On = new Occurred(_pen.Day, after), Act = _pen.Now, Colony = colony.Id, Cause = cause });
        Leave(colony);
        colony.Gone = true;
    }

    public void GiveUp(DemoColony colony, string why)
    {
        _pen.Write(new Ended { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Why = why });
        Leave(colony);
        colony.Gone = true;
    }

    public void Sell(DemoColony colony, string to)
    {
        _pen.Write(new Sold { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, To = to });
        Leave(colony);
        colony.Gone = true;
    }

    /// <summary>One colony goes into another; the queen of the one that goes on is kept.</summary>
    public void Combine(DemoColony colony, DemoColony into)
    {
        if (colony.Queen is not null) Kill(colony, "not the one to keep");
        _pen.Write(new Combined { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Into = into.Id, QueenKept = into.Queen is { Known: true } kept ? kept.Id : null });
        Leave(colony);
        colony.Gone = true;
        into.Vigour += 0.1;
    }

    public void Kill(DemoColony colony, string why)
    {
        _pen.Write(new QueenKilled { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Queen = colony.Queen is { Known: true } queen ? queen.Id : null, Why = why });
        colony.Queen = null;
    }

    public void FindQueenless(DemoColony colony, string? note = null)
    {
        _pen.Write(new FoundQueenless { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Queen = colony.Queen is { Known: true } queen ? queen.Id : null, Note = note });
        colony.Queen = null;
    }

    /// <summary>A cell of a batch; the virgin in it gets her name with it.</summary>
    public void GiveCell(DemoColony colony, DemoQueen virgin, string batch, DateOnly grafted)
    {
        _pen.Write(new QueenRaised
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Queen = virgin.Id, Name = virgin.Name, Mother = virgin.Mother?.Id, From = RaisedFrom.Graft, Grafted = grafted, Batch = batch,
        });
        _pen.Write(new QueenCellGiven { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Queen = virgin.Id, Batch = batch });
        colony.Cell = virgin;
    }

    /// <summary>A young queen is found laying, or is not there.</summary>
    public void Accept(DemoColony colony, DemoQueen queen, bool accepted)
    {
        _pen.Write(new QueenAccepted { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Queen = queen.Id, Colony = colony.Id, Accepted = accepted });
        (colony.Queen, colony.Cell) = (accepted ? queen : null, null);
        if (accepted) queen.LastSeen = _pen.Day;
    }

    public void Mark(DemoQueen queen)
    {
        queen.Mark = new QueenMark(QueenMark.DueFor(queen.Born.Year), queen.Name is { } name && name.Contains('-') ? name[(name.LastIndexOf('-') + 1)..] : null);
        _pen.Write(new QueenMarked { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Queen = queen.Id, Mark = queen.Mark });
    }

    /// <summary>A mated queen comes out of her mating nuc and into a colony.</summary>
    public void Requeen(DemoColony colony, DemoColony nuc)
    {
        var queen = nuc.Queen!;
        _pen.Write(new QueenBanked { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Queen = queen.Id, Colony = nuc.Id, Note = "caged for the day" });
        nuc.Queen = null;
        _pen.Write(new Requeened
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Queen = queen.Id,
            OldQueen = colony.Queen is null ? OldQueen.NoneThere : world.Chance.Happens(0.9) ? OldQueen.Killed : OldQueen.NotFound,
            Old = colony.Queen is { Known: true } old ? old.Id : null,
        });
        colony.Queen = queen;
        queen.LastSeen = _pen.Day;
    }

    /// <summary>The bees have replaced their queen. The new one is unmarked, and called after the day on which she was seen.</summary>
    public void Supersede(DemoColony colony, DateOnly born, bool sayAfter)
    {
        var old = colony.Queen!;
        var young = world.NewQueen($"{old.Name}d", born, old);
        _pen.Write(new QueenRaised
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Queen = young.Id, Name = young.Name, Mother = old.Id, MotherIs = Certainty.Supposed, From = RaisedFrom.Supersedure,
        });
        _pen.Write(new SupersedureSeen
        {
            Id = _pen.Next(), On = new Occurred(_pen.Day, sayAfter ? old.LastSeen : null), Act = _pen.Now, Colony = colony.Id, Queen = young.Id, Old = old.Id,
        });
        colony.Queen = young;
        young.LastSeen = _pen.Day;
    }

    /// <summary>Frames go to a neighbour.</summary>
    public void Share(DemoColony from, DemoColony to, decimal frames, FramesOf of) =>
        _pen.Write(new FramesMoved { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = from.Id, To = to.Id, Frames = frames, Of = of });

    public void Feed(DemoColony colony, string feed, Quantity amount) =>
        _pen.Write(new Fed { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Feed = feed, Amount = amount });

    public void Note(DemoColony colony, string text, string? about = null) =>
        _pen.Write(new Noted { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Text = text, About = about });

    private static void Stand(DemoColony colony)
    {
        colony.Yard.Colonies.Add(colony);
        if (!colony.Above) colony.Yard.On[colony.Spot] = colony;
    }

    private static void Leave(DemoColony colony)
    {
        colony.Yard.Colonies.Remove(colony);
        if (!colony.Above && colony.Yard.On.GetValueOrDefault(colony.Spot) == colony) colony.Yard.On.Remove(colony.Spot);
    }
}
