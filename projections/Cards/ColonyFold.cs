using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>Folds the standing entries that concern a colony into its card.</summary>
internal sealed class ColonyFold(ColonyId colony)
{
    private readonly List<Stay> _stays = [];
    private readonly List<Reign> _reigns = [];
    private readonly List<Entry> _counted = [];
    private readonly List<Entry> _outOfLife = [];
    private ColonyEstablished? _began;
    private ColonyEnd? _end;
    private Housing? _housing;
    private TakenOut? _takenOut;
    private DateOnly? _seenAlive;

    /// <summary>The day the queen was last seen; before anybody saw her, the day she came; before there was one, the day the colony began.</summary>
    private DateOnly? _queenSeen;

    private QueenId? _cell;

    public ColonyCard Fold(IReadOnlyList<Entry> entries)
    {
        _began = entries.OfType<ColonyEstablished>().FirstOrDefault(entry => entry.Colony == colony);
        // What made the colony belongs to its beginning, even where its order within the day says 'before'.
        var beganAt = _began is { } began ? Place.Of(began) : (Place?)null;
        foreach (var entry in entries)
        {
            var early = beganAt is { } start && Place.Of(entry) < start && !MadeIt(entry, start.Day);
            if (_end is not null || early) _outOfLife.Add(entry);
            else
            {
                _counted.Add(entry);
                Take(entry);
            }
        }

        return new ColonyCard
        {
            Colony = colony,
            Began = _began,
            Stays = _stays,
            Reigns = _reigns,
            Counted = _counted,
            Joinings = _counted.Where(entry => Joining.From(entry, colony) is not null).ToList(),
            OutOfLife = _outOfLife.Where(IsOfItsLife).ToList(),
            Settled = entries.OfType<ConflictSettled>().ToList(),
            End = _end,
            Housing = _housing,
            TakenOut = _takenOut,
        };
    }

    private bool MadeIt(Entry entry, DateOnly day) => entry is SplitFrom split && split.Into == colony && entry.On.Day == day;

    /// <summary>A note or a settled conflict may come after the end without contradicting anything.</summary>
    private static bool IsOfItsLife(Entry entry) => entry is not (Noted or ConflictSettled or OwedEntry);

    private void Take(Entry entry)
    {
        switch (entry)
        {
            case ColonyEstablished established when established.Colony == colony:
                Begin(established);
                break;
            case Moved moved:
                Stand(moved.To, moved.Above, moved);
                break;
            case NucTransferred transferred:
                _housing = transferred.Into;
                break;
            case BoxesChanged changed:
                _housing = changed.Housing;
                break;
            case TakenOut takenOut:
                _takenOut = takenOut;
                break;
            case Inspected inspected:
                Look(inspected);
                break;
            case Requeened requeened:
                GiveQueen(requeened.Queen, requeened, Fate(requeened.OldQueen));
                break;
            case QueenIntroduced introduced:
                GiveQueen(introduced.Queen, introduced, HowWent.Replaced);
                break;
            case QueenCellGiven cell:
                if (Now is null) StartReign(cell.Queen, HowCame.Cell, cell.On, cell);
                else _cell = cell.Queen;
                break;
            case QueenAccepted accepted:
                Accept(accepted);
                break;
            case SupersedureSeen seen:
                Supersede(seen);
                break;
            case QueenCaged or QueenReleased:
                _queenSeen = entry.On.Day;
                break;
            case QueenKilled killed:
                EndReign(HowWent.Killed, killed.On, killed);
                break;
            case FoundQueenless queenless:
                EndReign(HowWent.Lost, Since(_queenSeen, queenless.On), queenless);
                break;
            case QueenEnded ended when Now is { } now && now.Queen == ended.Queen:
                EndReign(ended.How == QueenEnd.Culled ? HowWent.Killed : ended.How == QueenEnd.Sold ? HowWent.TakenOut : HowWent.Lost, ended.On, ended);
                break;
            case QueenBanked banked when Now is { } now && now.Queen == banked.Queen:
                EndReign(HowWent.TakenOut, banked.On, banked);
                break;
            case Combined combined when combined.Into == colony:
                KeepQueen(combined);
                break;
            case Combined combined when combined.Colony == colony:
                EndColony(new ColonyEnd(EndKind.Combined, combined.On, combined, combined.Into, null));
                break;
            case FoundDead dead:
                EndColony(new ColonyEnd(EndKind.Dead, Since(_seenAlive, dead.On), dead, null, dead.Cause));
                break;
            case Ended ended:
                EndColony(new ColonyEnd(EndKind.GivenUp, ended.On, ended, null, ended.Why));
                break;
            case Sold sold:
                EndColony(new ColonyEnd(EndKind.Sold, sold.On, sold, null, sold.To));
                break;
        }

        if (ShowsLife(entry)) _seenAlive = entry.On.Day;
    }

