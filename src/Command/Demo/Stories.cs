using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>What is made to happen so that each question has something to show, and what goes wrong in the books.</summary>
internal sealed class Stories(World world, Hand hand, Looks looks, Rearing rearing, Autumn autumn)
{
    /// <summary>Kiln Bank: nobody replaces old queens here.</summary>
    public const int OldQueens = 0;

    /// <summary>Otter Holt: spot 7 is replaced by a nuc twice.</summary>
    public const int TwiceReplaced = 1;

    /// <summary>Withy Bottom: the summer course is incomplete every season.</summary>
    public const int Incomplete = 2;

    /// <summary>Bramble Ley: one high wash after the treatment.</summary>
    public const int HighWash = 6;

    private const string Spot = "7";

    private readonly Pen _pen = world.Pen;
    private readonly Chance _chance = world.Chance;

    /// <summary>The last season whose autumn is in the books.</summary>
    public static int LastAutumn(World world) => new DateOnly(world.Running, 10, 15) <= world.Pen.LastDay ? world.Running : world.Running - 1;

    public void Plan()
    {
        if (world.Season == LastAutumn(world) - 1)
        {
            world.On(world.Day(4, 1), () => Spare(Yard(TwiceReplaced)));
            world.On(world.Day(11, 4), () => Doom(Yard(TwiceReplaced)));
        }

        if (world.Season == LastAutumn(world))
        {
            world.On(world.Day(5, 1), () => FirstNuc(Yard(TwiceReplaced)));
            world.On(world.Day(8, 24), () => SecondNuc(Yard(TwiceReplaced)));
            Mishaps();
        }

        if (world.Season == world.FirstSeason + 1) world.On(world.Day(10, 20), RetireSpot);
    }

    private DemoYard? Yard(int index) => world.Yards.FirstOrDefault(yard => yard.Index == index);

    /// <summary>Nothing else befalls the colony on spot 7 before the winter.</summary>
    private static void Spare(DemoYard? yard)
    {
        if (yard?.On.GetValueOrDefault(Spot) is { } colony) colony.Told = true;
    }

    /// <summary>The colony on spot 7 will not see the spring.</summary>
    private void Doom(DemoYard? yard)
    {
        if (yard?.On.GetValueOrDefault(Spot) is { } colony) colony.Dies = world.Day(1, 22);
    }

    private void FirstNuc(DemoYard? yard)
    {
        if (yard is null || yard.On.ContainsKey(Spot)) return;
        if (Yard(OldQueens)?.Walk().FirstOrDefault(colony => colony is { Full: true, Queen: not null }) is not { } maker) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        var nuc = hand.Establish(yard, Spot, HowEstablished.Split, Housing.NucBox, world.NextNucNumber(), null, bees: 3, brood: 2, makers: [(maker, 3, 2)]);
        nuc.Told = true;
        world.On(world.Day(5, 6), () =>
        {
            _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
            rearing.GiveCell(nuc, 0, world.Day(4, 26));
        });
    }

    /// <summary>The nuc on spot 7 has become a dud: its queen is killed, its frames are shared out, another nuc is set on the spot.</summary>
    private void SecondNuc(DemoYard? yard)
    {
        if (yard?.On.GetValueOrDefault(Spot) is not { Told: true } dud || rearing.QueenAtHand() is not { } nuc) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        _pen.Write(new Inspected { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = dud.Id, Queen = QueenFinding.DroneLayer, FramesOfBees = 3, BroodPattern = 1 });
        hand.Kill(dud, "drone layer");
        foreach (var neighbour in yard.Walk().Where(colony => colony is { Full: true, Queen: not null } && colony != dud).Take(2)) hand.Share(dud, neighbour, 1, FramesOf.Brood);
        hand.GiveUp(dud, "dud: drone layer, frames shared out");
        autumn.SetNuc(nuc, yard, Spot);
        nuc.Told = true;
    }

