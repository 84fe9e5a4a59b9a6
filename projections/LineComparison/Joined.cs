namespace ColonyLineage.Projections.LineComparison;

/// <summary>
/// Which lines can be compared at all: those that stand in a common yard and season, or are held together by others that do. A line that stands in one yard
/// alone cannot be told from the yard.
/// </summary>
public sealed class Joined
{
    private readonly Dictionary<string, string> _parts = [];

    public Joined(IEnumerable<LineRecord> records)
    {
        foreach (var place in records.GroupBy(record => record.YardSeason))
        {
            var lines = place.Select(record => record.Line).Distinct().ToList();
            foreach (var line in lines) Join(lines[0], line);
        }
    }

    /// <summary>Whether two lines belong to one part.</summary>
    public bool Are(string line, string other) => Root(line) == Root(other);

    /// <summary>The lines of each part that cannot be compared with those of another, largest first.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Parts() =>
        [.. _parts.Keys.GroupBy(Root).Select(part => (IReadOnlyList<string>)[.. part.Order(StringComparer.Ordinal)]).OrderByDescending(part => part.Count).ThenBy(part => part[0], StringComparer.Ordinal)];

    private void Join(string one, string other)
    {
        _parts.TryAdd(one, one);
        _parts.TryAdd(other, other);
        _parts[Root(other)] = Root(one);
    }

    private string Root(string line)
    {
        while (_parts[line] != line) line = _parts[line] = _parts[_parts[line]];
        return line;
    }
}
