using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>A look into a colony, as crews report it: now more, now less.</summary>
internal sealed class Looks(World world, Hand hand)
{
    private static readonly string[] Remarks =
    [
        "box wants mending", "stand leans to the left", "entrance reducer missing", "ants under the lid", "a gentle lot, quick to work", "runny on the comb",
        "propolis everywhere", "look at this queen again in autumn", "comb in the lid, scraped off", "strap it before the winter gales",
    ];

    private readonly Pen _pen = world.Pen;
    private readonly Chance _chance = world.Chance;

    /// <summary>Frames of bees to be expected, about.</summary>
    public double Bees(DemoColony colony)
    {
        var age = colony.Queen is { } queen ? world.Season - World.SeasonOf(queen.Born) : 2;
        var byAge = age switch { <= 0 => 1.05, 1 => 1.0, 2 => 0.78, _ => 0.62 };
        var most = colony.Mating ? 2.5 : colony.Housing == Housing.NucBox ? 4.5 : colony.Housing == Housing.Double ? 15 : 10;
        var ofYear = _pen.Day.Month switch { 3 or 4 => 0.55, 5 => 0.8, 6 or 7 => 1.0, 8 => 0.9, 9 => 0.75, _ => 0.6 };
        if (colony.Yard.Index == Stories.OldQueens && age >= 2) byAge *= 0.8;
        return most * ofYear * byAge * Math.Clamp(colony.Vigour, 0.4, 1.35) * (colony.Queen is null ? 0.7 : 1);
    }

    /// <summary>A full look: bees, brood, eggs, the queen and her mark.</summary>
    public void Into(DemoColony colony, bool markHer = true)
    {
        var expected = Bees(colony);
        var bees = _chance.Halves(expected, 0.12 * expected, 0.5, 28);
        var laying = colony.Queen is not null;
        var seen = laying && _chance.Happens(0.55);
        var look = new Inspected
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, FramesOfBees = bees,
            FramesOfBrood = laying ? _chance.Halves(0.5 * (double)bees, 0.8, 0, 20) : 0, EggsSeen = laying, BroodPattern = laying && _chance.Happens(0.5) ? Pattern(colony) : null,
            Queen = seen ? QueenFinding.Seen : laying ? QueenFinding.Queenright : QueenFinding.NotSeen, MarkSeen = seen ? colony.Queen!.Mark ?? new QueenMark(MarkColour.Unmarked) : null,
            Temper = _chance.Happens(0.3) ? Math.Clamp((int)Math.Round(_chance.Between(2, 5) + Genes.Temper(colony.Queen)), 1, 5) : null,
        };
        if (_chance.Happens(0.0015)) _pen.WriteWrong(look with { FramesOfBees = bees + 10 }, look with { Id = _pen.Next() }, "slipped a key: ten frames too many", _chance.Between(0, 3));
        else _pen.Write(look);
        if (seen) colony.Queen!.LastSeen = _pen.Day;
        if (seen && markHer && colony.Queen is { Mark: null, Known: true } queen && _chance.Happens(0.4)) hand.Mark(queen);
        if (_chance.Happens(0.006)) hand.Note(colony, _chance.Of(Remarks));
    }

    /// <summary>Stores judged by lifting.</summary>
    public Heft Lift(DemoColony colony)
    {
        var heft = _chance.About(colony.Vigour, 0.3) switch { < 0.7 => Heft.Light, < 1.1 => Heft.Fair, _ => Heft.Heavy };
        _pen.Write(new Inspected { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Heft = heft });
        return heft;
    }

    private int Pattern(DemoColony colony) => Math.Clamp((int)Math.Round(_chance.About(3.2 + colony.Vigour, 0.7)), 1, 5);
}
