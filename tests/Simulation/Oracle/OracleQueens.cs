using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>The queen of a living colony, as the oracle has it.</summary>
public sealed class OracleQueenRow
{
    public required ColonyId Colony { get; init; }
    public Spot? At { get; init; }
    public required string Presence { get; init; }
    public QueenId? Queen { get; set; }
    public DateOnly? BornFrom { get; set; }
    public DateOnly? BornTo { get; set; }
    public string Sure { get; set; } = "unknown";
    public string? MarkDue { get; set; }
    public string? MarkSeen { get; set; }
    public QueenId? Mother { get; set; }
    public Certainty? MotherIs { get; set; }
    public string? Line { get; set; }
    public string? Came { get; set; }
    public DateOnly? SinceFrom { get; set; }
    public DateOnly? SinceTo { get; set; }
    public DateOnly? LastSeen { get; set; }
    public QueenFinding? Finding { get; set; }
    public DateOnly? LastLook { get; set; }
    public decimal? FramesOfBees { get; set; }
    public decimal? FramesOfBrood { get; set; }
    public bool? BeesFew { get; set; }

    /// <summary>Entries that the row cannot do without.</summary>
    public List<EntryId> Rests { get; } = [];
}

/// <summary>Queens by age.</summary>
public sealed partial class OracleBooks
{
    public List<OracleQueenRow> Queens()
    {
        var rows = new List<OracleQueenRow>();
        foreach (var id in AllColonies())
            if (Colony(id) is { End: null, Counted.Count: > 0 } colony)
                rows.Add(QueenRow(id, colony));
        return rows;
    }

    private OracleQueenRow QueenRow(ColonyId id, OracleColony colony)
    {
        OracleReign? reign = null;
        foreach (var one in colony.Reigns)
            if (one.Gone is null)
                reign = one;
        // Whoever was set into another colony since, or lost, does not reign here, though nobody said so here.
        if (reign?.Queen is { } named && WhereIs(named) != id) reign = null;
        var row = new OracleQueenRow { Colony = id, At = colony.Standing?.Spot, Presence = reign is null ? "none known" : reign.Queen is null ? "unnamed queen" : "queen" };
        foreach (var entry in colony.Counted)
            if (entry is Inspected look)
            {
                (row.Finding, row.LastLook) = (look.Queen, look.On.Day);
                row.FramesOfBees = look.FramesOfBees ?? row.FramesOfBees;
                row.FramesOfBrood = look.FramesOfBrood ?? row.FramesOfBrood;
            }

        if (row.FramesOfBees is { } frames) row.BeesFew = frames <= Few();
        if (colony.Began is not null) row.Rests.Add(colony.Began.Id);
        if (reign is not null) Fill(row, colony, reign);
        return row;
    }

    private decimal Few()
    {
        var few = 4m;
        foreach (var entry in _standing)
            if (entry is OutfitDescribed { FewFramesOfBees: { } said })
                few = said;
        return few;
    }

    private void Fill(OracleQueenRow row, OracleColony colony, OracleReign reign)
    {
        row.Rests.Add(reign.By.Id);
        (row.Came, row.SinceFrom, row.SinceTo) = (reign.Came, reign.From, reign.To);
        Entry? mark = null;
        foreach (var entry in reign.Queen is { } named ? Sights(named) : SightsIn(colony, reign))
        {
            row.LastSeen = entry.On.Day;
            if (entry is Inspected { MarkSeen: not null }) mark = entry;
        }

        if (reign.Queen is not { } queen)
        {
            row.MarkSeen = (mark as Inspected)?.MarkSeen!.Colour.ToString().ToLowerInvariant();
            return;
        }

        foreach (var entry in _standing)
            if (entry is QueenMarked marked && marked.Queen == queen && (mark is null || Before(mark, marked)))
                mark = marked;
        row.MarkSeen = mark switch
        {
            Inspected look => look.MarkSeen!.Colour.ToString().ToLowerInvariant(),
            QueenMarked marked => marked.Mark.Colour.ToString().ToLowerInvariant(),
            _ => null,
        };
        row.Queen = queen;
        if (MotherOf(queen) is { } mother) (row.Mother, row.MotherIs) = (mother.Mother, mother.Sure);
        row.Line = LineOf(queen);
        if (BirthOf(queen) is not { } born) return;
        row.Rests.Add(born.By.Id);
        (row.BornFrom, row.BornTo) = (born.From, born.To);
        row.Sure = SeasonOf(born.From, SeasonStart()) == SeasonOf(born.To, SeasonStart()) ? "certain" : "possible";
        var due = new List<string>();
        for (var year = born.From.Year; year <= born.To.Year; year++)
        {
            var colour = (year % 10) switch { 1 or 6 => "white", 2 or 7 => "yellow", 3 or 8 => "red", 4 or 9 => "green", _ => "blue" };
            if (!due.Contains(colour)) due.Add(colour);
        }

        row.MarkDue = string.Join(" or ", due);
    }

    /// <summary>All that saw a queen whom nobody named: from her coming on.</summary>
    private static List<Entry> SightsIn(OracleColony colony, OracleReign reign)
    {
        var sights = new List<Entry>();
        foreach (var entry in colony.Counted)
            if (ShowsQueen(entry) && !Before(entry, reign.By))
                sights.Add(entry);
        return sights;
    }

