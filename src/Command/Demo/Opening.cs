using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>The books are opened: settings, courses, yards with their spots, and the opening count.</summary>
internal sealed class Opening(World world, Hand hand)
{
    private readonly Pen _pen = world.Pen;
    private readonly Chance _chance = world.Chance;
    private int _queens;

    /// <summary>Courses as an outfit might reckon them. They are examples of data, not advice: the label binds.</summary>
    private static readonly (string Course, decimal FullDoses, string Substance)[] Courses =
    [
        ("thymol summer", 2m, "thymol gel"), ("formic summer", 2m, "formic acid"), ("amitraz strips", 1m, "amitraz"), ("oxalic winter", 1m, "oxalic acid"),
    ];

    public void Plan()
    {
        var first = new DateOnly(world.FirstSeason, 3, 2);
        world.On(first, Describe);
        var yards = world.Options.Yards ?? Math.Max(4, world.Options.Colonies / 30);
        world.On(first, () =>
        {
            for (var i = 0; i < yards; i++) Open(i, world.Options.Colonies * 1.22 / yards, yards);
        });
        world.Round(first.AddDays(10), 12, Count);
        world.On(first.AddDays(55), StartLines);
    }

    private void Describe()
    {
        _pen.Begin(world.Crew[0]);
        _pen.Write(new OutfitDescribed { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Name = Places.Outfit, SeasonStartMonth = 3, FewFramesOfBees = 4 });
        foreach (var (course, doses, substance) in Courses)
            _pen.Write(Limits(new CourseDefined
            {
                Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Course = course, FullDoses = doses, Substance = substance, Country = "example", Source = "example, your label binds",
            }));
    }

    /// <summary>Limits as an owner might copy them from labels: examples of data, not advice.</summary>
    private static CourseDefined Limits(CourseDefined course) => course.Course switch
    {
        "thymol summer" => course with { DaysBetweenAtLeast = 5, DaysBetweenAtMost = 18, CoolestMaximum = 15, WarmestMaximum = 40, SupersOff = true, WholeYard = true, WithholdingDays = 0, BroodTooSoonDays = 21, MostPerSeason = 4, DoseBy = DosedBy.Colony },
        "formic summer" => course with { DaysBetweenAtLeast = 5, DaysBetweenAtMost = 21, CoolestMaximum = 10, WarmestMaximum = 29.5m, WholeYard = true, WithholdingDays = 0, DoseBy = DosedBy.Colony },
        "amitraz strips" => course with { DaysInAtLeast = 42, DaysInAtMost = 56, TakenOut = true, SupersOff = true, WholeYard = true, WithholdingDays = 14, DoseBy = DosedBy.FramesOfBees },
        _ => course with { BroodlessWanted = true, WithholdingDays = 0, SupersOff = true, WholeYard = true, MostPerSeason = 1, DoseBy = DosedBy.BroodChamber },
    };

    /// <summary>A yard is taken into use, and its spots are marked row by row, the way they stand.</summary>
    public DemoYard Open(int index, double spots, int yards)
    {
        var perRow = 6 + (index % 5);
        var full = Enumerable.Range(1, Math.Max(8, (int)Math.Ceiling(spots))).Select(number => $"{number}").ToList();
        // One yard in sixteen gets the queens mated; the moved yards do not.
        var matingYards = Math.Max(1, (yards + 12) / 16);
        var nucs = index < yards && index % 16 == Math.Min(3, yards - 1) ? Enumerable.Range(1, Math.Max(6, world.Options.Colonies / 7 / matingYards)).Select(number => $"M{number}").ToList() : [];
        var yard = new DemoYard(new YardId(_pen.NewId("yard")), index, full, nucs);
        world.Yards.Add(yard);
        _pen.Begin(world.Crew[0]);
        _pen.Write(new YardOpened
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Yard = yard.Id, Name = yard.Name, Landowner = $"{world.Chance.FirstNames[^(1 + (index % 40))]}'s land",
            Access = Places.Access[index % Places.Access.Length], RunAs = yard.InDoubles ? "doubles" : "singles",
        });
        for (var i = 0; i < full.Count; i++) MarkSpot(yard, full[i], 1 + (i / perRow), Gap(index, i % perRow));
        var rows = 1 + ((full.Count - 1) / perRow);
        for (var i = 0; i < nucs.Count; i++) MarkSpot(yard, nucs[i], rows + 1 + (i / 12), 1 + (i % 12));
        return yard;
    }

    /// <summary>In some yards a path goes between the places of a row.</summary>
    private static int Gap(int yard, int place) => 1 + place + (yard % 3 == 1 && place >= 4 ? 1 : 0);

    private void MarkSpot(DemoYard yard, string spot, int row, int place) =>
        _pen.Write(new SpotMarked { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Spot = new Spot(yard.Id, spot), Row = row, Place = place });

    private void Count(DemoYard yard)
    {
        _pen.Begin(world.CrewAt(yard), _pen.Visit(yard));
        foreach (var spot in yard.Spots.Take((int)(yard.Spots.Count * 0.68)))
        {
            var queen = _chance.Happens(0.86) ? Queen() : world.NewQueen(null, Birthday(), null);
            hand.Establish(yard, spot, HowEstablished.OpeningCount, yard.InDoubles ? Housing.Double : Housing.Single, world.NextColonyNumber(), queen);
        }
    }

    private DateOnly Birthday() => new DateOnly(world.FirstSeason - (_chance.Happens(0.55) ? 1 : _chance.Happens(0.75) ? 2 : 3), 5, 20).AddDays(_chance.Between(0, 80));

    /// <summary>A queen that was in the owner's old notebook, so she has a name and a day of birth.</summary>
    private DemoQueen Queen()
    {
        var born = Birthday();
        var queen = world.NewQueen($"{born.Year % 100:00}-{++_queens:000}", born, null);
        if (_chance.Happens(0.8)) queen.Mark = new QueenMark(QueenMark.DueFor(born.Year), $"{_queens % 100}");
        if (_chance.Happens(0.12))
            _pen.Write(new QueenBought { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Queen = queen.Id, Name = queen.Name, Seller = "a breeder over the pass", Born = born });
        else
            _pen.Write(new QueenRaised { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Queen = queen.Id, Name = queen.Name, MotherIs = Certainty.Unknown, Born = born, Note = "from the old notebook" });
        return queen;
    }

    private void StartLines()
    {
        _pen.Begin(world.Crew[0]);
        var yearlings = world.Colonies.Where(colony => colony.Queen is { Known: true } queen && queen.Born.Year == world.FirstSeason - 1).ToList();
        for (var line = 0; line < Places.Lines.Length && yearlings.Count > 0; line++)
        {
            var colony = yearlings[line * (yearlings.Count - 1) / Places.Lines.Length];
            var old = colony.Queen!;
            var breeder = new DemoQueen { Id = old.Id, Name = old.Name, Born = old.Born, Line = line, Mark = old.Mark, LastSeen = old.LastSeen };
            (colony.Queen, colony.Vigour) = (breeder, 1.3);
            world.Breeders[line].Add(breeder);
            _pen.Write(new LineStarted { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Line = Places.Lines[line], Breeder = breeder.Id });
        }
    }
}
