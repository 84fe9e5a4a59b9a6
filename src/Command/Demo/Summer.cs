using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>Supers on, swarms, honey off.</summary>
internal sealed class Summer(World world, Hand hand, Looks looks, Spring spring)
{
    private readonly Pen _pen = world.Pen;
    private readonly Chance _chance = world.Chance;
    private int _swarmQueens;

    public void Plan()
    {
        world.Round(world.Day(6, 6), 12, JuneVisit);
        world.Round(world.Day(7, 3), 10, FirstHoney);
        world.Round(world.Day(7, 8), 1, Cage);
        world.Round(world.Day(8, 1), 1, Release);
    }

    private void JuneVisit(DemoYard yard)
    {
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in yard.Walk())
        {
            if (colony.Gone || colony.Mating || colony.Cell is not null) continue;
            if (colony is { Full: true, Told: false, Vigour: > 0.9, Queen: not null } && !world.Breeders.Any(line => line.Contains(colony.Queen)) && _chance.Happens(0.04))
            {
                Swarm(colony);
                continue;
            }

            if (colony.Queen is not null && !colony.Full) Settle(colony, yard);
            if (colony.Gone) continue;
            looks.Into(colony);
            if (!colony.Full || colony.Vigour < 0.7) continue;
            colony.Supers = _chance.Between(1, 2);
            _pen.Write(new Supered { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Supers = colony.Supers });
        }
    }

    /// <summary>A nuc with a laying queen gets its full box, or, where there is no spot for it, goes down into the colony below.</summary>
    private void Settle(DemoColony nuc, DemoYard yard)
    {
        spring.Transfer(nuc, yard);
        if (nuc is not { Above: true } || yard.On.GetValueOrDefault(nuc.Spot) is not { Told: false } below) return;
        if (below.Queen is not null) hand.Kill(below, "the young one from above takes her place");
        var queen = nuc.Queen!;
        nuc.Queen = null;
        below.Queen = queen;
        hand.Combine(nuc, below);
    }

    /// <summary>A colony has swarmed. Some swarms are taken, with the old queen; the bees raise a daughter of hers.</summary>
    private void Swarm(DemoColony colony)
    {
        var old = colony.Queen!;
        hand.FindQueenless(colony, "swarmed, one good cell left");
        colony.Supersedes = false;
        var swarmed = _pen.Day;
        if (_chance.Happens(0.5) && World.Empty(colony.Yard).FirstOrDefault() is { } spot)
            hand.Establish(colony.Yard, spot, HowEstablished.Swarm, Housing.Single, world.NextColonyNumber(), old, bees: 5).Vigour = 0.9;
        colony.Told = true; // no cell is given to it while its own virgin is out
        world.On(swarmed.AddDays(30), () => Daughter(colony, old, swarmed));
    }

    private void Daughter(DemoColony colony, DemoQueen old, DateOnly swarmed)
    {
        if (colony.Gone) return;
        colony.Told = false;
        _pen.Begin(world.CrewAt(colony.Yard), _pen.Visit(colony.Yard));
        if (_chance.Happens(0.2))
        {
            hand.Note(colony, "the young one has not come back", "queen");
            return;
        }

        var young = world.NewQueen($"{world.Season % 100:00}S-{++_swarmQueens:00}", swarmed.AddDays(6), old.Known ? old : null);
        _pen.Write(new QueenRaised
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Queen = young.Id, Name = young.Name, Mother = old.Known ? old.Id : null,
            MotherIs = old.Known ? Certainty.Supposed : Certainty.Unknown, From = RaisedFrom.SwarmCell, Born = new Occurred(swarmed.AddDays(9), swarmed),
        });
        hand.Accept(colony, young, true);
        looks.Into(colony);
    }

    private void FirstHoney(DemoYard yard)
    {
        if (yard.Index % 3 == 2) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in yard.Walk().Where(colony => colony is { Full: true, Supers: > 0 } && _chance.Happens(0.6))) Harvest(colony, 1);
    }

    public void Harvest(DemoColony colony, int supers)
    {
        _pen.Write(new Harvested
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Supers = supers, Honey = _chance.Happens(0.4) ? new Quantity(Math.Round((decimal)Math.Max(2, _chance.About(11, 3) + Genes.Honey(colony.Queen)) * supers, 1), "kg") : null,
        });
    }

    /// <summary>One yard tries a break in the brood: queens caged for three weeks and a half.</summary>
    private void Cage(DemoYard yard)
    {
        if (yard.Index != 9) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in yard.Walk().Where(colony => colony is { Full: true, Queen.Known: true, Told: false }).Take(8))
            _pen.Write(new QueenCaged { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Queen = colony.Queen!.Id });
    }

    private void Release(DemoYard yard)
    {
        if (yard.Index != 9) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in yard.Walk().Where(colony => colony is { Full: true, Queen.Known: true, Told: false }).Take(8))
            _pen.Write(new QueenReleased { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Queen = colony.Queen!.Id });
    }
}
