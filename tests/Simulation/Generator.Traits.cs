using ColonyLineage.Entries;

namespace ColonyLineage.Simulation;

/// <summary>What lines are compared by: chance alone seldom washes one colony twice in a season, doses it between, or looks in too soon after a dose.</summary>
public sealed partial class Generator
{
    /// <summary>One colony is measured on several visits, while its queen may go in between.</summary>
    private void MeasureColony()
    {
        var colony = Colony();
        Measure(colony);
        for (var visits = _chance.Between(1, 3); visits > 0; visits--)
        {
            StartAct();
            Measure(colony);
        }
    }

    private void Measure(MadeColony colony)
    {
        switch (_chance.Between(0, 9))
        {
            case 0 or 1 or 2: Wash(colony); break;
            case 3: TakeHoney(colony); break;
            case 4 or 5: Treat(colony, Course(), _chance.Either(0.5m, 1m)); break;
            case 6 when _chance.Percent(25): Record(new Noted { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, About = "treatment group", Text = _chance.Either("treated", "control") }); break;
            case 7 when _chance.Percent(30): Record(new SupersedureSeen { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Queen = NewQueen().Id }); break;
            default: Record(new Inspected { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, BroodPattern = _chance.Between(1, 5), FramesOfBees = Frames(12), Temper = Perhaps(1, 5) }); break;
        }
    }

    private void Wash(MadeColony colony) =>
        Record(new Washed { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Mites = _chance.Between(0, 30), Bees = _chance.Between(5, 300) });

    private void TakeHoney(MadeColony colony) => Record(new Harvested
    {
        Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Supers = 1,
        Honey = _chance.Percent(80) ? new Quantity(_chance.Between(1, 900) / 10m, _chance.Either("kg", "lb", "g", "oz")) : null,
    });
}
