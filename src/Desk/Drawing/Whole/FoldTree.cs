using System.Globalization;
using ColonyLineage.Projections;

namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>
/// The groups of every column, and the smaller groups within them, down to single queens or colonies. However large a group is, opening it gives at most
/// <see cref="MostUnder"/> boxes, so that it can be opened step by step.
/// </summary>
public sealed class FoldTree
{
    /// <summary>As many boxes as come in the place of an opened group, at most.</summary>
    public const int MostUnder = 30;

    /// <summary>A group of no more than these opens to single ones at once.</summary>
    private const int Handful = 24;

    private readonly HashSet<string> _codes;
    private readonly IReadOnlyList<Level> _levels;
    private readonly bool _levelFirst;
    private readonly int _column;
    private readonly string _key;

    private FoldTree(HashSet<string> codes, IReadOnlyList<Level> levels, bool levelFirst, int column, string key) =>
        (_codes, _levels, _levelFirst, _column, _key) = (codes, levels, levelFirst, column, key);

    /// <summary>A group for every column.</summary>
    public static IReadOnlyList<FoldGroup> Of(Genealogy kin, KinGrouping by)
    {
        var levels = Levels(by, kin.Asked);
        var codes = new HashSet<string>(StringComparer.Ordinal);
        return
        [
            .. kin.All.GroupBy(one => kin.ColumnOf[one.Id]).OrderBy(group => group.Key).Select(group =>
            {
                var column = kin.Columns[group.Key];
                var tree = new FoldTree(codes, levels, by != KinGrouping.Generation, group.Key, column.Key);
                return column.Beyond ? new FoldGroup(tree.Code([]), column.Title, group.Key, [.. group], []) : tree.Make([], column.Title, [.. group], 0);
            }),
        ];
    }

    /// <summary>A way to tell the members of a group apart.</summary>
    /// <param name="Key">Equal for those that belong together.</param>
    /// <param name="Label">What they are called.</param>
    private sealed record Level(Func<Relative, string> Key, Func<Relative, string> Label);

    private static List<Level> Levels(KinGrouping by, KinAsk ask)
    {
        var season = new Level(one => one.Season?.ToString(CultureInfo.InvariantCulture) ?? "?", one => $"{(ask.OfQueens ? "born" : "begun")} {(one.Season is { } known ? known.ToString(CultureInfo.InvariantCulture) : "nobody knows when")}");
        var parent = new Level(one => one.Parent?.Id.ToString("N") ?? "?", one => one.Parent is { } known ? $"{(ask.OfQueens ? "daughters of" : "made from")} {known.Name}" : ask.OfQueens ? "mother not known" : "not made from another");
        var batch = new Level(one => one.Batch ?? "?", one => one.Batch is { } known ? $"batch {known}" : "no batch recorded");
        var levels = by switch
        {
            KinGrouping.Line => [new Level(one => one.Line ?? "?", one => one.Line is { } line ? $"line {line}" : "of no line"), season, parent, batch],
            KinGrouping.Yard => [new Level(one => one.Alive ? one.Yard ?? "?" : "†", one => !one.Alive ? "no longer living" : one.Yard ?? "in no yard"), season, parent, batch],
            KinGrouping.Batch => [batch, parent],
            _ => new List<Level> { season, parent, batch },
        };
        if (!ask.OfQueens) levels.Remove(batch);
        return levels;
    }

    private FoldGroup Make(IReadOnlyList<string> path, string label, IReadOnlyList<Relative> members, int level)
    {
        if (members.Count == 1) return Single(members[0]);
        var code = Code(path);
        if (members.Count > Handful || (_levelFirst && level == 0))
            for (; level < _levels.Count; level++)
            {
                var here = _levels[level];
                var parts = members.GroupBy(here.Key).Select(group => (Key: group.Key, Label: here.Label(group.First()), Members: group.ToList())).OrderBy(part => part.Key is "?" or "†").ThenBy(part => part.Label, ByNumber.Order).ToList();
                if (parts.Count == 1) continue;
                var before = path.Count == 0 ? "" : $"{label}, ";
                var next = level + 1;
                return new FoldGroup(code, label, _column, members, Packed(path, before, [.. parts.Select(part => (part.Label, Make([.. path, $"{next}:{part.Key}"], before + part.Label, part.Members, next)))]));
            }

        var prefix = path.Count == 0 ? "" : $"{label}, ";
        return new FoldGroup(code, label, _column, members, Packed(path, prefix, [.. members.OrderBy(one => one.Name, ByNumber.Order).ThenBy(one => one.Id).Select(one => (one.Name, Single(one)))]));
    }

    /// <summary>More parts than a person can take in at once are put together as they follow one another: 'from this to that'.</summary>
    private IReadOnlyList<FoldGroup> Packed(IReadOnlyList<string> path, string before, IReadOnlyList<(string Label, FoldGroup Group)> parts)
    {
        if (parts.Count <= MostUnder) return [.. parts.Select(part => part.Group)];
        var bins = Math.Min(MostUnder / 2, (parts.Count + Handful - 1) / Handful);
        return
        [
            .. Enumerable.Range(0, bins).Select(bin =>
            {
                var (from, to) = (parts.Count * bin / bins, parts.Count * (bin + 1) / bins);
                var mine = parts.Skip(from).Take(to - from).ToList();
                List<string> within = [.. path, $"{mine[0].Label}…{mine[^1].Label}"];
                return new FoldGroup(Code(within), $"{before}{mine[0].Label} to {mine[^1].Label}", _column, [.. mine.SelectMany(part => part.Group.Members)], Packed(within, before, mine));
            }),
        ];
    }

    private FoldGroup Single(Relative one) => new(Code(["one", one.Id.ToString("N")]), one.Name, _column, [one], []);

    /// <summary>A short name of a path (FNV-1a, 32 bits). Two paths that meet in it are told apart by their order.</summary>
    private string Code(IReadOnlyList<string> path)
    {
        var hash = 2166136261u;
        foreach (var letter in string.Join('\u001f', path.Prepend(_key))) hash = unchecked((hash ^ letter) * 16777619u);
        string code;
        do code = unchecked(hash++).ToString("x", CultureInfo.InvariantCulture);
        while (!_codes.Add(code));
        return code;
    }
}
