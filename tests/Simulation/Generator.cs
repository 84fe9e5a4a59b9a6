using ColonyLineage.Entries;

namespace ColonyLineage.Simulation;

/// <summary>
/// Invents the history of a small outfit over two to three seasons: what a crew does, what it gets wrong, what it records late,
/// and what it voids. Every entry could be recorded as it is; many contradict each other.
/// </summary>
public sealed partial class Generator
{
    private static readonly DateOnly FirstDay = new(2024, 2, 10);

    private readonly Chance _chance;
    private readonly List<Recorded> _recorded = [];
    private readonly List<YardId> _yards = [];
    private readonly List<MadeColony> _colonies = [];
    private readonly List<MadeQueen> _queens = [];
    private readonly int _size;
    private DateOnly _today = FirstDay;
    private DateTimeOffset _at;
    private ActId _act;
    private int _order;
    private bool _ordered;
    private int _numbers;
    private int _joined;

    private Generator(ulong seed, int least, int most)
    {
        _chance = new Chance(seed);
        _size = _chance.Between(least, most);
    }

    /// <summary>The history that belongs to a seed: from <paramref name="least"/> to about <paramref name="most"/> entries, in the order in which they were recorded.</summary>
    public static IReadOnlyList<Recorded> Make(ulong seed, int least = 10, int most = 60) => new Generator(seed, least, most).Run();

    private List<Recorded> Run()
    {
        var acts = Acts();
        var weights = acts.Sum(act => act.Weight);
        StartAct();
        Open();
        while (_recorded.Count < _size * 9 / 10)
        {
            StartAct();
            var drawn = _chance.Between(0, weights - 1);
            foreach (var (weight, act) in acts)
                if ((drawn -= weight) < 0)
                {
                    act();
                    break;
                }
        }

        Mistakes();
        return [.. _recorded.OrderBy(recorded => recorded.At).ThenBy(recorded => recorded.Entry.Id)];
    }

    private void StartAct()
    {
        if (_recorded.Count > 0 && !_chance.Percent(35)) _today = _today.AddDays(_chance.Percent(70) ? _chance.Between(1, 14) : _chance.Between(15, 70));
        _act = new ActId(_chance.Id());
        _ordered = _chance.Percent(40);
        _order = _chance.Percent(80) ? 0 : _chance.Between(0, 4);
        var late = _chance.Percent(15) ? _chance.Between(1, 150) : 0;
        _at = new DateTimeOffset(_today.AddDays(late), new TimeOnly(_chance.Between(9, 20), _chance.Between(0, 59)), TimeSpan.Zero);
    }

    private void Record(Entry entry) => _recorded.Add(new Recorded(entry, _at));

    private EntryId Id() => new(_chance.Id());

    private int Order() => _ordered ? _order++ : _order;

    /// <summary>The day of the act; now and then remembered as a day nearby.</summary>
    private Occurred On() => _chance.Percent(93) ? _today : _today.AddDays(_chance.Between(-20, 10));

    /// <summary>The day of the act, as an interval that reaches back.</summary>
    private Occurred Since() => new(_today, _today.AddDays(-_chance.Between(1, 120)));

    private YardId Yard() => _chance.Of(_yards);

    private Spot Spot() => new(Yard(), $"{_chance.Between(1, 4)}");

    private Spot? MaybeSpot(int percent = 85) => _chance.Percent(percent) ? Spot() : null;

    /// <summary>A living colony, for the most part; sometimes one that has ended, or one that nobody recorded.</summary>
    private MadeColony Colony()
    {
        if (_colonies.Count == 0 || _chance.Percent(2)) return NewColony();
        var living = _colonies.Where(colony => colony.Alive).ToList();
        return living.Count == 0 || _chance.Percent(4) ? _chance.Of(_colonies) : _chance.Of(living);
    }

    private MadeColony? Other(MadeColony than)
    {
        for (var i = 0; i < 5; i++)
            if (Colony() is var other && other != than)
                return other;
        return null;
    }

    private MadeColony NewColony()
    {
        var colony = new MadeColony(new ColonyId(_chance.Id()));
        _colonies.Add(colony);
        return colony;
    }

    private MadeQueen NewQueen()
    {
        var queen = new MadeQueen(new QueenId(_chance.Id()));
        _queens.Add(queen);
        return queen;
    }

    /// <summary>A new queen, for the most part; sometimes one that has been somewhere before.</summary>
    private MadeQueen Queen() => _queens.Count == 0 || _chance.Percent(75) ? NewQueen() : _chance.Of(_queens);

    private MadeQueen? Known() => _queens.Count == 0 ? null : _chance.Of(_queens);

    private void Seat(MadeQueen? queen, MadeColony colony)
    {
        if (colony.Queen is { } old) old.In = null;
        if (queen?.In is { } before) before.Queen = null;
        colony.Queen = queen;
        if (queen is not null) queen.In = colony;
    }

    private string Number() => $"{++_numbers}";

    private decimal? Frames(int most) => _chance.Percent(70) ? _chance.Between(0, most * 2) / 2m : null;

    private string Course() => _chance.Percent(75) ? "T" : _chance.Percent(70) ? "U" : "V";
}
