using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Simulation;

/// <summary>
/// The ledger's way of keeping answers, in memory: the rows of each question and subject with the subjects that they were read
/// from. A batch of new entries works out anew only the rows of what it touches and the rows that were read from it. That this
/// equals a full fold proves that the books note everything that is looked at.
/// </summary>
public sealed class ReadTables(IReadOnlyList<IQuestion> questions)
{
    private readonly Dictionary<EntryId, Entry> _known = [];
    private readonly HashSet<EntryId> _voided = [];
    private readonly Dictionary<Subject, List<Entry>> _about = [];
    private readonly Dictionary<Subject, HashSet<(int Question, Subject Subject)>> _readers = [];
    private readonly Dictionary<(int Question, Subject Subject), IReadOnlyList<Subject>> _reads = [];

    /// <summary>The rows as they are kept.</summary>
    public Answers Answers { get; } = [];

    public void Take(IEnumerable<Entry> batch)
    {
        var touched = new HashSet<Subject>();
        foreach (var entry in batch)
        {
            if (!_known.TryAdd(entry.Id, entry)) continue;
            if (entry is Voided voided) _voided.Add(voided.Entry);
            foreach (var subject in entry.Concerns)
            {
                touched.Add(subject);
                if (!_about.TryGetValue(subject, out var list)) _about.Add(subject, list = []);
                list.Add(entry);
            }
        }

        var books = new Books(About);
        foreach (var (question, subject) in Affected(touched)) WorkOut(books, question, subject);
    }

    private IReadOnlyList<Entry> About(Subject subject)
    {
        if (!_about.TryGetValue(subject, out var list)) return [];
        var standing = list.FindAll(entry => entry is not Voided && !_voided.Contains(entry.Id));
        standing.Sort((left, right) => Place.Of(left).CompareTo(Place.Of(right)));
        return standing;
    }

    private List<(int Question, Subject Subject)> Affected(HashSet<Subject> touched)
    {
        var affected = new HashSet<(int, Subject)>();
        foreach (var subject in touched)
        {
            for (var question = 0; question < questions.Count; question++)
                if (questions[question].Asks(subject.Kind))
                    affected.Add((question, subject));
            if (_readers.TryGetValue(subject, out var readers)) affected.UnionWith(readers);
        }

        return [.. affected];
    }

    private void WorkOut(Books books, int question, Subject subject)
    {
        var key = (question, subject);
        foreach (var read in _reads.GetValueOrDefault(key, [])) _readers[read].Remove(key);
        books.StartNoting();
        Answers.Put(questions[question], subject, questions[question].Rows(books, subject));
        var noted = books.StopNoting();
        _reads[key] = noted;
        foreach (var read in noted)
        {
            if (!_readers.TryGetValue(read, out var readers)) _readers.Add(read, readers = []);
            readers.Add(key);
        }
    }
}
