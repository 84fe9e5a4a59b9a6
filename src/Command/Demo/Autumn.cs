using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>Queens checked, old ones replaced, duds and weak ones combined, spots fixed with nucs, feed, and the winter.</summary>
internal sealed class Autumn(World world, Hand hand, Looks looks, Rearing rearing, Spring spring)
{
    private readonly Pen _pen = world.Pen;
    private readonly Chance _chance = world.Chance;

    public void Plan()
    {
        world.Round(world.Day(8, 6), 10, yard => Feed(yard, 0.8));
        world.Round(world.Day(6, 16), 8, RequeenOld);
        world.Round(world.Day(7, 25), 8, RequeenOld);
        world.Round(world.Day(8, 25), 10, Check);
        world.Round(world.Day(9, 10), 10, SecondCheck);
        world.Round(world.Day(9, 27), 10, Last);
        world.On(world.Day(11, 3), Fates);
        world.Round(world.Day(2, 6), 6, Lift);
    }

    private void Feed(DemoYard yard, double share)
    {
        var late = OnPaper(yard) ? world.Day(11, 14) : (DateOnly?)null;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard), late);
        foreach (var colony in yard.Walk().Where(_ => _chance.Happens(share))) Feed(colony);
    }

    private void Feed(DemoColony colony)
    {
        var amount = new Quantity(colony.Full ? 5 : 1, "L");
        var fed = new Fed { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Feed = "sugar syrup", Amount = amount, SugarParts = 2, WaterParts = 1, PartsBy = PartsBy.Weight };
        if (_chance.Happens(0.001)) _pen.WriteWrong(fed with { Amount = new Quantity(50, "L") }, fed with { Id = _pen.Next() }, "a nought too many", _chance.Between(1, 40));
        else _pen.Write(fed);
        if (colony.Yard.Index % 6 == 4) _pen.Write(new FeederPutOn { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Feeder = "small tray", Holds = new Quantity(2, "L"), Place = FeederPlace.Above });
    }

    /// <summary>The feeding notes of one yard in nine are kept on paper until November.</summary>
    private bool OnPaper(DemoYard yard) => (yard.Index + world.Season) % 9 == 7;

    private void Check(DemoYard yard)
    {
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        if (yard.Index == Stories.Incomplete) CombineLessTreated(yard);
        var share = rearing.Share();
        foreach (var colony in yard.Walk())
        {
            if (colony.Gone || colony.Mating) continue;
            if (!colony.Told && colony.Queen is not null && _chance.Happens(0.02)) colony.Vigour = 0.45;
            if (colony is { Queen: null, Cell: null, Told: false }) Queenless(colony);
            else if (Old(colony) && share-- > 0) Requeen(colony);
            if (colony.Gone) continue;
            if (colony.Housing == Housing.NucBox && !colony.Told && colony.Queen is not null) spring.Transfer(colony, yard);
            looks.Into(colony);
            if (_chance.Happens(0.4)) Feed(colony);
        }

        FixSpots(yard);
    }

    /// <summary>Young queens are at hand from June on; the oldest are replaced as soon as there are some.</summary>
    private void RequeenOld(DemoYard yard)
    {
        var old = yard.Walk().Where(colony => !colony.Mating && Old(colony)).ToList();
        if (old.Count == 0 || rearing.QueenAtHand() is null) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in old.Take(rearing.Share())) Requeen(colony);
    }

    private void SecondCheck(DemoYard yard)
    {
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        var share = rearing.Share();
        foreach (var colony in yard.Walk())
        {
            if (colony.Gone || colony.Mating) continue;
            if (yard.Index % 6 == 4) _pen.Write(new FeederTakenOff { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Feeder = "small tray" });
            if (colony is { Queen: null, Cell: null }) Queenless(colony);
            else if (Old(colony) && share-- > 0) Requeen(colony);
            if (!colony.Gone && _chance.Happens(0.75)) Feed(colony);
        }

        FixSpots(yard);
    }

    /// <summary>Old, or poor at her age. Kiln Bank is left alone: there the old queens are to be found.</summary>
    private bool Old(DemoColony colony)
    {
        if (colony.Told || colony.Queen is not { } queen || colony.Yard.Index == Stories.OldQueens || !colony.Full) return false;
        var age = world.Season - World.SeasonOf(queen.Born);
        if (age < 3 && world.Breeders.Any(line => line.Contains(queen))) return false;
        return _chance.Happens(age switch { <= 0 => 0.01, 1 => colony.Vigour < 0.8 ? 0.5 : 0.12, 2 => 0.6, _ => 0.95 });
    }

    private void Requeen(DemoColony colony)
    {
        if (rearing.QueenAtHand() is not { } nuc || nuc == colony) return;
        hand.Requeen(colony, nuc);
        colony.Vigour = Math.Clamp(_chance.About(1, 0.16), 0.6, 1.35);
        var queen = colony.Queen!;
        if (_chance.Happens(0.5)) world.On(_pen.Day.AddDays(15), () => Accepted(colony, queen));
    }

    private void Accepted(DemoColony colony, DemoQueen queen)
    {
        if (colony.Gone || colony.Queen != queen) return;
        _pen.Begin(world.CrewAt(colony.Yard), _pen.Visit(colony.Yard));
        hand.Accept(colony, queen, _chance.Happens(0.93));
    }

    /// <summary>A queenless colony gets a queen where one is at hand; else it is a dud: combined, or shared out and ended.</summary>
    private void Queenless(DemoColony colony)
    {
        if (colony.Full && rearing.QueenAtHand() is not null)
        {
            Requeen(colony);
            return;
        }

        var neighbours = colony.Yard.Walk().Where(other => other is { Full: true, Queen: not null, Told: false } && other != colony).Take(3).ToList();
        if (neighbours.Count == 0) return;
        _pen.Write(new Inspected { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Queen = _chance.Happens(0.3) ? QueenFinding.LayingWorkers : QueenFinding.Queenless, FramesOfBees = 3, FramesOfBrood = 0 });
        _pen.Write(new TakenOut { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Why = "dud: no queen" });
        if (_chance.Happens(0.6))
        {
            hand.Combine(colony, neighbours[0]);
            return;
        }

        foreach (var neighbour in neighbours) hand.Share(colony, neighbour, 1, FramesOf.EmptyComb);
        hand.GiveUp(colony, "dud, shaken out");
    }

    /// <summary>Nucs that are at hand go onto empty spots: set there in their box, transferred at a later visit.</summary>
    private void FixSpots(DemoYard yard)
    {
        if (yard.MatesQueens || !_chance.Happens(0.7) || yard.Colonies.Count * 1.12 >= yard.Spots.Count) return;
        if (World.Empty(yard).FirstOrDefault() is not { } spot || rearing.QueenAtHand() is not { } nuc) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        SetNuc(nuc, yard, spot);
    }

    public void SetNuc(DemoColony nuc, DemoYard yard, string spot)
    {
        hand.Move(nuc, yard, spot);
        nuc.Housing = Housing.NucBox;
        _pen.Write(new BoxesChanged { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = nuc.Id, Housing = Housing.NucBox });
        nuc.Vigour = 0.9;
    }

    /// <summary>At Withy Bottom a colony that missed the first dose is combined into one that had both.</summary>
    private void CombineLessTreated(DemoYard yard)
    {
        var weak = Treatments.Weak(yard);
        if (weak.Count < 2 || yard.Walk().LastOrDefault(colony => colony is { Full: true, Queen: not null, Told: false } && !weak.Contains(colony)) is not { } into) return;
        hand.Note(weak[0], "weak, not worth a queen; missed the first dose", "treatment");
        hand.Combine(weak[0], into);
    }

    /// <summary>The last look: bees counted, stores lifted, weak ones combined, a few weighed.</summary>
    private void Last(DemoYard yard)
    {
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard), _chance.Happens(0.08) ? _pen.Day.AddDays(_chance.Between(4, 25)) : null);
        foreach (var (i, colony) in yard.Walk().Index())
        {
            if (colony.Gone || colony.Mating) continue;
            looks.Into(colony);
            var heft = looks.Lift(colony);
            if (heft != Heft.Heavy && _chance.Happens(0.7)) Feed(colony);
            if (i is 2 or 9)
                _pen.Write(new Weighed { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Gross = new Quantity(Math.Round((decimal)_chance.About(38, 5), 1), "kg"), Tare = new Quantity(16.5m, "kg") });
        }

        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var weak in yard.Walk().Where(colony => colony is { Full: true, Told: false, Queen: not null, Vigour: < 0.62 }).ToList())
            if (yard.Walk().FirstOrDefault(colony => colony is { Full: true, Told: false, Queen: not null, Vigour: > 0.8 }) is { } into && yard.Index != Stories.OldQueens)
                hand.Combine(weak, into);
    }

    /// <summary>What the winter will do, unseen.</summary>
    private void Fates()
    {
        foreach (var colony in world.Colonies.ToList())
        {
            var risk = 0.055 + (colony.Vigour < 0.75 ? 0.12 : 0) + (colony.Full ? 0 : 0.05) + (colony.Queen is null ? 0.7 : 0) + (colony.Yard.Mites > 3 ? 0.04 : 0);
            var bred = world.Breeders.Any(line => line.Count > 0 && line[^1] == colony.Queen);
            if (!colony.Told && !bred && _chance.Happens(risk)) colony.Dies = world.Day(11, 20).AddDays(_chance.Between(0, 90));
            else if (colony is { Told: false, Queen.Mark: not null } && !bred && _chance.Happens(0.035)) colony.Supersedes = true;
            colony.Told = false;
        }
    }

    private void Lift(DemoYard yard)
    {
        if (yard.Index % 2 == 1) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in yard.Walk())
            if (colony.Dies is { } died && died <= _pen.Day)
            {
                if (_chance.Happens(0.6)) spring.FindDead(colony);
            }
            else if (_chance.Happens(0.5))
            {
                looks.Lift(colony);
            }
    }
}
