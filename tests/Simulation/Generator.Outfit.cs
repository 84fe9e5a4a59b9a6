using ColonyLineage.Entries;

namespace ColonyLineage.Simulation;

/// <summary>The outfit, its yards and the colonies that were there when the books were opened.</summary>
public sealed partial class Generator
{
    private void Open()
    {
        if (_chance.Percent(60)) Describe();
        for (var i = _chance.Between(1, 3); i > 0; i--)
        {
            var yard = new YardId(_chance.Id());
            _yards.Add(yard);
            if (_chance.Percent(80)) Record(new YardOpened { Id = Id(), On = _today, Act = _act, Order = Order(), Yard = yard, Name = $"yard {(char)('A' + _yards.Count - 1)}" });
        }

        if (_chance.Percent(80)) Define("T", 2m);
        if (_chance.Percent(40)) Define("U", 1.5m);
        for (var i = _chance.Between(1, 3); i > 0; i--) Establish(HowEstablished.OpeningCount);
    }

    private void Describe() => Record(new OutfitDescribed
    {
        Id = Id(), On = On(), Act = _act, Order = Order(),
        SeasonStartMonth = _chance.Either(1, 3, 3, 5, 7, 9, 12),
        FewFramesOfBees = _chance.Percent(30) ? _chance.Between(2, 8) : null,
    });

    private void Define(string course, decimal full) =>
        Record(new CourseDefined { Id = Id(), On = On(), Act = _act, Order = Order(), Course = course, FullDoses = full });

    private void Settings()
    {
        switch (_chance.Between(0, 5))
        {
            case 0: Describe(); break;
            case 1: Define(Course(), _chance.Either(0.5m, 1m, 2m, 4m)); break;
            case 2: Record(new YardDescribed { Id = Id(), On = On(), Act = _act, Order = Order(), Yard = Yard(), Name = $"place {Number()}" }); break;
            case 3: Record(new SpotMarked { Id = Id(), On = On(), Act = _act, Order = Order(), Spot = Spot(), Row = 1, Place = _chance.Between(1, 9) }); break;
            case 4: Record(new SpotRetired { Id = Id(), On = On(), Act = _act, Order = Order(), Spot = Spot(), Why = "flooded" }); break;
            default: Record(new YardClosed { Id = Id(), On = On(), Act = _act, Order = Order(), Yard = Yard() }); break;
        }
    }

    private void Line()
    {
        if (Known() is { } breeder) Record(new LineStarted { Id = Id(), On = On(), Act = _act, Order = Order(), Line = $"line {Number()}", Breeder = breeder.Id });
    }

    private void Establish() =>
        Establish(_chance.Either(HowEstablished.Package, HowEstablished.Swarm, HowEstablished.Bought, HowEstablished.OpeningCount, HowEstablished.Nuc, HowEstablished.Split));

    private MadeColony Establish(HowEstablished how, bool above = false)
    {
        var colony = _chance.Percent(3) && _colonies.Count > 0 ? _chance.Of(_colonies) : NewColony();
        Establish(colony, how, above);
        return colony;
    }

    private void Establish(MadeColony colony, HowEstablished how, bool above = false)
    {
        var queen = _chance.Percent(55) ? Queen() : null;
        colony.At = MaybeSpot();
        Seat(queen, colony);
        Record(new ColonyEstablished
        {
            Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Number = Number(), How = how, At = colony.At, Above = above,
            Housing = _chance.Percent(60) ? _chance.Either(Housing.NucBox, Housing.MatingNuc, Housing.Single, Housing.Double) : null,
            Queen = queen?.Id, FramesOfBees = Frames(10), FramesOfBrood = Frames(6),
        });
    }
}
