using ColonyLineage.Entries;

namespace ColonyLineage.Simulation;

/// <summary>What is done to colonies and to their queens.</summary>
public sealed partial class Generator
{
    private List<(int Weight, Action Act)> Acts() =>
    [
        (8, Inspect), (7, TreatOne), (5, TreatYard), (5, () => Split(1)), (3, () => Split(_chance.Between(2, 3))), (4, Combine), (3, CombineBack), (2, Diamond),
        (5, Move), (4, Requeen), (3, GiveCell), (4, Supersedure), (2, Introduce), (2, Kill), (2, Queenless), (5, MoveFrames), (2, Die), (1, Sell), (1, GiveUp),
        (1, TakeOut), (4, Note), (3, Accept), (6, OfAQueen), (1, CageOrRelease), (4, Settings), (1, Line), (2, FixSpot), (4, Plain), (2, Owe), (2, Establish), (2, Contradict),
        (5, MeasureColony),
    ];

    private void Inspect()
    {
        var colony = Colony();
        for (var looks = _chance.Percent(80) ? 1 : 2; looks > 0; looks--)
            Record(new Inspected
            {
                Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, FramesOfBees = Frames(10), FramesOfBrood = Frames(6),
                EggsSeen = _chance.Percent(40) ? _chance.Percent(70) : null,
                Queen = _chance.Percent(60) ? _chance.Of(Enum.GetValues<QueenFinding>().Append(QueenFinding.Seen).Append(QueenFinding.Queenright).ToArray()) : null,
                MarkSeen = _chance.Percent(30) ? new QueenMark(_chance.Of(Enum.GetValues<MarkColour>())) : null,
                BroodPattern = _chance.Percent(40) ? _chance.Between(1, 5) : null,
                Temper = _chance.Between(1, 5),
            });
    }

    private void TreatOne() => Treat(Colony(), Course(), _chance.Either(0.5m, 1m, 1m, 0.25m));

    private void TreatYard()
    {
        var (yard, course, doses) = (Yard(), Course(), _chance.Either(0.5m, 1m));
        foreach (var colony in _colonies.Where(colony => colony.Alive && colony.At?.Yard == yard).Take(4).ToList())
            if (!_chance.Percent(15))
                Treat(colony, course, doses);
    }

    private void Treat(MadeColony colony, string course, decimal doses) =>
        Record(new Treated { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Course = course, Doses = doses, SupersOn = _chance.Percent(20) ? true : null });

    private void Split(int makers)
    {
        // Paths are enumerated one by one by the oracle: a history stays small enough for that.
        if (_joined > 11) return;
        var from = new List<MadeColony>();
        for (var i = 0; i < makers; i++)
            if (Colony() is var maker && !from.Contains(maker))
                from.Add(maker);
        var nuc = NewColony();
        var first = _chance.Percent(50);
        if (first) Establish(nuc, _chance.Either(HowEstablished.Split, HowEstablished.Nuc), _chance.Percent(10));
        foreach (var maker in from)
        {
            _joined++;
            Record(new SplitFrom { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = maker.Id, Into = nuc.Id, FramesOfBees = Frames(5), FramesOfBrood = Frames(3) });
        }

        if (!first && _chance.Percent(92)) Establish(nuc, HowEstablished.Split);
        nuc.Maker = from[0];
    }

    private void Combine()
    {
        var colony = Colony();
        if (Other(colony) is { } into) CombineInto(colony, into);
    }

    private void CombineBack()
    {
        if (_colonies.FirstOrDefault(colony => colony.Alive && colony.Maker is { Alive: true }) is { } nuc) CombineInto(nuc, nuc.Maker!);
    }

    private void Diamond()
    {
        if (_joined > 9) return;
        Split(1);
        var nuc = _colonies[^1];
        if (nuc.Maker is not { } maker) return;
        StartAct();
        Treat(_chance.Percent(50) ? nuc : maker, "T", 1m);
        if (_chance.Percent(40)) Treat(maker, "T", 0.5m);
        StartAct();
        CombineInto(nuc, maker);
    }

    private void CombineInto(MadeColony colony, MadeColony into)
    {
        if (_joined > 12) return;
        _joined++;
        var kept = _chance.Percent(50) ? null : _chance.Percent(60) ? colony.Queen : into.Queen;
        Record(new Combined { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Into = into.Id, QueenKept = kept?.Id });
        colony.Alive = false;
        if (kept is not null) Seat(kept, into);
    }

