using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Cards;

/// <summary>Folds the standing entries that concern a queen into her card.</summary>
internal sealed class QueenFold(QueenId queen)
{
    /// <summary>A queen emerges 12 days after her larva was grafted (queen-rearing timetables).</summary>
    private const int DaysFromGraft = 12;

    /// <summary>At most 16 days from egg to emergence: a cell that is given hatches within them (handbooks).</summary>
    private const int DaysFromEgg = 16;

    private readonly List<Placing> _placings = [];
    private readonly List<QueenId> _daughters = [];
    private ColonyId? _last;
    private QueenCard _card = new() { Queen = queen };

    public QueenCard Fold(IReadOnlyList<Entry> entries)
    {
        foreach (var entry in entries) Take(entry);
        return _card with { Placings = _placings, Daughters = _daughters, Entries = entries, LastColony = _last };
    }

    private void Take(Entry entry)
    {
        switch (entry)
        {
            case QueenRaised raised when raised.Queen == queen:
                Raise(raised);
                break;
            case QueenRaised raised:
                Daughter(raised.Queen);
                break;
            case QueenBought bought when bought.Queen == queen:
                _card = _card with { Name = bought.Name ?? _card.Name, Bought = true };
                Birth(bought.Born, bought, says: true);
                Mother(bought.Mother, Certainty.Known, bought);
                break;
            case QueenBought bought:
                Daughter(bought.Queen);
                break;
            case QueenMarked marked:
                _card = _card with { Marked = marked };
                break;
            case QueenMated mated when mated.Queen == queen:
                _card = _card with { Mated = mated };
                break;
            case ColonyEstablished established:
                Place(established.Colony, established);
                break;
            case Requeened requeened when requeened.Queen == queen:
                Place(requeened.Colony, requeened);
                break;
            case Requeened requeened when requeened.OldQueen is OldQueen.Killed:
                End(requeened);
                break;
            case Requeened:
                Leave(entry);
                break;
            case QueenIntroduced introduced:
                Place(introduced.Colony, introduced);
                break;
            case QueenAccepted { Accepted: true } accepted:
                Place(accepted.Colony, accepted);
                break;
            case QueenAccepted:
                Leave(entry);
                break;
            case QueenCellGiven cell:
                Birth(new Occurred(cell.On.Day.AddDays(DaysFromEgg), cell.On.Day.AddDays(-1)), cell, says: false);
                if (_card.From == RaisedFrom.Unknown) _card = _card with { From = RaisedFrom.Cell, Batch = _card.Batch ?? cell.Batch };
                Place(cell.Colony, cell);
                break;
            case SupersedureSeen seen when seen.Queen == queen:
                _card = _card with { CameBySupersedure = seen, From = _card.From == RaisedFrom.Unknown ? RaisedFrom.Supersedure : _card.From };
                Mother(seen.Old, Certainty.Supposed, seen);
                Place(seen.Colony, seen);
                break;
            case SupersedureSeen seen:
                Daughter(seen.Queen);
                if (!seen.OldStillThere) End(seen);
                break;
            case Combined combined:
                Place(combined.Into, combined);
                break;
            case QueenKilled or QueenEnded or FoundQueenless:
                End(entry);
                break;
            case QueenBanked:
                Leave(entry);
                break;
        }
    }

    private void Raise(QueenRaised raised)
    {
        _card = _card with
        {
            Name = raised.Name ?? _card.Name,
            From = raised.From == RaisedFrom.Unknown ? _card.From : raised.From,
            Batch = raised.Batch ?? _card.Batch,
        };
        if (raised.Born is not null) Birth(raised.Born, raised, says: true);
        else if (raised.Grafted is { } grafted) Birth(new Occurred(grafted.AddDays(DaysFromGraft)), raised, says: true);
        Mother(raised.Mother, raised.MotherIs, raised);
    }

    /// <summary>What somebody says of her birth counts before what a cell lets one suppose.</summary>
    private void Birth(Occurred? born, Entry by, bool says)
    {
        if (born is null || (!says && _card.Born is not null)) return;
        _card = _card with { Born = born, BornBy = by };
    }

    /// <summary>A known mother counts before a supposed one; of two equals the later word.</summary>
    private void Mother(QueenId? mother, Certainty sure, Entry by)
    {
        if (mother is null || mother == queen || (_card.MotherIs == Certainty.Known && sure != Certainty.Known)) return;
        _card = _card with { Mother = mother, MotherIs = sure == Certainty.Unknown ? Certainty.Supposed : sure, MotherBy = by };
    }

    private void Daughter(QueenId daughter)
    {
        if (daughter != queen && !_daughters.Contains(daughter)) _daughters.Add(daughter);
    }

    private void Place(ColonyId colony, Entry by)
    {
        if (_last != colony)
        {
            Leave(by);
            _placings.Add(new Placing(colony, by, null));
        }

        _last = colony;
        _card = _card with { EndedBy = null };
    }

    private void Leave(Entry by)
    {
        if (_last is not null) _placings[^1] = _placings[^1] with { Until = by };
        _last = null;
    }

    private void End(Entry by)
    {
        Leave(by);
        _card = _card with { EndedBy = by };
    }
}
