using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>Courses of treatment and the washes before and after. Examples of what an outfit might record, not advice.</summary>
internal sealed class Treatments(World world, Hand hand, Summer summer)
{
    private readonly Pen _pen = world.Pen;
    private readonly Chance _chance = world.Chance;

    public void Plan()
    {
        foreach (var yard in world.Yards) yard.Mites = Math.Exp(_chance.About(0.7, 0.4));
        var begins = world.Day(7, 20);
        world.Round(begins, 10, yard =>
        {
            HoneyOff(yard);
            Wash(yard, yard.Mites);
            Dose(yard, 1, late: null);
        });
        world.Round(begins.AddDays(7), 10, yard =>
        {
            if (Course(yard).Each == 0.5m) Dose(yard, 2, late: null);
            if (yard.Index == Stories.Incomplete) NucBetweenDoses(yard);
        });
        world.Round(begins.AddDays(14), 10, yard =>
        {
            var (name, each) = Course(yard);
            if (name == "amitraz strips" || (Abandoned(yard) && each == 1)) return;
            Dose(yard, each == 0.5m ? 3 : 2, late: OnPaper(yard) ? world.Day(11, 14) : null);
        });
        world.Round(begins.AddDays(21), 10, yard =>
        {
            if (Course(yard).Each == 0.5m && !Abandoned(yard)) Dose(yard, 4, late: null);
        });
        world.Round(begins.AddDays(42), 10, TakeOutStrips);
        world.Round(world.Day(9, 14), 10, WashAfter);
        world.Round(world.Day(12, 8), 10, Winter);
    }

    /// <summary>Which course a yard gets this season, and how much of a full dose each time.</summary>
    private (string Name, decimal Each) Course(DemoYard yard) => yard.Index == Stories.Incomplete || yard.MatesQueens ? ("thymol summer", 1m) : ((yard.Index + world.Season) % 8) switch
    {
        5 => ("thymol summer", 0.5m),
        6 => ("formic summer", 1m),
        7 => ("amitraz strips", 1m),
        _ => ("thymol summer", 1m),
    };

    /// <summary>Here the course stopped half way: rain, and then the crew was elsewhere.</summary>
    private bool Abandoned(DemoYard yard) => yard.Index != Stories.Incomplete && !yard.MatesQueens && ((yard.Index * 7) + world.Season) % 11 == 0;

    /// <summary>Here the second dose was written on paper, and caught up with in November.</summary>
    private bool OnPaper(DemoYard yard) => (yard.Index + world.Season) % 9 == 4;

