using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>Queens are raised: breeders chosen, larvae grafted, cells given to nucs, young queens found laying, mated and marked.</summary>
internal sealed class Rearing(World world, Hand hand, Looks looks)
{
    private static readonly (int Month, int Day)[] Ripe = [(5, 6), (5, 20), (6, 3), (6, 17), (7, 1), (7, 15), (7, 29)];

    private readonly Pen _pen = world.Pen;
    private readonly Chance _chance = world.Chance;
    private readonly Dictionary<string, int> _cells = [];

    public void Plan()
    {
        world.On(world.Day(4, 20), ChooseBreeders);
        world.On(world.Day(5, 4), MakeMatingNucs);
        for (var i = 0; i < Ripe.Length; i++)
        {
            var number = i;
            var ripe = world.Day(Ripe[i].Month, Ripe[i].Day);
            world.Round(ripe, 2, yard => GiveCells(yard, number, ripe.AddDays(-10)));
            world.Round(ripe.AddDays(23), 3, Check);
        }

        world.On(world.Day(6, 20), SellQueens);
        world.Round(world.Day(9, 20), 4, BreakUp);
    }

    /// <summary>A mated queen in a mating nuc, ready to be taken.</summary>
    public DemoColony? QueenAtHand() => QueensAtHand().FirstOrDefault();

    /// <summary>How many of the queens at hand one yard may have, so that those visited later get some too.</summary>
    public int Share() => Math.Max(1, 2 * QueensAtHand().Count() / world.Yards.Count);

    private IEnumerable<DemoColony> QueensAtHand() =>
        world.Yards.Where(yard => yard.MatesQueens).SelectMany(yard => yard.Colonies).Where(nuc => nuc is { Mating: true, Queen: not null, Told: false });

    /// <summary>Breeders go on while they live; then the best of their daughters follow.</summary>
    private void ChooseBreeders()
    {
        for (var line = 0; line < world.Breeders.Length; line++)
        {
            var of = line;
            var living = world.Colonies.Where(colony => colony.Full && colony.Queen is { Known: true } queen && queen.Line == of).ToList();
            var current = world.Breeders[line].LastOrDefault();
            var age = current is null ? 9 : world.Season - World.SeasonOf(current.Born);
            if (living.Any(colony => colony.Queen == current) && age <= 2) continue;
            if (living.Where(colony => colony.Queen!.Mother is not null).MaxBy(colony => colony.Vigour)?.Queen is { } next) world.Breeders[line].Add(next);
        }
    }

    private void MakeMatingNucs()
    {
        foreach (var yard in world.Yards.Where(yard => yard.MatesQueens))
        {
            var makers = world.Yards.Where(other => Math.Abs(other.Index - yard.Index) < 8).SelectMany(other => other.Colonies)
                .Where(colony => colony is { Full: true, Queen: not null, Told: false }).OrderByDescending(colony => colony.Vigour).Take(yard.NucSpots.Count).ToList();
            if (makers.Count == 0) continue;
            _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
            foreach (var (i, spot) in yard.NucSpots.Index())
                if (!yard.On.ContainsKey(spot))
                    hand.Establish(yard, spot, HowEstablished.Split, Housing.MatingNuc, world.NextNucNumber(), null, bees: 2, brood: 1, makers: [(makers[i % makers.Count], 2, 1)]);
        }
    }

    /// <summary>Every colony that waits for a queen gets a cell. Three lines a batch day, the first one most.</summary>
    private void GiveCells(DemoYard yard, int number, DateOnly grafted)
    {
        var waiting = yard.Walk().Where(colony => colony is { Queen: null, Cell: null, Told: false }).ToList();
        if (waiting.Count == 0) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in waiting) GiveCell(colony, number, grafted);
    }

    public void GiveCell(DemoColony colony, int number, DateOnly grafted)
    {
        var choice = _chance.Happens(0.5) ? 0 : _chance.Happens(0.6) ? 1 : 2;
        var line = choice == 0 ? 0 : 1 + ((number + choice) % (Places.Lines.Length - 1));
        if (world.Breeders[line].LastOrDefault() is not { } mother) return;
        var batch = $"{world.Season % 100:00}{(char)('A' + (number * 3) + choice)}";
        _cells[batch] = _cells.GetValueOrDefault(batch) + 1;
        hand.GiveCell(colony, world.NewQueen($"{batch}-{_cells[batch]:00}", grafted.AddDays(12), mother), batch, grafted);
        colony.CellGiven = _pen.Day;
    }

    /// <summary>Three weeks after its cell a nuc is looked at: she lays, or she is not there.</summary>
    private void Check(DemoYard yard)
    {
        var due = yard.Walk().Where(colony => colony.Cell is not null && colony.CellGiven <= _pen.Day.AddDays(-20)).ToList();
        if (due.Count == 0) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in due)
        {
            var queen = colony.Cell!;
            var laying = colony.Told || _chance.Happens(0.8);
            hand.Accept(colony, queen, laying);
            if (!laying)
            {
                colony.Failed++;
                if (colony.Failed >= 2 && !colony.Mating) Despair(colony);
                continue;
            }

            _pen.Write(new QueenMated
            {
                Id = _pen.Next(), On = new Occurred(_pen.Day.AddDays(-8), queen.Born.AddDays(3)), Act = _pen.Now, Queen = queen.Id, Where = yard.MatesQueens ? $"{yard.Name}, among the drone colonies" : "in the open",
                Drones = yard.MatesQueens && _chance.Happens(0.5) ? [.. world.Breeders.Skip(1).Where(line => line.Count > 0).Select(line => line[0].Id).Take(2)] : [],
            });
            colony.Vigour = Math.Clamp(_chance.About(1, 0.16), 0.5, 1.4);
            looks.Into(colony, markHer: false);
            if (_chance.Happens(0.85)) hand.Mark(queen);
        }
    }

    private void Despair(DemoColony colony)
    {
        if (colony.Yard.Colonies.FirstOrDefault(other => other is { Queen: not null, Told: false } && other != colony) is { } neighbour) hand.Combine(colony, neighbour);
        else hand.GiveUp(colony, "no queen after two cells, shaken out");
    }

    private void SellQueens()
    {
        _pen.Begin(world.Crew[0]);
        for (var i = 0; i < world.Options.Colonies / 80 && QueenAtHand() is { } nuc; i++)
        {
            _pen.Write(new QueenEnded { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Queen = nuc.Queen!.Id, Colony = nuc.Id, How = QueenEnd.Sold, Note = "to a neighbour" });
            nuc.Queen = null;
        }
    }

    /// <summary>What is left of the mating nucs before the winter: some winter as nucs on a spot, the others are shared out.</summary>
    private void BreakUp(DemoYard yard)
    {
        if (!yard.MatesQueens) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var nuc in yard.Walk().Where(colony => colony.Mating))
        {
            var spot = World.Empty(yard).FirstOrDefault();
            if (nuc.Queen is not null && spot is not null && _chance.Happens(0.6))
            {
                hand.Move(nuc, yard, spot);
                _pen.Write(new NucTransferred { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = nuc.Id, Into = Housing.NucBox });
                nuc.Housing = Housing.NucBox;
                continue;
            }

            var into = yard.Walk().FirstOrDefault(colony => colony is { Full: true, Queen: not null, Told: false });
            if (nuc.Queen is not null) hand.Kill(nuc, "not wanted for the winter");
            if (nuc.Cell is not null) hand.Accept(nuc, nuc.Cell, false);
            if (into is not null) hand.Share(nuc, into, 2, FramesOf.Bees);
            hand.GiveUp(nuc, "mating nuc broken up for the winter");
        }
    }
}
