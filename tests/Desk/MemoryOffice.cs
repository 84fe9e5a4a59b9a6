using System.Collections.Concurrent;
using ColonyLineage.Desk;
using ColonyLineage.Desk.Forms;
using ColonyLineage.Entries;
using ColonyLineage.Ledger.Import;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Rules;
using ColonyLineage.Server.Acts;
using ColonyLineage.Server.Import;

namespace ColonyLineage.Desk.Tests;

/// <summary>The books in memory: the desk without a server or a database behind it.</summary>
public sealed class MemoryOffice(IEnumerable<Recorded> recorded, DateOnly today) : IOffice
{
    private readonly List<Recorded> _recorded = [.. recorded];
    private readonly ConcurrentDictionary<(DateOnly?, DateTimeOffset?), WholeBooks> _books = new();
    private readonly Lock _gate = new();
    private int _made;

    public DateOnly Today => today;

    /// <summary>Everything that was recorded.</summary>
    public IReadOnlyList<Recorded> Recorded => _recorded;

    public Task<OutfitCard> OutfitAsync(CancellationToken cancel) => Later(Whole(Ask.Everything).Books.Outfit);

    public Task<IReadOnlyList<TRow>> RowsAsync<TRow>(Question<TRow> question, Ask ask, CancellationToken cancel) where TRow : class, IRow
    {
        lock (_gate) return Later<IReadOnlyList<TRow>>([.. Whole(ask).Rows(question).Where(row => ask.Wants(row, question.Columns))]);
    }

    public Task<Household> HouseholdAsync(Ask clocks, CancellationToken cancel)
    {
        lock (_gate)
        {
            var whole = Whole(clocks);
            return Later(new Household(whole.Books.Outfit, whole.Books.Store, [.. whole.Subjects.Where(subject => subject.Kind == SubjectKind.Yard).Select(subject => whole.Books.Yard(new YardId(subject.Id)))]));
        }
    }

    public Task<Books> BooksOnAsync(IReadOnlyList<Subject> subjects, Ask clocks, CancellationToken cancel) => BooksAsync(clocks, cancel);

    public Task<IReadOnlyList<HistoryLine>> TreatmentsAsync(IReadOnlyCollection<ColonyId> colonies, Ask clocks, CancellationToken cancel) =>
        Later(Lines(clocks, recorded => recorded.Entry is Treated or TreatmentTakenOut && colonies.Contains(((ColonyEntry)recorded.Entry).Colony)));

    public Task<Books> BooksAsync(Ask ask, CancellationToken cancel)
    {
        // Books fold lazily and are for one reader at a time: each page gets its own.
        lock (_gate) return Later(WholeBooks.Of(_recorded, ask.AsOf, ask.KnownAt).Books);
    }

    public Task<IReadOnlyList<HistoryLine>> HistoryAsync(Subject subject, Ask ask, CancellationToken cancel) =>
        Later(Lines(ask, recorded => recorded.Entry is not Voided && recorded.Entry.Concerns.Contains(subject)));

    public Task<IReadOnlyList<HistoryLine>> EntriesAsync(IReadOnlyCollection<EntryId> ids, CancellationToken cancel) =>
        Later(Lines(Ask.Everything, recorded => ids.Contains(recorded.Entry.Id)));

    public Task<IReadOnlyList<HistoryLine>> ActAsync(ActId act, CancellationToken cancel) =>
        Later(Lines(Ask.Everything, recorded => recorded.Entry.Act == act));

    public Task<IReadOnlyList<Refusal>> RecordAsync(IReadOnlyList<Entry> entries, CancellationToken cancel)
    {
        var refusals = entries.SelectMany(entry => entry.Check()).ToList();
        if (refusals.Count > 0) return Later<IReadOnlyList<Refusal>>(refusals);
        lock (_gate)
        {
            foreach (var entry in entries)
                if (_recorded.FirstOrDefault(known => known.Entry.Id == entry.Id).Entry is { } known && EntryJson.Write(known) != EntryJson.Write(entry))
                    return Later<IReadOnlyList<Refusal>>([new(Refusals.SameIdOtherContent, "id", "Recorded before with other content.")]);
            foreach (var entry in entries)
                if (_recorded.All(known => known.Entry.Id != entry.Id))
                    _recorded.Add(new Recorded(entry, new DateTimeOffset(today, new TimeOnly(12, 0), TimeSpan.Zero)));
            _books.Clear();
        }

        return Later<IReadOnlyList<Refusal>>([]);
    }