    private void HoneyOff(DemoYard yard)
    {
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in yard.Walk().Where(colony => colony is { Full: true, Supers: > 0 }))
        {
            summer.Harvest(colony, colony.Supers);
            colony.Supers = 0;
        }
    }

    private void Dose(DemoYard yard, int number, DateOnly? late)
    {
        var (name, each) = Course(yard);
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard), late ?? (_chance.Happens(0.05) ? _pen.Day.AddDays(_chance.Between(3, 20)) : null));
        var substance = name switch { "thymol summer" => "thymol gel", "formic summer" => "formic acid", "amitraz strips" => "amitraz", _ => "oxalic acid" };
        foreach (var colony in yard.Walk())
        {
            if (Skips(yard, colony, number) || _chance.Happens(0.004)) continue;
            var dose = new Treated
            {
                Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Course = name, Doses = each, Substance = substance, Lot = $"{char.ToUpperInvariant(name[0])}{world.Season % 100}-{1 + (yard.Index % 3)}", SupersOn = false,
            };
            if (!colony.Told && _chance.Happens(0.004)) Wrong(yard, dose);
            else _pen.Write(dose);
        }
    }

    /// <summary>The wrong line of the sheet was ticked, or the wrong amount written down.</summary>
    private void Wrong(DemoYard yard, Treated right)
    {
        var neighbour = yard.Colonies.First();
        var wrong = neighbour.Id == right.Colony || _chance.Happens(0.4) ? right with { Doses = right.Doses / 2 } : right with { Colony = neighbour.Id };
        _pen.WriteWrong(wrong, right with { Id = _pen.Next() }, wrong.Colony == right.Colony ? "it was a whole one" : "wrong line of the sheet", _chance.Between(1, 60));
    }

    /// <summary>At Withy Bottom two weak colonies miss the first dose, and the nuc made between the doses misses the second.</summary>
    private static bool Skips(DemoYard yard, DemoColony colony, int number) =>
        yard.Index == Stories.Incomplete && (number == 1 ? Weak(yard).Contains(colony) : colony.Told && colony.Housing == Housing.NucBox);

    public static IReadOnlyList<DemoColony> Weak(DemoYard yard) => [.. yard.Walk().Where(colony => colony is { Full: true, Queen: not null }).OrderBy(colony => colony.Vigour).ThenBy(colony => colony.Number, StringComparer.Ordinal).Take(2)];

    private void NucBetweenDoses(DemoYard yard)
    {
        var weak = Weak(yard);
        var maker = yard.Walk().FirstOrDefault(colony => colony is { Full: true, Queen: not null, Told: false } && !weak.Contains(colony));
        if (maker is null || World.Empty(yard).FirstOrDefault() is not { } spot || new Rearing(world, hand, new Looks(world, hand)).QueenAtHand() is not { } from) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        var nuc = hand.Establish(yard, spot, HowEstablished.Split, Housing.NucBox, world.NextNucNumber(), null, bees: 3, brood: 2, makers: [(maker, 3, 2)]);
        hand.Requeen(nuc, from);
        nuc.Told = true;
        hand.Note(nuc, "too small for the gel, left it out at the second dose", "treatment");
    }

    private void Wash(DemoYard yard, double mites)
    {
        var sampled = yard.Walk().Where(colony => colony is { Full: true, Queen: not null }).Where((_, i) => i % 4 == 1).Take(7).ToList();
        if (sampled.Count == 0) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in sampled) WriteWash(colony, mites, null);
    }

    private void WriteWash(DemoColony colony, double mites, int? exactly)
    {
        var estimated = _chance.Happens(0.6);
        var bees = estimated ? 300 : _chance.Between(240, 350);
        var wash = new Washed
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Bees = bees, BeesEstimated = estimated, Mites = exactly ?? Math.Min(bees, _chance.Mites(mites * bees / 100)),
            Method = (colony.Yard.Index % 5) switch { 0 => WashMethod.Soap, 4 => WashMethod.SugarRoll, _ => WashMethod.Alcohol },
        };
        if (_chance.Happens(0.01)) _pen.WriteWrong(wash with { Mites = wash.Mites + 30 }, wash with { Id = _pen.Next() }, "counted anew from the photograph", _chance.Between(0, 4));
        else _pen.Write(wash);
    }

    private void WashAfter(DemoYard yard)
    {
        Wash(yard, yard.Mites * (Abandoned(yard) ? 0.5 : 0.14));
        if (yard.Index == Stories.Incomplete && world.Season == Stories.LastAutumn(world) && Weak(yard).FirstOrDefault() is { } untreated) WriteWash(untreated, 0, 19);
        if (yard.Index == Stories.HighWash && world.Season == Stories.LastAutumn(world) && yard.Walk().FirstOrDefault(colony => colony is { Full: true, Queen: not null }) is { } one)
            WriteWash(one, 0, 34);
    }

    private void TakeOutStrips(DemoYard yard)
    {
        if (Course(yard).Name != "amitraz strips") return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in yard.Walk().Where(_ => _chance.Happens(0.93)))
            _pen.Write(new TreatmentTakenOut { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Course = "amitraz strips" });
    }

    private void Winter(DemoYard yard)
    {
        if ((yard.Index + world.Season) % 8 == 2) return;
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var colony in yard.Walk())
            _pen.Write(new Treated { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Colony = colony.Id, Course = "oxalic winter", Doses = 1, Substance = "oxalic acid", Lot = $"O{world.Season % 100}-1", SupersOn = false });
    }
}
