using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Support;
using static ColonyLineage.Ledger.Tests.OpenedBooks;

namespace ColonyLineage.Ledger.Tests;

/// <summary>The state of things on a past day, and what the books held at a past instant.</summary>
public class ClocksTests(PostgresFixture postgres)
{
    [Fact]
    public async Task D7_a_void_and_the_right_entry_by_both_clocks()
    {
        await using var books = await OpenAsync(postgres);
        var wrong = Sample.Treat(1);
        await books.Ledger.RecordAsync([Sample.Course(), Sample.OpenYard(1), Sample.Establish(1), Sample.Establish(3), wrong, Sample.Treat(1, day: 15)], Stop);
        var before = await NowAsync(books);
        await books.Ledger.RecordAsync([Sample.Void(wrong), Sample.Treat(3)], Stop);

        Assert.Equal([(1, 1m), (3, 1m)], await HadAsync(books, Ask.Everything));
        Assert.Equal([(1, 2m)], await HadAsync(books, new Ask { KnownAt = before }));
        Assert.Equal([(3, 1m)], await HadAsync(books, new Ask { AsOf = Sample.Day.AddDays(2) }));
        Assert.Equal([(1, 1m)], await HadAsync(books, new Ask { AsOf = Sample.Day.AddDays(2), KnownAt = before }));
        Assert.Equal(Questions.All.Select(question => Folded(books, question)), Questions.All.Select(question => Written(books, question)));
    }

    [Fact]
    public async Task The_history_keeps_to_both_clocks()
    {
        await using var books = await OpenAsync(postgres);
        var early = Sample.Treat(1);
        var late = Sample.Treat(1, day: 10);
        await books.Ledger.RecordAsync([early, late], Stop);
        var before = await NowAsync(books);
        await books.Ledger.RecordAsync([Sample.Void(early), Sample.Treat(1, day: 1)], Stop);
        Assert.Equal([(early.Id, false), (late.Id, false)], (await books.Ledger.HistoryAsync(Sample.Colony(1), new Ask { KnownAt = before }, Stop)).Select(line => (line.Entry.Id, line.IsVoided)));
        Assert.Equal([(early.Id, true)], (await books.Ledger.HistoryAsync(Sample.Colony(1), new Ask { AsOf = Sample.Day }, Stop)).Select(line => (line.Entry.Id, line.IsVoided)));
    }

    [Fact]
    public async Task The_instant_is_the_servers_and_one_for_all_of_an_act()
    {
        await using var books = await OpenAsync(postgres);
        var before = await NowAsync(books);
        Entry[] act = [Sample.Treat(1), Sample.Treat(2)];
        await books.Ledger.RecordAsync(act, Stop);
        var after = await NowAsync(books);
        var at = Assert.Single((await books.Ledger.EntriesAsync([.. act.Select(entry => entry.Id)], Stop)).Select(line => line.Recorded.At).Distinct());
        Assert.InRange(at, before, after);
    }

    private static async Task<DateTimeOffset> NowAsync(OpenedBooks books) => new((DateTime)(await books.SqlAsync("select clock_timestamp()"))!);

    private static async Task<IEnumerable<(int, decimal)>> HadAsync(OpenedBooks books, Ask ask) =>
        (await books.Ledger.RowsAsync(Questions.DoseCompleteness, ask, Stop)).Select(row => (int.Parse(row.Colony), row.Had)).Order();

    private static string Folded(OpenedBooks books, IQuestion question) => Written(books, question, new Ask { AsOf = new DateOnly(2099, 1, 1) });

    private static string Written(OpenedBooks books, IQuestion question, Ask? ask = null)
    {
        using var json = new MemoryStream();
        books.Ledger.WriteJsonAsync(question, ask ?? Ask.Everything, json, Stop).GetAwaiter().GetResult();
        return System.Text.Encoding.UTF8.GetString(json.ToArray());
    }
}
