using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Simulation;
using ColonyLineage.Support;
using static ColonyLineage.Ledger.Tests.OpenedBooks;

namespace ColonyLineage.Ledger.Tests;

/// <summary>
/// The law of order on a real database: generated histories, arriving shuffled, in batches of any size and partly twice, give read
/// tables that are equal to the byte to the rebuilt ones and to a plain fold of the history.
/// </summary>
public class LawOfOrderTests(PostgresFixture postgres)
{
    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    [InlineData(13)]
    [InlineData(14)]
    [InlineData(15)]
    [InlineData(16)]
    public async Task Whatever_the_order_of_arrival_the_answers_are_the_same(int seed)
    {
        await using var books = await OpenAsync(postgres);
        var history = Generator.Make((ulong)seed, 60, 200).Select(recorded => recorded.Entry).Where(entry => entry.Check().Count == 0).ToList();
        var random = new Random(seed);
        var arriving = history.Concat(history.Where(_ => random.Next(4) == 0)).OrderBy(_ => random.Next()).ToList();
        for (var at = 0; at < arriving.Count;)
        {
            var batch = arriving.Skip(at).Take(random.Next(1, 25)).ToList();
            at += batch.Count;
            Assert.Empty((await books.Ledger.RecordAsync(batch, Stop)).Refusals);
            if (random.Next(5) == 0) await books.AssertTablesAreTrueAsync();
        }

        var live = Folded(WholeBooks.Of(history.Select(entry => new Recorded(entry, default))));
        var kept = await books.AnswersAsync();
        await books.Ledger.RebuildAsync(null, Stop);
        var rebuilt = await books.AnswersAsync();
        foreach (var question in Questions.All)
        {
            Assert.Equal(live[question.Name], kept[question.Name]);
            Assert.Equal(live[question.Name], rebuilt[question.Name]);
        }

        Assert.True((await books.Ledger.StatusAsync(check: true, Stop)).Good);
        await AssertBooksAgreeAsync(books, history);
        await AssertRowsAgreeAsync(books);
    }

    /// <summary>Books that fetch a subject's entries when it is looked at have the same rows.</summary>
    private static async Task AssertBooksAgreeAsync(OpenedBooks books, List<Entry> history)
    {
        var opened = books.Ledger.OpenBooks(Stop);
        var whole = await books.Ledger.WholeAsync(null, null, Stop);
        foreach (var question in Questions.All)
            foreach (var subject in whole.Subjects.Where(subject => question.Asks(subject.Kind)).Take(10))
                Assert.Equal(RowJson(question, whole.Books, subject), RowJson(question, opened, subject));
    }

    /// <summary>Typed rows out of the table are the rows that were folded, with and without filters.</summary>
    private static async Task AssertRowsAgreeAsync(OpenedBooks books)
    {
        var whole = await books.Ledger.WholeAsync(null, null, Stop);
        await CheckAsync(Questions.QueensByAge);
        await CheckAsync(Questions.DoseCompleteness);
        await CheckAsync(Questions.SpotStory);
        await CheckAsync(Questions.Lineage);
        await CheckAsync(Questions.Conflicts);
        await CheckAsync(Questions.Register);

        async Task CheckAsync<TRow>(Question<TRow> question) where TRow : class, IRow
        {
            var all = whole.Rows(question).ToList();
            var asks = new List<Ask> { Ask.Everything, new() { Yard = "no such yard" }, new() { Season = 2024 }, new() { Spot = "1" } };
            asks.AddRange(all.SelectMany(row => Asks(row, question.Columns)).Distinct().Take(30));
            foreach (var ask in asks)
                Assert.Equal(
                    Text(all.Where(row => ask.Wants(row, question.Columns)), question),
                    Text(await books.Ledger.RowsAsync(question, ask, Stop), question));
        }
    }

    private static IEnumerable<Ask> Asks(IRow row, IReadOnlyList<Column> columns)
    {
        foreach (var column in columns)
            switch (column.Name, column.Value(row))
            {
                case ("yard", string name):
                    yield return new Ask { Yard = name.ToUpperInvariant() };
                    break;
                case ("yard_id", Guid id):
                    yield return new Ask { Yard = id.ToString() };
                    break;
                case ("colony", string name):
                    yield return new Ask { Colony = name.ToLowerInvariant() };
                    break;
                case ("queen_id", Guid id):
                    yield return new Ask { Queen = id.ToString().ToUpperInvariant() };
                    break;
                case ("season", int season):
                    yield return new Ask { Season = season };
                    break;
            }
    }

    private static string RowJson(IQuestion question, Books opened, Subject subject) => Text(question.Rows(opened, subject), question);
}
