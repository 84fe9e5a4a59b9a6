using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Simulation;

/// <summary>What is on trial: how the books are opened and which questions are put to them. Tests put a fault in here to see it found.</summary>
/// <param name="Order">The standing entries, in the order of things, of what was recorded.</param>
/// <param name="Questions">The questions, the four that the oracle answers first.</param>
public sealed record Folds(Func<IReadOnlyList<Recorded>, DateOnly?, DateTimeOffset?, IReadOnlyList<Entry>> Order, IReadOnlyList<IQuestion> Questions)
{
    /// <summary>The ones that the program uses.</summary>
    public static readonly Folds Real = new((recorded, asOf, knownAt) => Standing.Of(recorded, asOf, knownAt), Projections.Questions.All);

    public WholeBooks Open(IReadOnlyList<Recorded> recorded, DateOnly? asOf = null, DateTimeOffset? knownAt = null) => WholeBooks.OfStanding(Order(recorded, asOf, knownAt));

    /// <summary>The rows of a question for all subjects.</summary>
    public static List<IRow> Rows(WholeBooks books, IQuestion question) =>
        [.. books.Subjects.Where(subject => question.Asks(subject.Kind)).SelectMany(subject => question.Rows(books.Books, subject))];
}
