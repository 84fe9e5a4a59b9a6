using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>What the owner sets and counts: targets and criteria for the winter, stock, lots of medicine, warm days, the rounds that are planned, and work that was put off.</summary>
internal sealed class Storeroom(World world)
{
    private readonly Pen _pen = world.Pen;

    public void Open()
    {
        _pen.Begin(world.Crew[0]);
        foreach (var (housing, stores, tare) in (ReadOnlySpan<(Housing, decimal, decimal)>)[(Housing.Single, 18m, 17m), (Housing.Double, 27m, 29m), (Housing.NucBox, 8m, 6m)])
            _pen.Write(new StoresTargetSet
            {
                Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Housing = housing, Stores = new Quantity(stores, "kg"), Tare = new Quantity(tare, "kg"), Region = "an invented vale", Source = "example, set your own",
            });
        _pen.Write(new ReadinessSet
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, QueenSeasonsBackAtMost = 1, BroodSeenWithinDays = 75, FramesOfBeesAtLeast = 5, StoresAtTarget = true, MitesAtMost = 2, CoursesComplete = ["thymol summer"], NothingOwed = true,
        });
    }

    public void Plan()
    {
        world.On(world.Day(4, 8), BuyLots);
        world.On(world.Day(8, 1), CountStock);
        world.On(world.Day(10, 1), UseSugar);
        // The crew reads the thermometer in the yard when it treats there, one yard in three.
        for (var day = world.Day(7, 20); day < world.Day(8, 31); day = day.AddDays(1)) world.On(day, ReadThermometers);
        if (world.Season != world.Running) return;
        world.On(world.Day(9, 2), PutOff);
        world.On(_pen.LastDay, PlanRounds);
    }

    private void BuyLots()
    {
        _pen.Begin(world.Crew[0]);
        foreach (var (product, substance, letter) in (ReadOnlySpan<(string, string, char)>)[("gel in tubs", "thymol gel", 'T'), ("pads", "formic acid", 'F'), ("crystals in bags", "oxalic acid", 'O')])
            // The purchase of each second lot was not written down.
            for (var lot = 1; lot <= 3; lot += 2)
                _pen.Write(new MedicineAcquired
                {
                    Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Product = product, Substance = substance, Lot = $"{letter}{world.Season % 100}-{lot}", Supplier = "the co-operative at the bridge, Mill Street 4", Proof = $"folder {world.Season}",
                    UseBy = new DateOnly(world.Season + 2, 12, 31),
                });
    }

    private void CountStock()
    {
        _pen.Begin(world.Crew[0]);
        var colonies = world.Colonies.Count();
        Count(StockOf.Sugar, "sacks", colonies * 6, "kg");
        Count(StockOf.Feeders, "large", colonies / 4, Units.Piece);
        Count(StockOf.Feeders, "small", 24, Units.Piece);
        Count(StockOf.Boxes, null, 18, Units.Piece);
        Count(StockOf.DrawnComb, null, colonies / 2, Units.Piece);
        Count(StockOf.MatedQueens, "caged", 7, Units.Piece);
        Count(StockOf.Nucs, "at Larch Nook", 9, Units.Piece);
        Count(StockOf.Doses, "oxalic winter", colonies / 3, Units.Piece);
    }

    private void Count(StockOf of, string? which, decimal amount, string unit) =>
        _pen.Write(new StockCounted { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Of = of, Which = which, Amount = new Quantity(amount, unit) });

    private void UseSugar()
    {
        _pen.Begin(world.Crew[0]);
        _pen.Write(new StockChanged { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Of = StockOf.Sugar, Which = "sacks", Amount = new Quantity(world.Colonies.Count() * 5, "kg"), Out = true, Why = "mixed and fed" });
    }

    private void ReadThermometers()
    {
        foreach (var yard in world.Yards.Where(yard => yard.Index % 3 == 2))
        {
            _pen.Begin(world.CrewAt(yard));
            // A warm spell at the end of July, some cool days in the middle of August; the same every season, so that nothing else is drawn otherwise.
            var warm = 24 + (9 * Math.Sin((_pen.Day.DayNumber + (yard.Index * 3)) / 4.3)) + (_pen.Day is { Month: 7, Day: > 26 } ? 8 : 0) - (_pen.Day is { Month: 8, Day: > 12 and < 17 } ? 7 : 0);
            _pen.Write(new DailyMaximum { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Yard = yard.Id, Maximum = new Temperature(Math.Round((decimal)warm, 1), "C"), Station = "thermometer at the gate" });
        }
    }

    private void PutOff()
    {
        var nucs = _pen.Written<BoxesChanged>(entry => entry.Housing == Housing.NucBox).Where(entry => world.Colonies.Any(colony => colony.Id == entry.Colony && colony.Housing == Housing.NucBox)).ToList();
        if (nucs.Count < 2) return;
        _pen.Begin(world.Crew[1]);
        _pen.Write(new WorkPutOff { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Work = "transfer", Opened = nucs[^1].Id, Colony = nucs[^1].Colony, Until = new DateOnly(world.Season + 1, 3, 20), Why = "winters in its box" });
        _pen.Write(new WorkDoneElsewhere { Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Work = "transfer", Opened = nucs[^2].Id, Colony = nucs[^2].Colony, Why = "promised to a neighbour as it stands" });
    }

    /// <summary>Tomorrow three yards, the day after some more: in an order for which there are reasons.</summary>
    private void PlanRounds()
    {
        var tomorrow = _pen.LastDay.AddDays(2);
        (int Index, int Day, string Truck, string Why)[] stops =
        [
            (Stories.Incomplete, 0, "flatbed", "a course is not complete, and the ford floods after rain"), (Stories.HighWash, 0, "flatbed", "the high wash of September"), (Stories.OldQueens, 0, "van", "on the way home"),
            (Stories.TwiceReplaced, 1, "flatbed", "next to the lane"), (4, 1, "van", "the landowner is away on Mondays"),
        ];
        _pen.Begin(world.Crew[0]);
        _pen.Write(new RoundPlanned
        {
            Id = _pen.Next(), On = _pen.Day, Act = _pen.Now, Round = "last look before frost",
            Stops = [.. stops.Where(stop => world.Yards.Any(yard => yard.Index == stop.Index)).Select(stop => new RoundStop(world.Yards.First(yard => yard.Index == stop.Index).Id, tomorrow.AddDays(stop.Day), stop.Truck, stop.Why))],
        });
    }
}
