using ColonyLineage.Entries;

namespace ColonyLineage.Projections;

/// <summary>One row of an answer. It carries the ids of the entries that it rests on: the law of evidence.</summary>
public interface IRow
{
    /// <summary>The entries that the row rests on, in the order of things.</summary>
    IReadOnlyList<EntryId> Entries { get; }
}

/// <summary>What the machinery knows of a question: its name, its columns and how its rows are worked out for a subject.</summary>
public interface IQuestion
{
    /// <summary>The name, as in the address of its page, its command and (with underscores) its SQL table.</summary>
    string Name { get; }

    /// <summary>The columns, in order; the same in SQL, CSV and JSON.</summary>
    IReadOnlyList<Column> Columns { get; }

    /// <summary>Whether there are rows for subjects of this kind.</summary>
    bool Asks(SubjectKind kind);

    /// <summary>The rows for one subject: a pure function of the cards read through <paramref name="books"/>.</summary>
    IEnumerable<IRow> Rows(Books books, Subject subject);
}

/// <summary>
/// A question that the owner asks, as rows worked out subject by subject. Rows hold what is known, never what depends on
/// today: how many seasons back a queen was born is reckoned when somebody asks.
/// </summary>
public abstract class Question<TRow> : IQuestion where TRow : class, IRow
{
    /// <inheritdoc/>
    public abstract string Name { get; }

    /// <inheritdoc/>
    public IReadOnlyList<Column> Columns => Column.Of<TRow>();

    /// <inheritdoc/>
    public abstract bool Asks(SubjectKind kind);

    /// <summary>The rows for one subject, typed.</summary>
    public abstract IEnumerable<TRow> RowsFor(Books books, Subject subject);

    IEnumerable<IRow> IQuestion.Rows(Books books, Subject subject) => RowsFor(books, subject);
}
