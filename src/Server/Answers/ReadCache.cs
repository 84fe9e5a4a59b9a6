using ColonyLineage.Ledger;
using ColonyLineage.Projections;

namespace ColonyLineage.Server.Answers;

/// <summary>
/// What is worked out of the read tables, kept until the books hold something new. Whoever wrote it, this process or another, the
/// version that the ledger gives tells.
/// </summary>
public sealed class ReadCache(OutfitLedger ledger)
{
    private readonly Dictionary<string, (long Version, object Value)> _kept = [];
    private readonly SemaphoreSlim _one = new(1);

    /// <summary>The value kept under a name, or made of the books as they are now.</summary>
    public async Task<T> GetAsync<T>(string name, Func<CancellationToken, Task<T>> make, CancellationToken cancel) where T : class
    {
        var version = await ledger.VersionAsync(cancel);
        if (Kept<T>(name, version) is { } kept) return kept;
        await _one.WaitAsync(cancel);
        try
        {
            // Asked again: somebody may have made it meanwhile, or recorded something. What is recorded while it is being made
            // only makes the kept value newer than it says, and the next question makes it again.
            version = await ledger.VersionAsync(cancel);
            if (Kept<T>(name, version) is { } made) return made;
            var value = await make(cancel);
            lock (_kept) _kept[name] = (version, value);
            return value;
        }
        finally
        {
            _one.Release();
        }
    }

    /// <summary>The rows of a question, everything as known now.</summary>
    public Task<IReadOnlyList<TRow>> RowsAsync<TRow>(Question<TRow> question, CancellationToken cancel) where TRow : class, IRow =>
        GetAsync($"rows of {question.Name}", stop => ledger.RowsAsync(question, Ask.Everything, stop), cancel);

    private T? Kept<T>(string name, long version) where T : class
    {
        lock (_kept) return _kept.TryGetValue(name, out var kept) && kept.Version == version ? (T)kept.Value : null;
    }
}
