using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.OwedWork;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>The facts that owed work is reckoned from, out of whole books.</summary>
internal static class FactsOf
{
    public static Facts Whole(WholeBooks whole, DateOnly today) => new(
        today,
        whole.Books.Outfit,
        [.. whole.Subjects.Where(subject => subject.Kind == SubjectKind.Yard).Select(subject => whole.Books.Yard(new YardId(subject.Id)))],
        [.. whole.Rows(Questions.OpenWork)],
        [.. whole.Rows(Questions.DoseCompleteness)],
        [.. whole.Rows(Questions.MiteWatch)],
        [.. whole.Rows(Questions.QueensByAge)],
        [.. whole.Rows(Questions.Register)],
        [.. whole.Rows(Questions.SpotStory)]);
}