    private void Move()
    {
        var colony = Colony();
        var to = Spot();
        Spot? from = _chance.Percent(40) ? colony.At : _chance.Percent(10) ? Spot() : null;
        Record(new Moved { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, To = to, From = from == to ? null : from, Above = _chance.Percent(15) });
        colony.At = to;
    }

    private void Requeen()
    {
        var colony = Colony();
        var queen = Queen();
        var old = colony.Queen is { } there && there != queen && _chance.Percent(70) ? there : null;
        Record(new Requeened { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Queen = queen.Id, OldQueen = _chance.Of(Enum.GetValues<OldQueen>()), Old = old?.Id });
        Seat(queen, colony);
    }

    private void GiveCell()
    {
        var colony = Colony();
        var queen = _chance.Percent(90) ? NewQueen() : Queen();
        Record(new QueenCellGiven { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Queen = queen.Id, Batch = "first" });
        if (colony.Queen is null) Seat(queen, colony);
        else queen.In = colony;
    }

    private void Supersedure()
    {
        var colony = Colony();
        var queen = _chance.Percent(85) ? NewQueen() : Queen();
        var old = colony.Queen is { } there && there != queen && _chance.Percent(60) ? there : null;
        Record(new SupersedureSeen
        {
            Id = Id(), On = _chance.Percent(40) ? Since() : On(), Act = _act, Order = Order(), Colony = colony.Id, Queen = queen.Id, Old = old?.Id, OldStillThere = _chance.Percent(12),
        });
        Seat(queen, colony);
    }

    private void Introduce()
    {
        var (colony, queen) = (Colony(), Queen());
        Record(new QueenIntroduced { Id = Id(), On = On(), Act = _act, Order = Order(), Queen = queen.Id, Colony = colony.Id });
        Seat(queen, colony);
    }

    private void Kill()
    {
        var colony = Colony();
        Record(new QueenKilled { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Queen = _chance.Percent(70) ? colony.Queen?.Id : null });
        Seat(null, colony);
    }

    private void Queenless()
    {
        var colony = Colony();
        Record(new FoundQueenless { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Queen = _chance.Percent(50) ? colony.Queen?.Id : null });
        Seat(null, colony);
    }

    private void MoveFrames()
    {
        var from = Colony();
        if (Other(from) is { } to)
            Record(new FramesMoved { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = from.Id, To = to.Id, Frames = _chance.Between(1, 8) / 2m, Of = _chance.Of(Enum.GetValues<FramesOf>()) });
    }

    private void Die()
    {
        var colony = Colony();
        Record(new FoundDead { Id = Id(), On = _chance.Percent(20) ? Since() : On(), Act = _act, Order = Order(), Colony = colony.Id });
        colony.Alive = false;
    }

    private void Sell()
    {
        var colony = Colony();
        Record(new Sold { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id });
        colony.Alive = false;
    }

    private void GiveUp()
    {
        var colony = Colony();
        Record(new Ended { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Why = "shaken out" });
        colony.Alive = false;
    }

    /// <summary>One act: the dud's queen is killed, its frames go to a neighbour, it is given up, and a nuc is set on the spot.</summary>
    private void FixSpot()
    {
        var dud = Colony();
        if (dud.At is not { } spot || Other(dud) is not { } nuc) return;
        _ordered = true;
        Record(new QueenKilled { Id = Id(), On = _today, Act = _act, Order = Order(), Colony = dud.Id, Queen = dud.Queen?.Id });
        if (Other(dud) is { } neighbour)
            Record(new FramesMoved { Id = Id(), On = _today, Act = _act, Order = Order(), Colony = dud.Id, To = neighbour.Id, Frames = 2, Of = _chance.Either(FramesOf.Brood, FramesOf.EmptyComb) });
        Record(new Ended { Id = Id(), On = _today, Act = _act, Order = Order(), Colony = dud.Id, Why = "a dud" });
        if (nuc.At != spot) Record(new Moved { Id = Id(), On = _today, Act = _act, Order = Order(), Colony = nuc.Id, To = spot, From = nuc.At });
        Seat(null, dud);
        (dud.Alive, nuc.At) = (false, spot);
    }
}
