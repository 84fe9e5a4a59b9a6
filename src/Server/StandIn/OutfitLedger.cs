// A stand-in in memory until the ledger lands. It goes then.
using System.Collections.Concurrent;
using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Ledger;

public sealed record LedgerOptions
{
    public bool RunDaemon { get; init; }
}

public sealed record Receipt(IReadOnlyList<EntryId> New, IReadOnlyList<EntryId> Known, IReadOnlyList<Refusal> Refusals);

public sealed record TableStatus(string Name, long Rows, IReadOnlyList<string> Differing);

public sealed record LedgerStatus(long Entries, long Waiting, long KeptAside, long BytesOnDisk, IReadOnlyList<TableStatus> Tables, IReadOnlyList<string> Advice);

public sealed record KeptAside(EntryId? Entry, DateTimeOffset Received, string Refusal, string Message, string Payload);

public sealed class OutfitLedger : IAsyncDisposable
{
    private static readonly ConcurrentDictionary<string, List<Recorded>> Kept = [];
    private readonly List<Recorded> _all;
    private readonly List<KeptAside> _aside = [];

    private OutfitLedger(string outfit, List<Recorded> all) => (Outfit, _all) = (outfit, all);

    public string Outfit { get; }

    public static Task<OutfitLedger> OpenAsync(string connectionString, string outfit, LedgerOptions options, CancellationToken cancel) =>
        Task.FromResult(new OutfitLedger(outfit, Kept.GetOrAdd(connectionString + outfit, _ => [])));

    public Task<Receipt> RecordAsync(IReadOnlyList<Entry> entries, CancellationToken cancel)
    {
        lock (_all)
        {
            var known = _all.ToDictionary(one => one.Entry.Id, one => one.Entry);
            var other = entries.Where(entry => known.TryGetValue(entry.Id, out var old) && EntryJson.Write(old) != EntryJson.Write(entry)).ToList();
            if (other.Count > 0)
                return Task.FromResult(new Receipt([], [], [.. other.Select(entry => new Refusal(Refusals.SameIdOtherContent, "id", $"{entry.Id} was recorded before with other content."))]));
            var fresh = entries.Where(entry => !known.ContainsKey(entry.Id)).ToList();
            _all.AddRange(fresh.Select(entry => new Recorded(entry, DateTimeOffset.UtcNow)));
            return Task.FromResult(new Receipt([.. fresh.Select(entry => entry.Id)], [.. entries.Except(fresh).Select(entry => entry.Id)], []));
        }
    }

    public Task<IReadOnlyList<TRow>> RowsAsync<TRow>(Question<TRow> question, Ask ask, CancellationToken cancel) where TRow : class, IRow =>
        Task.FromResult<IReadOnlyList<TRow>>([.. Whole(ask.AsOf, ask.KnownAt).Rows(question).Where(row => ask.Wants(row, question.Columns))]);

    public Task<WholeBooks> WholeAsync(DateOnly? asOf, DateTimeOffset? knownAt, CancellationToken cancel) => Task.FromResult(Whole(asOf, knownAt));

    public Books OpenBooks(CancellationToken cancel) => Whole(null, null).Books;

    public Task<IReadOnlyList<HistoryLine>> HistoryAsync(Subject subject, Ask ask, CancellationToken cancel) => Lines(entry => entry.Concerns.Contains(subject), ask);

    public Task<IReadOnlyList<HistoryLine>> EntriesAsync(IReadOnlyCollection<EntryId> ids, CancellationToken cancel) => Lines(entry => ids.Contains(entry.Id), Ask.Everything);

    public Task<IReadOnlyList<HistoryLine>> ActAsync(ActId act, CancellationToken cancel) => Lines(entry => entry.Act == act, Ask.Everything);

    public Task RebuildAsync(IProgress<(string Step, double Done)>? progress, CancellationToken cancel) => Task.CompletedTask;

    public Task<LedgerStatus> StatusAsync(bool check, CancellationToken cancel) => Task.FromResult(new LedgerStatus(_all.Count, 0, _aside.Count, 0, [], []));

    public Task<IReadOnlyList<KeptAside>> KeptAsideAsync(CancellationToken cancel) => Task.FromResult<IReadOnlyList<KeptAside>>(_aside);

    public Task KeepAsideAsync(IReadOnlyList<KeptAside> aside, CancellationToken cancel)
    {
        lock (_aside) _aside.AddRange(aside);
        return Task.CompletedTask;
    }

    public async IAsyncEnumerable<Recorded> ReadAllAsync([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel)
    {
        await Task.CompletedTask;
        foreach (var one in _all.ToList()) yield return one;
    }

    public async Task WriteJsonAsync(IQuestion question, Ask ask, Stream utf8, CancellationToken cancel)
    {
        await Task.CompletedTask;
        var books = Whole(null, null);
        using var json = new Utf8JsonWriter(utf8);
        json.WriteStartArray();
        foreach (var row in books.Subjects.Where(subject => question.Asks(subject.Kind)).SelectMany(subject => question.Rows(books.Books, subject)).Where(row => ask.Wants(row, question.Columns)))
        {
            json.WriteStartObject();
            foreach (var column in question.Columns)
            {
                json.WritePropertyName(column.Name);
                Server.Answers.AnswerJson.WriteValue(json, column.Value(row));
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public Task LoadAsync(IEnumerable<Recorded> recorded, CancellationToken cancel)
    {
        lock (_all) _all.AddRange(recorded);
        return Task.CompletedTask;
    }

    public Task RemoveAsync(CancellationToken cancel)
    {
        lock (_all) _all.Clear();
        return Task.CompletedTask;
    }

    public Task<long> VersionAsync(CancellationToken cancel) => Task.FromResult((long)_all.Count);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private WholeBooks Whole(DateOnly? asOf, DateTimeOffset? knownAt)
    {
        lock (_all) return WholeBooks.Of(_all.ToList(), asOf, knownAt);
    }

    private Task<IReadOnlyList<HistoryLine>> Lines(Func<Entry, bool> wanted, Ask ask)
    {
        lock (_all)
        {
            var known = _all.Where(one => ask.KnownAt is null || one.At <= ask.KnownAt).ToList();
            var voids = known.Where(one => one.Entry is Voided).ToLookup(one => ((Voided)one.Entry).Entry);
            return Task.FromResult<IReadOnlyList<HistoryLine>>([.. known.Where(one => wanted(one.Entry) && (ask.AsOf is null || one.Entry.On.Day <= ask.AsOf)).OrderBy(one => Place.Of(one.Entry))
                .Select(one => new HistoryLine(one, voids[one.Entry.Id].Cast<Recorded?>().FirstOrDefault()))]);
        }
    }
}
