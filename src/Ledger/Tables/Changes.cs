using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Tables;

/// <summary>Which subjects' rows were changed from one version of the read tables to the next, by this process, for the last while.</summary>
internal sealed class Changes
{
    private const int Most = 200;
    private readonly Lock _lock = new();
    private readonly Dictionary<long, (long After, IReadOnlyDictionary<Subject, int> Changed)> _steps = [];
    private readonly Queue<long> _order = [];

    public void Add(long before, long after, IReadOnlyDictionary<Subject, int> changed)
    {
        if (before == after) return;
        lock (_lock)
        {
            if (_steps.TryAdd(before, (after, changed))) _order.Enqueue(before);
            if (_order.Count > Most) _steps.Remove(_order.Dequeue());
        }
    }

    /// <summary>The subjects whose rows of a question are different at a version; null where another process, or a rebuild, had a hand in it.</summary>
    public HashSet<Subject>? Between(long before, long after, int question)
    {
        var subjects = new HashSet<Subject>();
        lock (_lock)
        {
            while (before < after)
            {
                if (!_steps.TryGetValue(before, out var step)) return null;
                foreach (var (subject, questions) in step.Changed)
                    if ((questions & (1 << question)) != 0)
                        subjects.Add(subject);
                before = step.After;
            }
        }

        return before == after ? subjects : null;
    }
}
