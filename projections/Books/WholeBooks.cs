using ColonyLineage.Entries;

namespace ColonyLineage.Projections;

/// <summary>All the entries of an outfit at once, in memory: for a live question as of some day, for a rebuild, for a phone and for tests.</summary>
public sealed class WholeBooks
{
    private readonly Dictionary<Subject, List<Entry>> _about = [];

    private WholeBooks(IReadOnlyList<Entry> standing)
    {
        foreach (var entry in standing)
            foreach (var subject in entry.Concerns)
            {
                if (!_about.TryGetValue(subject, out var list)) _about.Add(subject, list = []);
                list.Add(entry);
            }

        Books = new Books(About);
    }

    /// <summary>The books themselves.</summary>
    public Books Books { get; }

    /// <summary>Every subject that something stands about, in a fixed order.</summary>
    public IReadOnlyList<Subject> Subjects => [.. _about.Keys.Order()];

    /// <summary>Opens the books on what was recorded: see <see cref="Standing.Of"/>.</summary>
    public static WholeBooks Of(IEnumerable<Recorded> recorded, DateOnly? asOf = null, DateTimeOffset? knownAt = null) =>
        new(Standing.Of(recorded, asOf, knownAt));

    /// <summary>Opens the books on entries that stand and are in order.</summary>
    public static WholeBooks OfStanding(IReadOnlyList<Entry> standing) => new(standing);

    /// <summary>The standing entries that concern a subject, in order.</summary>
    public IReadOnlyList<Entry> About(Subject subject) => _about.TryGetValue(subject, out var entries) ? entries : [];

    /// <summary>All rows of a question, in the order of its subjects.</summary>
    public IEnumerable<TRow> Rows<TRow>(Question<TRow> question) where TRow : class, IRow =>
        Subjects.Where(subject => question.Asks(subject.Kind)).SelectMany(subject => question.RowsFor(Books, subject));
}
