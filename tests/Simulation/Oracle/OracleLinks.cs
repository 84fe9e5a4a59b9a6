using ColonyLineage.Entries;

namespace ColonyLineage.Simulation.Oracle;

/// <summary>One link, as the oracle has it.</summary>
public sealed record OracleLink(string Link, Guid From, string FromName, Guid To, string ToName, DateOnly? OnFrom, DateOnly? OnTo, Certainty? Sure, decimal? Frames);

/// <summary>Lineage.</summary>
public sealed partial class OracleBooks
{
    public List<OracleLink> Links()
    {
        var links = new List<OracleLink>();
        foreach (var queen in AllQueens())
        {
            if (MotherOf(queen) is { } mother)
            {
                var born = BirthOf(queen);
                links.Add(new OracleLink("Mother", mother.Mother.Value, NameOf(mother.Mother), queen.Value, NameOf(queen), born?.From, born?.To, mother.Sure, null));
            }

            QueenMated? mated = null;
            foreach (var entry in _standing)
                if (entry is QueenMated mating && mating.Queen == queen)
                    mated = mating;
            var counted = new List<QueenId>();
            if (mated is not null)
                foreach (var drone in mated.Drones)
                    if (!counted.Contains(drone))
                    {
                        counted.Add(drone);
                        links.Add(new OracleLink("Drones", drone.Value, NameOf(drone), queen.Value, NameOf(queen), mated.On.Earliest, mated.On.Day, null, null));
                    }
        }

        foreach (var entry in _standing)
        {
            if (entry is SplitFrom split && Colony(split.Into).Counted.Contains(entry))
                Add("Split", split.Colony, split.Into, entry, split.FramesOfBees ?? split.FramesOfBrood);
            if (entry is Combined combined && Colony(combined.Into).Counted.Contains(entry))
                Add("Combined", combined.Colony, combined.Into, entry, null);
            if (entry is FramesMoved { Of: FramesOf.Brood or FramesOf.Bees } frames && Colony(frames.To).Counted.Contains(entry))
                Add(frames.Of == FramesOf.Brood ? "Brood" : "Bees", frames.Colony, frames.To, entry, frames.Frames);
        }

        return links;

        void Add(string link, ColonyId from, ColonyId to, Entry by, decimal? frames) =>
            links.Add(new OracleLink(link, from.Value, NameOf(from), to.Value, NameOf(to), by.On.Earliest, by.On.Day, null, frames));
    }
}
