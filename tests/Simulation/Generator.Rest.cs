using ColonyLineage.Entries;

namespace ColonyLineage.Simulation;

/// <summary>What is said of queens, the plain work that changes no queen and no path, contradictions, and mistakes that are voided.</summary>
public sealed partial class Generator
{
    private void OfAQueen()
    {
        if (Known() is not { } queen) return;
        var mother = Known() is { } other && other != queen ? other.Id : (QueenId?)null;
        switch (_chance.Between(0, 6))
        {
            case 0 or 1:
                Record(new QueenRaised
                {
                    Id = Id(), On = On(), Act = _act, Order = Order(), Queen = queen.Id, Mother = _chance.Percent(70) ? mother : null, MotherIs = _chance.Of(Enum.GetValues<Certainty>()),
                    Name = _chance.Percent(50) ? $"Q{Number()}" : null, From = _chance.Of(Enum.GetValues<RaisedFrom>()), Born = Born(), Grafted = _chance.Percent(25) ? _today.AddDays(-_chance.Between(0, 40)) : null,
                });
                break;
            case 2:
                Record(new QueenBought { Id = Id(), On = On(), Act = _act, Order = Order(), Queen = queen.Id, Name = _chance.Percent(50) ? $"B{Number()}" : null, Mother = _chance.Percent(40) ? mother : null, Born = Born() });
                break;
            case 3:
                Record(new QueenMarked { Id = Id(), On = On(), Act = _act, Order = Order(), Queen = queen.Id, Mark = new QueenMark(_chance.Of(Enum.GetValues<MarkColour>()), _chance.Percent(20) ? Number() : null) });
                break;
            case 4:
                Record(new QueenMated
                {
                    Id = Id(), On = _chance.Percent(30) ? Since() : On(), Act = _act, Order = Order(), Queen = queen.Id,
                    Drones = [.. Enumerable.Range(0, _chance.Between(0, 3)).Select(_ => Known()!.Id).Where(drone => drone != queen.Id)],
                });
                break;
            case 5:
                Record(new QueenBanked { Id = Id(), On = On(), Act = _act, Order = Order(), Queen = queen.Id, Colony = _chance.Percent(60) ? (_chance.Percent(50) ? queen.In : Colony())?.Id : null });
                Leave(queen);
                break;
            default:
                Record(new QueenEnded { Id = Id(), On = On(), Act = _act, Order = Order(), Queen = queen.Id, How = _chance.Of(Enum.GetValues<QueenEnd>()), Colony = _chance.Percent(60) ? queen.In?.Id : null });
                Leave(queen);
                break;
        }
    }

    private Occurred? Born() => _chance.Between(0, 3) switch
    {
        0 => null,
        1 => new Occurred(_today.AddDays(-_chance.Between(0, 30)), _today.AddDays(-_chance.Between(31, 500))),
        _ => _today.AddDays(-_chance.Between(0, 400)),
    };

    private static void Leave(MadeQueen queen)
    {
        if (queen.In is { } colony && colony.Queen == queen) colony.Queen = null;
        queen.In = null;
    }

    private void Accept()
    {
        if (Known() is not { } queen) return;
        var colony = queen.In is { } there && _chance.Percent(90) ? there : Colony();
        var accepted = _chance.Percent(70);
        Record(new QueenAccepted { Id = Id(), On = On(), Act = _act, Order = Order(), Queen = queen.Id, Colony = colony.Id, Accepted = accepted });
        if (accepted) Seat(queen, colony);
        else Leave(queen);
    }

    private void CageOrRelease()
    {
        var colony = Colony();
        var queen = _chance.Percent(60) ? colony.Queen?.Id : null;
        if (_chance.Percent(60)) Record(new QueenCaged { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Queen = queen });
        else Record(new QueenReleased { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Queen = queen });
    }

    private void TakeOut() => Record(new TakenOut { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = Colony().Id, Why = "a dud" });

    private void Note()
    {
        var colony = Colony();
        if (_chance.Percent(50)) Record(new Noted { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Text = "gate left open" });
        else Record(new ConflictSettled
        {
            Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony.Id, Why = "asked the crew",
            Conflict = _chance.Either("after-end", "before-beginning", "two-on-a-spot", "moved-from-elsewhere", "queen-in-two-places"),
            Between = [.. _recorded.Select(recorded => recorded.Entry).Where(entry => entry.Concerns.Contains(colony.Id)).Select(entry => entry.Id).TakeLast(3).DefaultIfEmpty(_recorded[0].Entry.Id)],
        });
    }

