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
        WinterFrom = _chance.Percent(30) ? new MonthDay(_chance.Between(1, 12), _chance.Between(1, 28)) : null,
        OldQueenSeasons = Perhaps(1, 2),
    });

    private void Define(string course, decimal full) =>
        Record(new CourseDefined
        {
            Id = Id(), On = On(), Act = _act, Order = Order(), Course = course, FullDoses = full,
            DaysBetweenAtLeast = Perhaps(5, 10), DaysBetweenAtMost = Perhaps(14, 25), DaysInAtLeast = Perhaps(3, 7), DaysInAtMost = Perhaps(10, 30),
            TakenOut = _chance.Percent(50) ? true : null, CoolestMaximum = Perhaps(5, 18), WarmestMaximum = Perhaps(19, 35), MaximumMattersDays = Perhaps(1, 3),
            SupersOff = _chance.Percent(50) ? true : null, WithholdingDays = Perhaps(0, 20), BroodTooSoonDays = Perhaps(10, 30),
        });

    private int? Perhaps(int least, int most) => _chance.Percent(50) ? _chance.Between(least, most) : null;

    private void Settings()
    {
        switch (_chance.Between(0, 9))
        {
            case 0: Describe(); break;
            case 1: Define(Course(), _chance.Either(0.5m, 1m, 2m, 4m)); break;
            case 2: Record(new YardDescribed { Id = Id(), On = On(), Act = _act, Order = Order(), Yard = Yard(), Name = $"place {Number()}" }); break;
            case 3: Record(new SpotMarked { Id = Id(), On = On(), Act = _act, Order = Order(), Spot = Spot(), Row = 1, Place = _chance.Between(1, 9) }); break;
            case 4: Record(new SpotRetired { Id = Id(), On = On(), Act = _act, Order = Order(), Spot = Spot(), Why = "flooded" }); break;
            case 5: Record(new YardClosed { Id = Id(), On = On(), Act = _act, Order = Order(), Yard = Yard() }); break;
            case 6: Store(); break;
            default:
                Record(new DailyMaximum { Id = Id(), On = _today.AddDays(_chance.Between(-3, 3)), Act = _act, Order = Order(), Yard = Yard(), Maximum = _chance.Percent(70) ? new Temperature(_chance.Between(0, 40), "C") : new Temperature(_chance.Between(32, 110), "F") });
                break;
        }
    }

    private void Store()
    {
        var unit = _chance.Either("piece", "kg");
        switch (_chance.Between(0, 5))
        {
            case 0: Record(new StockCounted { Id = Id(), On = On(), Act = _act, Order = Order(), Of = _chance.Of(Enum.GetValues<StockOf>()), Amount = new Quantity(_chance.Between(0, 90), unit) }); break;
            case 1: Record(new StockChanged { Id = Id(), On = On(), Act = _act, Order = Order(), Of = _chance.Of(Enum.GetValues<StockOf>()), Amount = new Quantity(_chance.Between(0, 90), unit), Out = _chance.Percent(50) }); break;
            case 2: Record(new MedicineAcquired { Id = Id(), On = On(), Act = _act, Order = Order(), Product = "a tub", Lot = $"L{_chance.Between(1, 3)}" }); break;
            case 3: Record(new RoundPlanned { Id = Id(), On = On(), Act = _act, Order = Order(), Round = "autumn", Stops = [.. Enumerable.Range(0, _chance.Between(0, 3)).Select(_ => new RoundStop(Yard()))] }); break;
            case 4: Record(new StoresTargetSet { Id = Id(), On = On(), Act = _act, Order = Order(), Housing = _chance.Of(Enum.GetValues<Housing>()), Stores = new Quantity(_chance.Between(5, 40), "kg"), Tare = _chance.Percent(50) ? new Quantity(_chance.Between(10, 30), "kg") : null }); break;
            default: Record(new ReadinessSet { Id = Id(), On = On(), Act = _act, Order = Order(), FramesOfBeesAtLeast = _chance.Between(2, 10) }); break;
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
