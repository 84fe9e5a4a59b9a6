using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Ledger.Tables;

/// <summary>The rows of one subject for some questions, and what they were read from.</summary>
/// <param name="Subject">The subject.</param>
/// <param name="Asked">A bit for each question that was asked.</param>
/// <param name="Rows">By the question's place in <see cref="Questions.All"/>; empty where it was not asked.</param>
/// <param name="Reads">The other subjects that were read, with a bit for each question that read them.</param>
internal sealed record Answers(Subject Subject, int Asked, IReadOnlyList<IRow>[] Rows, IReadOnlyDictionary<Subject, int> Reads)
{
    /// <summary>The bits of all questions that have rows for a kind of subject.</summary>
    public static int AllOf(SubjectKind kind)
    {
        var bits = 0;
        for (var i = 0; i < Questions.All.Count; i++)
            if (Questions.All[i].Asks(kind))
                bits |= 1 << i;
        return bits;
    }

    /// <summary>Works them out.</summary>
    /// <param name="books">The books to read.</param>
    /// <param name="subject">The subject.</param>
    /// <param name="asked">The questions to ask.</param>
    /// <param name="stands">Whether anything stands about the subject; where nothing does there is nothing to say of it.</param>
    public static Answers Of(Books books, Subject subject, int asked, bool stands)
    {
        var rows = new IReadOnlyList<IRow>[Questions.All.Count];
        var reads = new Dictionary<Subject, int>();
        for (var i = 0; i < rows.Length; i++)
        {
            rows[i] = [];
            if (!stands || (asked & (1 << i)) == 0) continue;
            books.StartNoting();
            rows[i] = [.. Questions.All[i].Rows(books, subject)];
            foreach (var read in books.StopNoting())
                if (read != subject && read != Subject.Outfit)
                    reads[read] = reads.GetValueOrDefault(read) | (1 << i);
        }

        return new Answers(subject, asked, rows, reads);
    }
}