    private void Plain()
    {
        var colony = Colony().Id;
        switch (_chance.Between(0, 11))
        {
            case 0: Record(new Washed { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony, Mites = _chance.Between(0, 30), Bees = _chance.Between(5, 200) }); break;
            case 1: Record(new Fed { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony, Feed = "syrup", Amount = new Quantity(2, "L") }); break;
            case 2: Record(new FeederPutOn { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony }); break;
            case 3: Record(new FeederTakenOff { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony }); break;
            case 4: Record(new Harvested { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony, Supers = 1 }); break;
            case 5: Record(new Weighed { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony, Gross = new Quantity(40, "kg") }); break;
            case 6: Record(new Supered { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony, Supers = 1 }); break;
            case 7: Record(new SupplementGiven { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony, Supplement = "patty" }); break;
            case 8: Record(new TreatmentTakenOut { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony, Course = Course() }); break;
            case 9: Record(new BoxesChanged { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony, Housing = Housing.Double }); break;
            default: Record(new NucTransferred { Id = Id(), On = On(), Act = _act, Order = Order(), Colony = colony }); break;
        }
    }

    /// <summary>Owed work is put off or closed by hand: of some entry about the colony, often one that left nothing open.</summary>
    private void Owe()
    {
        var colony = Colony().Id;
        var about = _recorded.Select(recorded => recorded.Entry).Where(entry => entry.Stream == colony).ToList();
        if (about.Count == 0) return;
        var work = _chance.Either("transfer", "laying", "feeder-off", "strips-out", "course");
        if (_chance.Percent(50)) Record(new WorkPutOff { Id = Id(), On = _today, Act = _act, Order = Order(), Work = work, Opened = _chance.Of(about).Id, Colony = colony, Until = _today.AddDays(_chance.Between(1, 40)), Why = "rain" });
        else Record(new WorkDoneElsewhere { Id = Id(), On = _today, Act = _act, Order = Order(), Work = work, Opened = _chance.Of(about).Id, Colony = colony, Why = "by the neighbour" });
    }

    private void Contradict()
    {
        switch (_chance.Between(0, 3))
        {
            case 0 when _colonies.FirstOrDefault(colony => !colony.Alive) is { } ended:
                Treat(ended, "T", 1m);
                break;
            case 1:
                Record(new Treated { Id = Id(), On = FirstDay.AddDays(-_chance.Between(1, 90)), Act = _act, Order = Order(), Colony = Colony().Id, Course = "T", Doses = 1m });
                break;
            case 2 when _queens.FirstOrDefault(queen => queen.In is not null) is { } queen && Other(queen.In!) is { } other:
                Record(new QueenIntroduced { Id = Id(), On = On(), Act = _act, Order = Order(), Queen = queen.Id, Colony = other.Id });
                break;
            case 3 when _queens.Count > 1:
                Record(new QueenRaised { Id = Id(), On = On(), Act = _act, Order = Order(), Queen = _queens[0].Id, Mother = _queens[1].Id });
                Record(new QueenRaised { Id = Id(), On = On(), Act = _act, Order = Order(), Queen = _queens[1].Id, Mother = _queens[0].Id });
                break;
        }
    }

    /// <summary>Voids that come later, before what they name, twice, or that name a void; and the right entry beside the wrong one.</summary>
    private void Mistakes()
    {
        for (var i = _chance.Between(0, Math.Max(1, _size / 8)); i > 0; i--)
        {
            var (wrong, at) = _chance.Of(_recorded);
            _act = new ActId(_chance.Id());
            _at = _chance.Percent(15) ? at.AddDays(-_chance.Between(1, 20)) : at.AddDays(_chance.Between(0, 200)).AddMinutes(_chance.Between(0, 59));
            var day = DateOnly.FromDateTime(_at.UtcDateTime);
            for (var times = _chance.Percent(12) ? 2 : 1; times > 0; times--)
                Record(new Voided { Id = Id(), On = day, Act = _act, Order = Order(), Entry = wrong.Id, Why = "on another colony", Of = wrong.Stream, AlsoOf = [.. wrong.AlsoConcerns] });
            if (wrong is Voided || !_chance.Percent(55)) continue;
            var right = wrong with { Id = Id(), Act = _act, On = _chance.Percent(50) ? wrong.On : wrong.On.Day.AddDays(_chance.Between(-15, 15)) };
            if (right is WorkPutOff put) right = put with { Until = put.On.Day.AddDays(_chance.Between(1, 40)) };
            Record(right is Treated treated && _chance.Percent(50) ? treated with { Colony = Colony().Id } : right);
        }
    }
}
