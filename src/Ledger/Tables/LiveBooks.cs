using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// The standing entries of the subjects that were looked at, kept in memory from one catching up to the next, and moved on by what
/// was recorded since. For one user at a time.
/// </summary>
internal sealed class LiveBooks
{
    private readonly Dictionary<Subject, IReadOnlyList<Entry>> _about = [];
    private readonly bool _whole;

    /// <summary>Empty books, filled as they are looked at.</summary>
    public LiveBooks(string upTo)
    {
        UpTo = upTo;
        Books = new Books(About);
    }

    /// <summary>Books that hold everything: what is not in them does not exist.</summary>
    public LiveBooks(string upTo, IReadOnlyList<Entry> standing) : this(upTo)
    {
        _whole = true;
        var about = new Dictionary<Subject, List<Entry>>();
        foreach (var entry in standing)
            foreach (var subject in entry.Concerns)
            {
                if (!about.TryGetValue(subject, out var list)) about.Add(subject, list = []);
                list.Add(entry);
            }

        foreach (var (subject, list) in about)
        {
            list.TrimExcess();
            _about.Add(subject, list);
        }

        Held = standing.Count;
    }

    /// <summary>The snapshot of PostgreSQL's that they are at.</summary>
    public string UpTo { get; set; }

    /// <summary>The cards over them.</summary>
    public Books Books { get; }

    /// <summary>How many entries are held, about.</summary>
    public int Held { get; private set; }

    /// <summary>Fetches the entries of a subject that is not held, as the books are at this moment; set by whoever uses them.</summary>
    public Func<Subject, IEnumerable<Entry>> Fetch { get; set; } = _ => [];

    /// <summary>Those of some subjects that would have to be fetched.</summary>
    public IReadOnlyList<Subject> Missing(IEnumerable<Subject> subjects) => _whole ? [] : [.. subjects.Where(subject => !_about.ContainsKey(subject)).Distinct()];

    public bool StandsAbout(Subject subject) => About(subject).Count > 0;

    /// <summary>Takes in the fetched entries of some subjects.</summary>
    public void Hold(IReadOnlyList<Subject> subjects, IEnumerable<Entry> entries)
    {
        var about = subjects.ToDictionary(subject => subject, _ => new List<Entry>());
        foreach (var entry in entries)
            foreach (var subject in entry.Concerns)
                if (about.TryGetValue(subject, out var list))
                    list.Add(entry);
        foreach (var (subject, list) in about)
        {
            list.Sort(InOrder);
            _about[subject] = list;
            Held += list.Count;
        }
    }

    /// <summary>Moves them on: some entries came to stand, some no longer do.</summary>
    public void Apply(Change change)
    {
        foreach (var subject in change.Touched)
        {
            Books.Forget(subject);
            if (!_about.TryGetValue(subject, out var held))
            {
                if (!_whole) continue;
                held = [];
            }

            var now = held.Where(entry => !change.Gone.ContainsKey(entry.Id)).ToList();
            now.AddRange(change.Came.Values.Where(entry => entry.Concerns.Contains(subject)));
            now.Sort(InOrder);
            Held += now.Count - held.Count;
            _about[subject] = now;
        }
    }

    private IReadOnlyList<Entry> About(Subject subject)
    {
        if (_about.TryGetValue(subject, out var held)) return held;
        if (_whole) return [];
        Hold([subject], Fetch(subject));
        return _about[subject];
    }

    private static int InOrder(Entry left, Entry right) => Place.Of(left).CompareTo(Place.Of(right));
}
