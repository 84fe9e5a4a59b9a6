using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>From the first look in March to the splits in May.</summary>
internal sealed class Spring(World world, Hand hand, Looks looks)
{
    private static readonly string?[] Causes = ["starved beside food", "small cluster", "queenless going in, I suppose", "mites, I suppose", "mice got in", null, null];

    private readonly Pen _pen = world.Pen;
    private readonly Chance _chance = world.Chance;

    public void Plan()
    {
        if (world.Season > world.FirstSeason) world.Round(world.Day(3, 6), 12, MarchLook);
        world.Round(world.Day(4, 10), 14, Inspect);
        world.Round(world.Day(5, 2), 12, Split);
        world.Round(world.Day(6, 2), 4, SellNucs);
        MoveYards();
    }

    /// <summary>A colony that died in the winter is found dead; some of the crew say when they last heard it.</summary>
    public bool FindDead(DemoColony colony)
    {
        if (colony.Dies is not { } died || died > _pen.Day) return false;
        hand.FoundDead(colony, _chance.Of(Causes), _chance.Happens(0.1) ? died.AddDays(-_chance.Between(1, 9)) : null);
        return true;
    }

    private void MarchLook(DemoYard yard)
    {
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in yard.Walk())
        {
            if (FindDead(colony)) continue;
            colony.Dies = null;
            if (looks.Lift(colony) == Heft.Light) hand.Feed(colony, "sugar block", new Quantity(1, "kg"));
            if (yard.Index % 5 == 3)
                _pen.Write(new SupplementGiven { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Supplement = "pollen patty", Amount = new Quantity(1, "piece") });
        }
    }

    private void Inspect(DemoYard yard)
    {
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard), Late());
        foreach (var colony in yard.Walk())
        {
            if (colony.Gone) continue;
            if (world.Season > world.FirstSeason && !colony.Told && colony.Queen is not null && _chance.Happens(0.02)) Dud(colony);
            if (colony.Gone) continue;
            if (colony.Supersedes && colony.Queen is { Known: true } old && old.LastSeen < _pen.Day)
                hand.Supersede(colony, old.LastSeen.AddDays(20), _chance.Happens(0.5));
            colony.Supersedes = false;
            if (colony.Housing == Housing.NucBox) Transfer(colony, yard);
            colony.Vigour = Math.Clamp(colony.Vigour + _chance.About(0, 0.1), 0.5, 1.35);
            looks.Into(colony);
        }
    }

    /// <summary>A nuc is transferred into a full box; one above another colony is set down on a spot of its own first.</summary>
    public void Transfer(DemoColony colony, DemoYard yard)
    {
        if (colony.Above)
        {
            if (World.Empty(yard).FirstOrDefault() is not { } spot) return;
            hand.Move(colony, yard, spot);
        }

        _pen.Write(new NucTransferred { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Into = Housing.Single });
        colony.Housing = Housing.Single;
    }

    /// <summary>A failing queen in spring: her colony is combined into the neighbour.</summary>
    private void Dud(DemoColony colony)
    {
        var neighbour = colony.Yard.Walk().FirstOrDefault(other => other is { Full: true, Queen: not null, Told: false } && other != colony);
        if (neighbour is null) return;
        _pen.Write(new Inspected { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, FramesOfBees = 2, Queen = QueenFinding.DroneLayer, EggsSeen = true });
        _pen.Write(new TakenOut { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Why = "dud: drone layer" });
        hand.Combine(colony, neighbour);
    }

    private void Split(DemoYard yard)
    {
        var wanted = Wanted(yard);
        var strong = yard.Walk().Where(colony => colony is { Full: true, Queen: not null, Told: false, Vigour: > 0.85 }).ToList();
        if (wanted <= 0 || strong.Count == 0) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        for (var i = 0; i < wanted && i < strong.Count; i++)
        {
            var maker = strong[i];
            List<(DemoColony, decimal, decimal)> makers = [(maker, _chance.Halves(2.5, 0.5, 1, 4), _chance.Halves(2, 0.5, 1, 3))];
            if (strong.Count > wanted + i && _chance.Happens(0.3)) makers.Add((strong[wanted + i], 1, 1));
            // Now and then a nuc starts above its maker, on a screen board.
            var above = _chance.Happens(0.15) && !yard.Colonies.Any(other => other.Above && other.Spot == maker.Spot);
            var target = _chance.Happens(0.2) ? Roomiest() : yard;
            var spot = above ? maker.Spot : World.Empty(target).FirstOrDefault();
            if (spot is null) return;
            var nuc = hand.Establish(above ? yard : target, spot, HowEstablished.Split, Housing.NucBox, world.NextNucNumber(), null, above, 3, 2, makers: makers);
            nuc.Vigour = 0.9;
        }
    }

    /// <summary>Enough that the outfit goes into the winter at its size, losses of the summer allowed for.</summary>
    private int Wanted(DemoYard yard) => (int)Math.Round(world.Options.Colonies * 1.05 / world.Yards.Count) - yard.Colonies.Count(colony => !colony.Mating);

    private DemoYard Roomiest() => world.Yards.MaxBy(yard => yard.Spots.Count - yard.On.Count)!;

    private void SellNucs(DemoYard yard)
    {
        if (yard.Index % 7 != 5) return;
        var nucs = yard.Walk().Where(colony => colony is { Housing: Housing.NucBox, Queen: not null, Told: false }).Take(2).ToList();
        if (nucs.Count == 0) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var nuc in nucs) hand.Sell(nuc, "a beginner in the next valley");
    }

    /// <summary>Two yards are given up and their colonies moved, with their spots' numbers, to other land.</summary>
    private void MoveYards()
    {
        var many = world.Options.Yards ?? Math.Max(4, world.Options.Colonies / 30);
        if (world.Season == world.Running - 2) world.On(world.Day(4, 2), () => MoveYard(5 % many, many, many));
        if (world.Season == world.Running - 1) world.On(world.Day(4, 5), () => MoveYard(11 % many, many + 1, many));
    }

    private void MoveYard(int index, int to, int yards)
    {
        if (world.Yards.FirstOrDefault(yard => yard.Index == index) is not { MatesQueens: false } old) return;
        var fresh = new Opening(world, hand).Open(to, old.Spots.Count, yards);
        _pen.Begin(world.Crew[0], _pen.Visit(old));
        foreach (var colony in old.Walk()) hand.Move(colony, fresh, colony.Spot, colony.Above);
        _pen.Write(new YardClosed { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Yard = old.Id, Why = "the meadow is ploughed up" });
        world.Yards.Remove(old);
    }

    /// <summary>Now and then a visit reaches the books days later.</summary>
    private DateOnly? Late() => _chance.Happens(0.06) ? _pen.Day.AddDays(_chance.Between(3, 20)) : null;
}
