namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>Which groups of a genealogy are open: what the reader opened first, then as many as a page carries.</summary>
public sealed class Folding
{
    /// <summary>As many boxes as a drawing has, at most: about a hundred are clear, two thousand are a smear.</summary>
    public const int Most = 150;

    /// <summary>As many as are opened without being asked.</summary>
    private const int AtFirst = 90;

    /// <summary>As many boxes of one column as are opened without being asked.</summary>
    private const int AtFirstInColumn = 28;

    private readonly HashSet<FoldGroup> _open = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<FoldGroup, FoldGroup> _above = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<string> _folded;
    private int _boxes;

    private Folding(IReadOnlyList<FoldGroup> columns, IEnumerable<string> folded)
    {
        Columns = columns;
        _folded = folded.ToHashSet(StringComparer.Ordinal);
        _boxes = columns.Count;
        var waiting = new Stack<FoldGroup>(columns);
        while (waiting.TryPop(out var group))
            foreach (var under in group.Under)
            {
                _above[under] = group;
                waiting.Push(under);
            }
    }

    /// <summary>The groups of the columns.</summary>
    public IReadOnlyList<FoldGroup> Columns { get; }

    /// <summary>What is drawn, column by column: single ones and folded groups.</summary>
    public IReadOnlyList<FoldGroup> Boxes { get; private set; } = [];

    /// <summary>The groups that are open, the larger before those in it.</summary>
    public IReadOnlyList<FoldGroup> Open { get; private set; } = [];

    /// <summary>Groups that were asked for and are folded all the same, for want of room.</summary>
    public IReadOnlyList<FoldGroup> NoRoom { get; private set; } = [];

    /// <summary>Opens what was asked for, the newest wish first, and then what there is room for.</summary>
    /// <param name="columns">The groups of the columns.</param>
    /// <param name="distance">How far a column is from the one asked about: the nearest are opened first.</param>
    /// <param name="open">Codes of groups that the reader opened, the newest last.</param>
    /// <param name="folded">Codes of groups that the reader folded.</param>
    public static Folding Of(IReadOnlyList<FoldGroup> columns, Func<int, int> distance, IReadOnlyList<string> open, IReadOnlyList<string> folded)
    {
        // What is open at first does not change by what else is opened, so that the drawing stays the one that the reader knows.
        var atFirst = new Folding(columns, folded);
        var first = atFirst.OpenAtFirst(distance);
        var folding = new Folding(columns, folded);
        folding.OpenAsked(open);
        foreach (var group in first.Where(folding.IsSeen)) folding.TryOpen([group]);
        folding.Tell();
        return folding;
    }

    /// <summary>Column by column the groups of one depth are opened all together or not at all: that some yards are open and others not would look as if it meant something.</summary>
    private List<FoldGroup> OpenAtFirst(Func<int, int> distance)
    {
        var opened = new List<FoldGroup>();
        var inColumn = Columns.ToDictionary(column => column.Column, _ => 1);
        var waiting = new PriorityQueue<List<FoldGroup>, (int Depth, int Distance, int Column)>();
        foreach (var column in Columns) waiting.Enqueue([column], (0, Math.Abs(distance(column.Column)), column.Column));
        while (waiting.TryDequeue(out var groups, out var place))
        {
            var together = groups.Where(group => group.Opens && !_folded.Contains(group.Code)).ToList();
            var more = together.Sum(group => group.Under.Count - 1);
            if (together.Count == 0 || _boxes + more > AtFirst || inColumn[place.Column] + more > AtFirstInColumn) continue;
            _boxes += more;
            inColumn[place.Column] += more;
            opened.AddRange(together);
            waiting.Enqueue([.. together.SelectMany(group => group.Under)], (place.Depth + 1, place.Distance, place.Column));
        }

        return opened;
    }

    private void OpenAsked(IReadOnlyList<string> open)
    {
        var known = _above.Keys.Concat(Columns).DistinctBy(group => group.Code).ToDictionary(group => group.Code);
        var noRoom = new List<FoldGroup>();
        foreach (var code in open.Reverse().Distinct())
        {
            if (!known.TryGetValue(code, out var group) || !group.Opens) continue;
            var chain = new List<FoldGroup> { group };
            while (_above.TryGetValue(chain[^1], out var above)) chain.Add(above);
            if (chain.Any(one => _folded.Contains(one.Code))) continue;
            chain.Reverse();
            if (!TryOpen(chain)) noRoom.Add(group);
        }

        NoRoom = noRoom;
    }

    private bool TryOpen(IReadOnlyList<FoldGroup> chain)
    {
        var closed = chain.Where(group => !_open.Contains(group)).ToList();
        var more = closed.Sum(group => group.Under.Count - 1);
        if (_boxes + more > Most) return false;
        _boxes += more;
        _open.UnionWith(closed);
        return true;
    }

    private bool IsSeen(FoldGroup group) => !_above.TryGetValue(group, out var above) || _open.Contains(above);

    private void Tell()
    {
        var (boxes, open) = (new List<FoldGroup>(), new List<FoldGroup>());
        foreach (var column in Columns) Tell(column, boxes, open);
        (Boxes, Open) = (boxes, open);
    }

    private void Tell(FoldGroup group, List<FoldGroup> boxes, List<FoldGroup> open)
    {
        if (!_open.Contains(group))
        {
            boxes.Add(group);
            return;
        }

        open.Add(group);
        foreach (var under in group.Under) Tell(under, boxes, open);
    }
}