    /// <summary>All that saw a queen, wherever she was then: she had been set into that colony, and it had her for its queen.</summary>
    private List<Entry> Sights(QueenId queen)
    {
        var sights = new List<Entry>();
        ColonyId? where = null;
        foreach (var entry in _standing)
        {
            where = WhereAfter(entry, queen, where);
            if (where is not { } id || !ShowsQueen(entry) || !ColoniesIn(entry).Contains(id) || !Colony(id).Counted.Contains(entry)) continue;
            foreach (var reign in Colony(id).Reigns)
                if (reign.Queen == queen && !Before(entry, reign.By) && (reign.Gone is null || Before(entry, reign.Gone)))
                    sights.Add(entry);
        }

        return sights;
    }

    private static bool ShowsQueen(Entry entry) => entry switch
    {
        Inspected look => look.Queen == QueenFinding.Seen || look.MarkSeen is not null,
        ColonyEstablished established => established.Queen is not null,
        QueenAccepted accepted => accepted.Accepted,
        Combined combined => combined.QueenKept is not null,
        Requeened or QueenIntroduced or SupersedureSeen or QueenCaged or QueenReleased => true,
        _ => false,
    };

    /// <summary>The colony a queen was last set into, unless she was lost, killed, banked or sold since.</summary>
    private ColonyId? WhereIs(QueenId queen)
    {
        ColonyId? where = null;
        foreach (var entry in _standing) where = WhereAfter(entry, queen, where);
        return where;
    }

    private static ColonyId? WhereAfter(Entry entry, QueenId queen, ColonyId? where) => entry switch
    {
        ColonyEstablished e when e.Queen == queen => e.Colony,
        Requeened e when e.Queen == queen => e.Colony,
        QueenIntroduced e when e.Queen == queen => e.Colony,
        QueenAccepted e when e.Queen == queen => e.Accepted ? e.Colony : null,
        QueenCellGiven e when e.Queen == queen => e.Colony,
        SupersedureSeen e when e.Queen == queen => e.Colony,
        Combined e when e.QueenKept == queen => e.Into,
        Requeened e when e.Old == queen => null,
        SupersedureSeen e when e.Old == queen && !e.OldStillThere => null,
        QueenKilled e when e.Queen == queen => null,
        FoundQueenless e when e.Queen == queen => null,
        QueenEnded e when e.Queen == queen => null,
        QueenBanked e when e.Queen == queen => null,
        _ => where,
    };

    /// <summary>When a queen emerged: by somebody's word; else between the last sight of the queen before her and the first of her; else out of her cell.</summary>
    public (DateOnly From, DateOnly To, Entry By)? BirthOf(QueenId queen)
    {
        (DateOnly, DateOnly, Entry)? said = null;
        foreach (var entry in _standing)
        {
            if (entry is QueenRaised raised && raised.Queen == queen)
            {
                if (raised.Born is { } born) said = (born.Earliest, born.Day, entry);
                else if (raised.Grafted is { } grafted) said = (grafted.AddDays(12), grafted.AddDays(12), entry);
            }

            if (entry is QueenBought { Born: { } day } bought && bought.Queen == queen) said = (day.Earliest, day.Day, entry);
        }

        if (said is not null) return said;
        if (Supersedure(queen) is var (_, reign)) return (reign.From, reign.To, reign.By);
        foreach (var entry in _standing)
            if (entry is QueenCellGiven cell && cell.Queen == queen)
                return (cell.On.Day, cell.On.Day.AddDays(16), entry);
        return null;
    }

    /// <summary>The reign that a queen began in another's place, where the bees raised her.</summary>
    private (int Index, OracleReign Reign)? Supersedure(QueenId queen)
    {
        ColonyId? where = null;
        foreach (var entry in _standing)
            if (entry is SupersedureSeen seen && seen.Queen == queen)
                where = seen.Colony;
        if (where is null) return null;
        var reigns = Colony(where.Value).Reigns;
        for (var i = 0; i < reigns.Count; i++)
            if (reigns[i].Queen == queen && reigns[i].Came == "Supersedure")
                return (i, reigns[i]);
        return null;
    }

    /// <summary>A queen's mother: a known one before a supposed one, the later word of two equals; else the queen whom she replaced.</summary>
    public (QueenId Mother, Certainty Sure)? MotherOf(QueenId queen)
    {
        (QueenId Mother, Certainty Sure)? best = null;
        foreach (var entry in _standing)
        {
            (QueenId, Certainty)? word = entry switch
            {
                QueenRaised { Mother: { } mother } raised when raised.Queen == queen => (mother, raised.MotherIs == Certainty.Known ? Certainty.Known : Certainty.Supposed),
                QueenBought { Mother: { } mother } bought when bought.Queen == queen => (mother, Certainty.Known),
                SupersedureSeen { Old: { } old } seen when seen.Queen == queen => (old, Certainty.Supposed),
                _ => null,
            };
            if (word is { } said && (best is null || said.Item2 == Certainty.Known || best.Value.Sure != Certainty.Known)) best = said;
        }

        if (best is not null) return best;
        if (Supersedure(queen) is not var (index, _)) return null;
        ColonyId colony = default;
        foreach (var entry in _standing)
            if (entry is SupersedureSeen seen && seen.Queen == queen)
                colony = seen.Colony;
        if (index > 0 && Colony(colony).Reigns[index - 1].Queen is { } before && before != queen) return (before, Certainty.Supposed);
        return null;
    }

    private string? LineOf(QueenId queen)
    {
        var walked = new List<QueenId>();
        QueenId? at = queen;
        while (at is { } here && !walked.Contains(here))
        {
            walked.Add(here);
            string? line = null;
            foreach (var entry in _standing)
                if (entry is LineStarted started && started.Breeder == here)
                    line = started.Line;
            if (line is not null) return line;
            at = MotherOf(here)?.Mother;
        }

        return null;
    }
}
