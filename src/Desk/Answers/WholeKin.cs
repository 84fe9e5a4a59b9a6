using ColonyLineage.Desk.Drawing.Whole;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk;

/// <summary>The genealogy that an address asks for, read from the books: for the page that draws it and for the entries of one of its boxes.</summary>
public sealed record WholeKin(Genealogy Kin, KinGrouping Grouping, IReadOnlyList<FoldGroup> Columns)
{
    /// <summary>What <c>queen=</c> or <c>colony=</c> of an address names; several where several bear the name.</summary>
    public static async Task<IReadOnlyList<RegisterRow>> NamedAsync(Lookup lookup, Address address, CancellationToken cancel)
    {
        var kind = address["queen"] is null ? SubjectKind.Colony : SubjectKind.Queen;
        return (address["queen"] ?? address["colony"]) is { } asked ? Named.Among(await lookup.RegisterAsync(cancel), asked, kind) : [];
    }

    /// <summary>What of a genealogy the address asks for.</summary>
    public static KinAsk AskOf(Address address, bool ofQueens) => new(
        ofQueens,
        address["way"] switch { "up" => KinWay.Up, "both" => KinWay.Both, "down" => KinWay.Down, _ => ofQueens ? KinWay.Down : KinWay.Both },
        address["all"] == "yes",
        address["also"] == "yes",
        address["columns"] == "season");

    /// <summary>How its boxes are put together.</summary>
    public static KinGrouping GroupingOf(Address address, bool ofQueens) => address["group"] switch
    {
        "yard" => KinGrouping.Yard,
        "line" when ofQueens => KinGrouping.Line,
        "batch" when ofQueens => KinGrouping.Batch,
        _ => KinGrouping.Generation,
    };

    /// <summary>Reads it.</summary>
    public static async Task<WholeKin> ReadAsync(IOffice office, Lookup lookup, Address address, RegisterRow focal, CancellationToken cancel)
    {
        var ofQueens = focal.Kind == SubjectKind.Queen;
        var (ask, grouping) = (AskOf(address, ofQueens), GroupingOf(address, ofQueens));
        var register = (await lookup.RegisterAsync(cancel)).DistinctBy(row => row.Id).ToDictionary(row => row.Id);
        var links = await office.RowsAsync(Questions.Lineage, address.Ask, cancel);
        var graph = new Graph(links);
        var outfit = (await lookup.BooksAsync(cancel)).Outfit;
        var near = ofQueens ? Near(graph, focal.Id, ask) : [];
        var books = ofQueens ? await office.BooksOnAsync([.. near.Select(id => (Subject)new QueenId(id))], address.Ask, cancel) : null;
        var relatives = new Relatives(graph, register, outfit, books);
        var kin = Genealogy.Of(graph, focal.Id, ask, ofQueens ? relatives.Queen : relatives.Colony);
        return new WholeKin(kin, grouping, FoldTree.Of(kin, grouping));
    }

    /// <summary>The group of a code, wherever it stands.</summary>
    public FoldGroup? Group(string code)
    {
        var waiting = new Stack<FoldGroup>(Columns);
        while (waiting.TryPop(out var group))
        {
            if (group.Code == code) return group;
            foreach (var under in group.Under) waiting.Push(under);
        }

        return null;
    }

    // Their cards are fetched at once: one by one they would be as many questions to the database.
    private static List<Guid> Near(Graph graph, Guid focal, KinAsk ask)
    {
        var near = new HashSet<Guid> { focal };
        if (ask.Way != KinWay.Up) near.UnionWith(graph.Descendants(focal, LinkKind.Mother).Select(found => found.Id));
        if (ask.Way != KinWay.Down) near.UnionWith(graph.Ancestors(focal, LinkKind.Mother, LinkKind.Drones).Select(found => found.Id));
        return [.. near];
    }
}
