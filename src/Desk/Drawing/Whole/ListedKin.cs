using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>A box of a drawing as a line of a nested list.</summary>
/// <param name="Group">What it stands for.</param>
/// <param name="Through">The kind of link by which it stands under the one above.</param>
/// <param name="Also">What else it came of, with the kind of link.</param>
/// <param name="Under">What came of it.</param>
public sealed record ListedKin(FoldGroup Group, string? Through, IReadOnlyList<string> Also, IReadOnlyList<ListedKin> Under)
{
    /// <summary>The boxes of a drawing, each once: under the first box that it came of, and at the top where it came of none.</summary>
    public static IReadOnlyList<ListedKin> Of(Genealogy kin, Folding folding)
    {
        var boxOf = folding.Boxes.SelectMany(box => box.Members.Select(one => (one.Id, box))).ToDictionary(pair => pair.Id, pair => pair.box);
        var into = new Dictionary<FoldGroup, List<(FoldGroup From, LinkRow Link)>>(ReferenceEqualityComparer.Instance);
        foreach (var link in kin.Links)
        {
            var (from, to) = (boxOf[link.FromId], boxOf[link.ToId]);
            if (!into.TryGetValue(to, out var known)) into[to] = known = [];
            if (!known.Any(one => ReferenceEquals(one.From, from))) known.Add((from, link));
        }

        // Mothers before drones, makers before what was combined; the links of one kind as the boxes stand.
        foreach (var list in into.Values) list.Sort((left, right) => left.Link.Link.CompareTo(right.Link.Link));
        var under = folding.Boxes.Where(into.ContainsKey).ToLookup(box => into[box][0].From, ReferenceEqualityComparer.Instance);
        ListedKin Listed(FoldGroup box) => new(
            box,
            into.TryGetValue(box, out var by) ? KinLook.Of(by[0].Link).Said : null,
            by is null ? [] : [.. by.Skip(1).Select(one => $"{KinLook.Of(one.Link).Said} {one.From.Label}")],
            [.. under[box].Select(child => Listed((FoldGroup)child))]);
        return [.. folding.Boxes.Where(box => !into.ContainsKey(box)).Select(Listed)];
    }
}