    private void RetireSpot()
    {
        if (world.Yards.Select(yard => (Yard: yard, Spot: World.Empty(yard).LastOrDefault())).FirstOrDefault(pair => pair.Spot is not null && pair.Yard.Index > 6) is not { Yard: { } yard, Spot: { } spot }) return;
        _pen.Begin(world.Crew[0]);
        _pen.Write(new SpotRetired { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Spot = new Spot(yard.Id, spot), Why = "stands in water after rain" });
    }

    /// <summary>About a dozen contradictions, left open but for one.</summary>
    private void Mishaps()
    {
        // The wrong mark is seen: somebody read green for blue, or the bees know better.
        for (var i = 0; i < 4; i++)
        {
            var index = 4 + (3 * i);
            world.On(world.Day(4, 28), () => SeeWrongMark(Yard(index)));
        }

        // A colony was combined away, and still stands ticked on the sheet.
        foreach (var index in (int[])[7, 9, 12]) world.On(world.Day(8, 23), () => TreatAfterEnd(Yard(index), settle: index == 9));

        world.On(world.Day(6, 24), () => TwoOnASpot(Yard(8)));
        world.On(world.Day(6, 24), () => TwoOnASpot(Yard(14)));
        world.On(world.Day(9, 25), () => MovedFromElsewhere(Yard(10)));
    }

    private void SeeWrongMark(DemoYard? yard)
    {
        if (yard?.Walk().FirstOrDefault(colony => colony is { Full: true, Told: false, Queen: { Known: true, Mark: not null } }) is not { } colony) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        _pen.Write(new Inspected { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Queen = QueenFinding.Seen, EggsSeen = true, MarkSeen = new QueenMark(QueenMark.DueFor(colony.Queen!.Born.Year + 4)) });
        colony.Queen.LastSeen = _pen.Day;
    }

    private void TreatAfterEnd(DemoYard? yard, bool settle)
    {
        if (yard is null) return;
        var full = yard.Walk().Where(colony => colony is { Full: true, Told: false, Queen: not null }).OrderBy(colony => colony.Vigour).ToList();
        if (full.Count < 2 || world.Breeders.Any(line => line.Contains(full[0].Queen!))) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        hand.Combine(full[0], full[1]);
        var end = full[0];
        var combined = _pen.LastId;
        world.On(_pen.Day.AddDays(9), () =>
        {
            _pen.Begin(world.CrewAt(yard), _pen.Visit(yard), _pen.Day.AddDays(12));
            var dose = new Treated { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = end.Id, Course = "thymol summer", Doses = 0.5m, Substance = "thymol gel", SupersOn = false };
            _pen.Write(dose);
            if (!settle) return;
            world.On(_pen.Day.AddDays(20), () =>
            {
                _pen.Begin(world.Crew[0]);
                _pen.Write(new ConflictSettled { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = end.Id, Conflict = "after-end", Between = [combined, dose.Id], Why = "the sheet was ticked by habit; nothing was given" });
            });
        });
    }

    /// <summary>A nuc was set on a spot that is taken; nobody wrote down what became of the colony there.</summary>
    private void TwoOnASpot(DemoYard? yard)
    {
        if (yard is null || rearing.QueenAtHand() is not { } nuc) return;
        if (yard.Walk().FirstOrDefault(colony => colony is { Full: true, Told: false, Queen: not null }) is not { } there) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard), _pen.Day.AddDays(4));
        autumn.SetNuc(nuc, yard, there.Spot);
        looks.Into(nuc);
        // In truth it stands above the other.
        nuc.Above = true;
        yard.On[there.Spot] = there;
    }

    private void MovedFromElsewhere(DemoYard? yard)
    {
        if (yard is null || World.Empty(yard).FirstOrDefault() is not { } spot) return;
        if (yard.Walk().FirstOrDefault(colony => colony is { Full: true, Told: false, Above: false }) is not { } colony) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        hand.Move(colony, yard, spot, saidFrom: new Spot(yard.Id, _chance.Of(yard.Spots.Where(other => other != spot && other != colony.Spot).ToList())));
    }
}
