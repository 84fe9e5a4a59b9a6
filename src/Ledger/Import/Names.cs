using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>
/// The ids of all that a sheet names. Those of entries come from the mapping's name, those of yards, colonies and queens from
/// its name space, so that '21-030' is the same colony wherever it is mentioned.
/// </summary>
internal sealed class Names
{
    /// <summary>Where the ids of imports begin. Fixed for ever: another one would give every imported colony another id.</summary>
    private static readonly Guid Root = new("5d1c6f3e-9a07-8b52-8c41-2f6b7e90a4d3");

    private readonly Guid _import;
    private readonly Guid _things;
    private readonly KnownNames _known;

    public Names(Mapping map, KnownNames known)
    {
        _import = NamedId.Of(Root, $"import/{map.Name}");
        _things = NamedId.Of(Root, $"names/{map.Names}");
        _known = known;
        Act = new ActId(NamedId.Of(_import, "act"));
    }

    /// <summary>The one act of the import.</summary>
    public ActId Act { get; }

    public YardId Yard(string name) => _known.Yards.TryGetValue(name, out var known) ? known : new YardId(NamedId.Of(_things, $"yard/{name}"));

    public ColonyId Colony(string name) => _known.Colonies.TryGetValue(name, out var known) ? known : new ColonyId(NamedId.Of(_things, $"colony/{name}"));

    public QueenId Queen(string name) => _known.Queens.TryGetValue(name, out var known) ? known : new QueenId(NamedId.Of(_things, $"queen/{name}"));

    public VisitId Visit(string name, DateOnly day) => new(NamedId.Of(_things, $"visit/{name}/{day:yyyy-MM-dd}"));

    public bool Knows(Mention thing) => thing.Kind == SubjectKind.Yard ? _known.Yards.ContainsKey(thing.Name) : _known.Colonies.ContainsKey(thing.Name);

    /// <summary>The id of a row's entry, or of one that is recorded once for several rows.</summary>
    public EntryId Entry(string label, string key, bool once) => new(NamedId.Of(_import, $"{(once ? "once" : "row")}/{label}/{key}"));

    /// <summary>The id of the entry that creates a thing.</summary>
    public EntryId Creation(Mention thing) => new(NamedId.Of(_import, $"create/{thing.Kind}/{thing.Name}"));
}

/// <summary>A yard or colony that an entry speaks of.</summary>
internal readonly record struct Mention(SubjectKind Kind, string Name);
