using ColonyLineage.Projections;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk;

/// <summary>A queen that descends from another, or that another descends from.</summary>
/// <param name="Id">The queen.</param>
/// <param name="Steps">Generations between them, from 1.</param>
/// <param name="Link">A link that leads to her.</param>
/// <param name="Row">Her row in the register.</param>
public sealed record Descendant(Guid Id, string Name, int Steps, LinkRow? Link, RegisterRow? Row)
{
    public bool Alive => QueenWords.IsAlive(Row);

    /// <summary>All queens that came of a queen through mothers and daughters, nearest first.</summary>
    public static IReadOnlyList<Descendant> Of(Graph graph, Guid queen, IReadOnlyDictionary<Guid, RegisterRow> register) =>
    [
        .. graph.Descendants(queen, LinkKind.Mother)
            .Select(found => (found, link: graph.To(found.Id).FirstOrDefault(link => link.Link == LinkKind.Mother)))
            .Select(pair => new Descendant(pair.found.Id, pair.link?.To ?? "", pair.found.Steps, pair.link, register.GetValueOrDefault(pair.found.Id)))
            .OrderBy(one => one.Steps).ThenBy(one => one.Row?.Began).ThenBy(one => one.Name, ByNumber.Order).ThenBy(one => one.Id),
    ];

    /// <summary>All queens that a queen came of, through mothers and through the drones that mated them, nearest first.</summary>
    public static IReadOnlyList<Descendant> Before(Graph graph, Guid queen, IReadOnlyDictionary<Guid, RegisterRow> register)
    {
        var found = graph.Ancestors(queen, LinkKind.Mother, LinkKind.Drones);
        var below = found.Select(one => one.Id).Append(queen).ToHashSet();
        return
        [
            .. found.Select(one => (one.Id, one.Steps, Link: graph.From(one.Id).FirstOrDefault(link => link.Link is LinkKind.Mother or LinkKind.Drones && below.Contains(link.ToId))))
                .Select(one => new Descendant(one.Id, one.Link?.From ?? "", one.Steps, one.Link, register.GetValueOrDefault(one.Id)))
                .OrderBy(one => one.Steps).ThenBy(one => one.Row?.Began).ThenBy(one => one.Name, ByNumber.Order).ThenBy(one => one.Id),
        ];
    }
}
