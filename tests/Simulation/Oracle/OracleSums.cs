using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>What is asked over many rows: shares of a yard, descendants, contacts.</summary>
public sealed partial class OracleBooks
{
    /// <summary>How much of each yard was requeened in a season, as lines of text in no order.</summary>
    public List<string> Shares(int season)
    {
        var rows = Queens();
        var yards = new List<YardId?>();
        foreach (var row in rows)
            if (!yards.Contains(row.At?.Yard))
                yards.Add(row.At?.Yard);
        var shares = new List<string>();
        foreach (var yard in yards)
        {
            int certain = 0, possible = 0, colonies = 0;
            foreach (var row in rows)
            {
                if (row.At?.Yard != yard) continue;
                colonies++;
                if (row.BornFrom is not { } from || row.BornTo is not { } to) continue;
                var (first, last) = (SeasonOf(from, SeasonStart()), SeasonOf(to, SeasonStart()));
                if (first == season && last == season) certain++;
                else if (first <= season && season <= last) possible++;
            }

            shares.Add($"{yard}: {certain} to {certain + possible} of {colonies}");
        }

        return shares;
    }

    /// <summary>All that descend from a queen through their mothers, with the fewest generations between.</summary>
    public List<(Guid Id, int Steps)> Descendants(QueenId queen)
    {
        var all = AllQueens();
        var found = new List<(Guid Id, int Steps)>();
        var generation = new List<QueenId> { queen };
        for (var steps = 1; generation.Count > 0; steps++)
        {
            var daughters = new List<QueenId>();
            foreach (var daughter in all)
                if (daughter != queen && MotherOf(daughter) is { } mother && generation.Contains(mother.Mother) && !found.Exists(known => known.Id == daughter.Value))
                    daughters.Add(daughter);
            foreach (var daughter in daughters) found.Add((daughter.Value, steps));
            generation = daughters;
        }

        return found;
    }

    /// <summary>Who shared frames, a yard or a maker with a colony since a day, as lines of text in no order.</summary>
    public List<string> Contacts(ColonyId colony, DateOnly since)
    {
        var contacts = new List<string>();
        var links = Links();
        foreach (var link in links)
        {
            if (link.Link is "Mother" or "Drones") continue;
            if (link.OnTo >= since && link.From == colony.Value) contacts.Add($"{link.To} {(link.Link == "Split" ? "made from it" : link.Link == "Combined" ? "combined" : "frames")} {link.OnFrom:O} {link.OnTo:O}");
            if (link.OnTo >= since && link.To == colony.Value) contacts.Add($"{link.From} {(link.Link == "Split" ? "it was made from" : link.Link == "Combined" ? "combined" : "frames")} {link.OnFrom:O} {link.OnTo:O}");
            // A sister, by any maker of both.
            if (link.Link == "Split" && link.OnTo >= since && link.To != colony.Value && links.Exists(own => own.Link == "Split" && own.To == colony.Value && own.From == link.From))
                contacts.Add($"{link.To} same maker {link.OnTo:O} {link.OnTo:O}");
        }

        foreach (var own in Colony(colony).Stays)
            foreach (var other in AllColonies())
                foreach (var theirs in Colony(other).Stays)
                {
                    if (other == colony || theirs.Spot.Yard != own.Spot.Yard) continue;
                    var from = own.Came.On.Earliest;
                    if (theirs.Came.On.Earliest > from) from = theirs.Came.On.Earliest;
                    if (since > from) from = since;
                    var to = own.GoneTo;
                    if (to is null || theirs.GoneTo < to) to = theirs.GoneTo ?? to;
                    if (to is null || from <= to) contacts.Add($"{other} same yard {from:O} {to:O}");
                }

        return contacts;
    }
}
