using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>One time of a colony on a spot, as the oracle has it.</summary>
public sealed class OracleBand
{
    public required ColonyId Colony { get; init; }
    public required OracleStay Stay { get; init; }
    public required string? Came { get; init; }
    public required string? Went { get; init; }
    public required List<string> Up { get; init; }
    public required List<string> Down { get; init; }
    public required List<string> Queens { get; init; }
    public required List<EntryId> Done { get; init; }
}

/// <summary>Spot story.</summary>
public sealed partial class OracleBooks
{
    public List<OracleBand> Bands()
    {
        var bands = new List<OracleBand>();
        foreach (var colony in AllColonies())
            for (var i = 0; i < Colony(colony).Stays.Count; i++)
                bands.Add(Band(colony, i));
        return bands;
    }

    private OracleBand Band(ColonyId id, int index)
    {
        var colony = Colony(id);
        var stay = colony.Stays[index];
        var makers = new List<SplitFrom>();
        if (index == 0)
            foreach (var entry in colony.Counted)
                if (entry is SplitFrom split && split.Into == id)
                    makers.Add(split);
        var done = new List<Entry>();
        foreach (var entry in colony.Counted)
            if (makers.Contains(entry) || (!Before(entry, stay.Came) && (stay.Went is null || !Before(stay.Went, entry))))
                done.Add(entry);
        var next = index + 1 < colony.Stays.Count ? colony.Stays[index + 1].Spot : (Spot?)null;
        var up = new List<string>();
        var down = new List<string>();
        foreach (var maker in makers) up.Add(NameOf(maker.Colony));
        if (index > 0) up.Add(NameOf(colony.Stays[index - 1].Spot));
        foreach (var entry in done)
            if (entry is SplitFrom split && split.Colony == id)
                down.Add(NameOf(split.Into));
        if (next is { } spot) down.Add(NameOf(spot));
        else if (colony.End is Combined combined) down.Add(NameOf(combined.Into));
        var queens = new List<string>();
        foreach (var reign in colony.Reigns)
        {
            if (stay.Went is not null && Before(stay.Went, reign.By)) continue;
            if (reign.Gone is not null && Before(reign.Gone, stay.Came)) continue;
            queens.Add(reign.Queen is { } queen ? NameOf(queen) : "unnamed queen");
        }

        return new OracleBand
        {
            Colony = id, Stay = stay, Up = up, Down = down, Queens = queens, Done = [.. done.Select(entry => entry.Id)],
            Came = index > 0 ? "moved from " + up[0] : makers.Count > 0 ? "made from " + string.Join(", ", up) : colony.Began?.How == HowEstablished.Bought ? "bought" : null,
            Went = next is not null ? "moved to " + down[^1] : colony.End switch
            {
                null => null,
                Combined => "combined into " + down[^1],
                FoundDead => "found dead",
                Sold => "sold",
                _ => "given up: " + ((Ended)colony.End).Why,
            },
        };
    }
}