    public Task<IReadOnlyList<Refusal>> RunAsync(object request, CancellationToken cancel)
    {
        Outcome outcome;
        lock (_gate) outcome = ActCatalogue.Decide(request, (day, act) => new MemoryStanding([.. _recorded], day, act), new Now(new DateTimeOffset(today, new TimeOnly(12, 0), TimeSpan.Zero), today));
        return outcome.IsRefused ? Later(outcome.Refusals) : RecordAsync(outcome.Entries, cancel);
    }

    public Task<SheetPlan> PlanSheetAsync(byte[] sheet, string map, CancellationToken cancel) => Later(Sheets.ForDesk(Plan(sheet, map)));

    public Task<IReadOnlyList<Refusal>> RecordSheetAsync(byte[] sheet, string map, bool skipBad, CancellationToken cancel)
    {
        var plan = Plan(sheet, map);
        return plan.Bad.Count > 0 && !skipBad ? Later(Sheets.Refusals(plan)) : RecordAsync(plan.Entries, cancel);
    }

    public Task<IReadOnlyList<HistoryLine>> FindTextAsync(string words, int most, Ask ask, CancellationToken cancel) =>
        Later<IReadOnlyList<HistoryLine>>([.. Lines(ask, recorded => recorded.Entry is not Voided && EntryText.Says(recorded.Entry, words)).Reverse().Take(most)]);

    public int NextOrder() => 1000 + (20 * Interlocked.Increment(ref _made));

    public Guid NewId() => NamedId.Of(Guid.Empty, $"made {Interlocked.Increment(ref _made)}");

    private ImportPlan Plan(byte[] sheet, string map)
    {
        lock (_gate)
        {
            var register = Whole(Ask.Everything).Rows(Questions.Register).ToList();
            var known = new KnownNames
            {
                Yards = register.Where(row => row.Kind == SubjectKind.Yard).ToDictionary(row => row.Name, row => new YardId(row.Id)),
                Colonies = register.Where(row => row.Kind == SubjectKind.Colony).ToDictionary(row => row.Name, row => new ColonyId(row.Id)),
            };
            return SheetImport.Plan(new MemoryStream(sheet), Mapping.Read(map), today, known);
        }
    }

    private WholeBooks Whole(Ask ask)
    {
        lock (_gate) return _books.GetOrAdd((ask.AsOf, ask.KnownAt), clocks => WholeBooks.Of(_recorded, clocks.Item1, clocks.Item2));
    }

    private IReadOnlyList<HistoryLine> Lines(Ask ask, Func<Recorded, bool> wanted)
    {
        lock (_gate)
        {
            var known = _recorded.Where(recorded => ask.KnownAt is null || recorded.At <= ask.KnownAt).ToList();
            var voids = known.Where(recorded => recorded.Entry is Voided).GroupBy(recorded => ((Voided)recorded.Entry).Entry).ToDictionary(group => group.Key, group => group.First());
            return
            [
                .. known.Where(recorded => (ask.AsOf is null || recorded.Entry.On.Day <= ask.AsOf) && wanted(recorded))
                    .OrderBy(recorded => Place.Of(recorded.Entry))
                    .Select(recorded => new HistoryLine(recorded, voids.TryGetValue(recorded.Entry.Id, out var by) ? by : null)),
            ];
        }
    }

    /// <summary>As a database answers: later, so that a page is rendered once before it has what it asked for.</summary>
    private static async Task<T> Later<T>(T value)
    {
        await Task.Yield();
        return value;
    }
}
