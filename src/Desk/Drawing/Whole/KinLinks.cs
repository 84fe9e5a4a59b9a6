namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>The addresses of a drawing's boxes: to open and to fold a group, to a page, to the entries.</summary>
/// <param name="address">The address of the page.</param>
/// <param name="kin">What is drawn.</param>
public sealed class KinLinks(Address address, Genealogy kin)
{
    private readonly IReadOnlyList<string> _open = Codes(address, "open");
    private readonly IReadOnlyList<string> _folded = Codes(address, "fold");

    /// <summary>The codes of groups that an address names, the newest last.</summary>
    public static IReadOnlyList<string> Codes(Address address, string name) => address[name]?.Split('.', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) ?? [];

    /// <summary>The page of one, or the same drawing with a group opened. What is too far away to be opened is in the table of the lineage.</summary>
    public string Box(FoldGroup box)
    {
        if (box.IsSingle) return Page(box.Members[0]);
        return box.Opens ? Open(box) : kin.Asked.OfQueens
            ? address.To("/lineage", ("queen", kin.Focal.Id), ("way", kin.Columns[box.Column].Distance < 0 ? "up" : null), ("all", "yes"))
            : Page(box.Members[0]);
    }

    /// <summary>The page of a queen or a colony.</summary>
    public string Page(Relative one) => address.To($"/{(kin.Asked.OfQueens ? "queens" : "colonies")}/{one.Id}");

    /// <summary>The same drawing with a group opened.</summary>
    public string Open(FoldGroup group) => address.With(("open", Join(_open.Where(code => code != group.Code).Append(group.Code))), ("fold", Join(_folded.Where(code => code != group.Code))));

    /// <summary>The same drawing with a group folded.</summary>
    public string Fold(FoldGroup group) => address.With(("open", Join(_open.Where(code => code != group.Code))), ("fold", Join(_folded.Where(code => code != group.Code).Append(group.Code))));

    /// <summary>The entries that a box rests on: of the links that lead to it, and of what is said in it.</summary>
    public string Why(FoldGroup box)
    {
        if (box.IsSingle) return Why(box.Members[0]);
        var asked = address.With(("open", null), ("fold", null), ("folded-group", box.Code), ("of", $"{kin.Columns[box.Column].Title}, {box.Label}"));
        return $"/why/drawing{asked[asked.IndexOf('?', StringComparison.Ordinal)..]}";
    }

    /// <summary>The entries that one rests on.</summary>
    public string Why(Relative one) => address.To("/why/lineage", (kin.Asked.OfQueens ? "queen" : "colony", one.Id), ("of", $"{(kin.Asked.OfQueens ? "queen" : "colony")} {one.Name}"));

    private static string? Join(IEnumerable<string> codes) => string.Join('.', codes) is { Length: > 0 } joined ? joined : null;
}