    private Reign? Now => _reigns.Count > 0 && _reigns[^1].To is null ? _reigns[^1] : null;

    private void Begin(ColonyEstablished established)
    {
        _queenSeen = established.On.Day;
        if (established.Housing is { } housing) _housing = housing;
        if (established.At is { } at) Stand(at, established.Above, established);
        if (established.Queen is { } queen) GiveQueen(queen, established, HowWent.Replaced, HowCame.WithColony);
        else if (established.How is HowEstablished.Package or HowEstablished.Swarm or HowEstablished.Bought or HowEstablished.OpeningCount && Now is null)
            StartReign(null, HowCame.WithColony, established.On, established);
    }

    private void Stand(Spot spot, bool above, Entry by)
    {
        if (_stays.Count > 0 && _stays[^1].To is null) _stays[^1] = _stays[^1] with { To = by.On, WentBy = by };
        _stays.Add(new Stay(spot, above, by.On, by, null, null));
    }

    private void Look(Inspected inspected)
    {
        var laying = inspected.Queen is QueenFinding.Seen or QueenFinding.Queenright || (inspected.Queen is null && inspected.EggsSeen == true);
        if (laying && Now is null) StartReign(null, HowCame.Found, Since(_reigns.Count > 0 ? _reigns[^1].To?.Day : _began?.On.Day, inspected.On), inspected);
        if (inspected.Queen == QueenFinding.Seen || inspected.MarkSeen is not null) _queenSeen = inspected.On.Day;
    }

    private void GiveQueen(QueenId queen, Entry by, HowWent fate, HowCame came = HowCame.Given)
    {
        if (Now is { } now && now.Queen == queen) return;
        EndReign(fate, by.On, by);
        StartReign(queen, came, by.On, by);
    }

    private void Accept(QueenAccepted accepted)
    {
        if (!accepted.Accepted)
        {
            if (Now is { } now && now.Queen == accepted.Queen) EndReign(HowWent.Lost, Since(_queenSeen, accepted.On), accepted);
            return;
        }

        if (Now?.Queen != accepted.Queen) GiveQueen(accepted.Queen, accepted, HowWent.Replaced, _cell == accepted.Queen ? HowCame.Cell : HowCame.Given);
        _queenSeen = accepted.On.Day;
    }

    private void Supersede(SupersedureSeen seen)
    {
        if (Now is { } now && now.Queen == seen.Queen) return;
        var when = !seen.OldStillThere ? Since(_queenSeen, seen.On) : seen.On;
        EndReign(HowWent.Superseded, when, seen);
        StartReign(seen.Queen, HowCame.Supersedure, when, seen);
        _queenSeen = seen.On.Day;
    }

    private void KeepQueen(Combined combined)
    {
        if (combined.QueenKept is not { } kept || Now?.Queen == kept) return;
        EndReign(HowWent.NotKept, combined.On, combined);
        StartReign(kept, HowCame.Combined, combined.On, combined);
    }

    private void StartReign(QueenId? queen, HowCame came, Occurred from, Entry by)
    {
        _reigns.Add(new Reign(queen, came, from, by, null, null, null));
        _cell = null;
        // What was seen of the queen before her tells nothing of this one: she was not lost or superseded before she came.
        _queenSeen = by.On.Day;
    }

    private void EndReign(HowWent how, Occurred on, Entry by)
    {
        if (Now is { } now) _reigns[^1] = now with { Went = how, To = on, WentBy = by };
    }

    private void EndColony(ColonyEnd end)
    {
        _end = end;
        EndReign(HowWent.ColonyEnded, end.On, end.By);
        if (_stays.Count > 0 && _stays[^1].To is null) _stays[^1] = _stays[^1] with { To = end.On, WentBy = end.By };
    }

    /// <summary>An exact day becomes the interval since something was last seen; an interval that was given stays.</summary>
    private static Occurred Since(DateOnly? lastSeen, Occurred on) =>
        on.After is null && lastSeen is { } last && last < on.Day ? new Occurred(on.Day, last) : on;

    private static HowWent Fate(OldQueen old) => old switch
    {
        OldQueen.Killed => HowWent.Killed,
        OldQueen.TakenOut => HowWent.TakenOut,
        OldQueen.NotFound => HowWent.Lost,
        _ => HowWent.Lost,
    };

    /// <summary>Bees were seen: a treatment or a feed given from above says nothing about life.</summary>
    private static bool ShowsLife(Entry entry) => entry is ColonyEstablished or Inspected or Washed or SplitFrom or FramesMoved or Requeened
        or QueenIntroduced or QueenAccepted or QueenCellGiven or SupersedureSeen or QueenKilled or FoundQueenless or QueenCaged or QueenReleased
        or NucTransferred or Combined or TakenOut;
}
