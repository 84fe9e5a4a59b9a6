using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.Register;
using ColonyLineage.Projections.Relationship;

namespace ColonyLineage.Desk;

/// <summary>The pedigree of the books with who is who, by the clocks asked for.</summary>
public sealed class Kindred
{
    private readonly IReadOnlyList<RegisterRow> _queens;

    private Kindred(BooksPedigree books, IReadOnlyList<RegisterRow> queens) => (Books, _queens) = (books, queens);

    public BooksPedigree Books { get; }

    /// <summary>Queens that reign in a living colony.</summary>
    public IEnumerable<RegisterRow> Living => _queens.Where(queen => queen is { Ended: null, ColonyId: not null });

    public static async Task<Kindred> OfAsync(IRows rows, Ask ask, CancellationToken cancel)
    {
        var clocks = Gather.Clocks(ask);
        return Of(await rows.RowsAsync(Questions.Lineage, clocks, cancel), await rows.RowsAsync(Questions.Register, clocks, cancel));
    }

    public static Kindred Of(IReadOnlyList<LinkRow> links, IReadOnlyList<RegisterRow> register)
    {
        var queens = register.Where(row => row.Kind == SubjectKind.Queen).ToList();
        return new Kindred(new BooksPedigree(links, queens.Select(queen => (queen.Id, queen.Name))), queens);
    }

    /// <summary>The queens of a name, or the one of an id.</summary>
    /// <exception cref="RefusedException">The books know none.</exception>
    public IReadOnlyList<Guid> Named(string name, string field)
    {
        Guid[] found = [.. Desk.Named.Among(_queens, name, SubjectKind.Queen).Select(queen => queen.Id)];
        return found.Length > 0 ? found : throw new RefusedException(new Refusal(Refusals.NotFound, field, $"The books know no queen '{name}'. Look the name up with the question register."));
    }

    /// <summary>The one queen of a name.</summary>
    /// <exception cref="RefusedException">The books know none, or several.</exception>
    public Guid One(string name, string field) => Named(name, field) is [var one] ? one
        : throw new RefusedException(new Refusal(Refusals.NamedTwice, field, $"Several queens are called '{name}'. Name the one that is meant by her id: {string.Join(", ", Named(name, field))}."));
}
