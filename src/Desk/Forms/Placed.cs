using ColonyLineage.Entries;

namespace ColonyLineage.Desk.Forms;

/// <summary>Refusals, each at the blank that it is about.</summary>
public sealed class Placed
{
    private readonly ILookup<string, Refusal> _at;

    public Placed(IEnumerable<Refusal> refusals, IEnumerable<Blank> blanks)
    {
        var names = blanks.Select(blank => blank.Name).ToList();
        All = [.. refusals.Select(refusal => (refusal, PlaceOf(refusal.Field, names)))];
        _at = All.Where(pair => pair.At is not null).ToLookup(pair => pair.At!, pair => pair.Refusal);
    }

    /// <summary>All of them, with the blank's name; null where it is about the whole.</summary>
    public IReadOnlyList<(Refusal Refusal, string? At)> All { get; }

    /// <summary>Those at a blank.</summary>
    public IEnumerable<Refusal> At(string blank) => _at[blank];

    // A refusal may speak of a part of what one blank holds (except[0]), or of something that several blanks make up (at).
    private static string? PlaceOf(string field, List<string> names)
    {
        for (var path = field; path.Length > 0;)
        {
            if (names.Contains(path)) return path;
            if (names.FirstOrDefault(name => name.StartsWith(path, StringComparison.Ordinal) && name.Length > path.Length && name[path.Length] is '.' or '[') is { } inside) return inside;
            var cut = path.LastIndexOfAny(['.', '[']);
            path = cut < 0 ? "" : path[..cut];
        }

        return null;
    }
}
