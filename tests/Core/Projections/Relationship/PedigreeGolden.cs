using ColonyLineage.Core.Tests.Projections.Sums.Mixed;
using ColonyLineage.Projections.Relationship;

namespace ColonyLineage.Core.Tests.Projections.Relationship;

/// <summary>The pedigrees under Golden/pedigree, put together by hand, without the code that reads sheets.</summary>
internal static class PedigreeGolden
{
    public static IReadOnlyList<RecordedBee> WithDrones()
    {
        var table = new Table("pedigree/pedA_pedigree.csv");
        var ids = table.Texts("id").ToList();
        int? At(string id) => id.Length == 0 ? null : ids.IndexOf(id);
        return [.. ids.Select((id, i) => new RecordedBee(id, table.Texts("sex")[i] == "1", At(table.Texts("mother")[i]), At(table.Texts("father")[i])))];
    }

    public static (QueenPedigree Pedigree, string[] Names) WithMatings(DroneShares shares = DroneShares.Equal)
    {
        var pedigree = new QueenPedigree(shares);
        var (b, u) = (pedigree.AddFounder(), pedigree.AddFounder());
        var mB = pedigree.AddMating(b);
        var (q1, q2, s) = (pedigree.AddDaughter(mB), pedigree.AddDaughter(mB), pedigree.AddDaughter(mB));
        pedigree.AddDaughter(pedigree.AddMating(q1));
        var mQ2 = pedigree.AddMating(q2, pedigree.AddDrones([s]), 10);
        pedigree.AddDaughter(mQ2);
        pedigree.AddDaughter(mQ2);
        var mU = pedigree.AddMating(u, pedigree.AddDrones([q1, q2]), 8);
        pedigree.AddDaughter(mU);
        pedigree.AddDaughter(mU);
        return (pedigree, ["B", "U", "Q1", "Q2", "S", "Q3", "Q4", "Q5", "Q6", "Q7"]);
    }
}
