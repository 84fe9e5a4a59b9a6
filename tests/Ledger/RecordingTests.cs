using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Support;
using static ColonyLineage.Ledger.Tests.OpenedBooks;

namespace ColonyLineage.Ledger.Tests;

/// <summary>An act is recorded once, whole, whoever sends it how often.</summary>
public class RecordingTests(PostgresFixture postgres)
{
    [Fact]
    public async Task What_was_recorded_is_in_the_answers_at_once()
    {
        await using var books = await OpenAsync(postgres);
        var receipt = await books.Ledger.RecordAsync([Sample.Course(), Sample.OpenYard(1), Sample.Establish(1, queen: 1), Sample.Treat(1)], Stop);
        Assert.Empty(receipt.Refusals);
        Assert.Equal(4, receipt.New.Count);
        var dose = Assert.Single(await books.Ledger.RowsAsync(Questions.DoseCompleteness, Ask.Everything, Stop));
        Assert.Equal((1m, 1m, "Yard 1"), (dose.Had, dose.Owed, dose.Yard));
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task Sent_twice_changes_nothing_and_is_no_error()
    {
        await using var books = await OpenAsync(postgres);
        Entry[] act = [Sample.OpenYard(1), Sample.Establish(1), Sample.Treat(1)];
        await books.Ledger.RecordAsync(act, Stop);
        var before = await books.AnswersAsync();
        var again = await books.Ledger.RecordAsync(act, Stop);
        Assert.Empty(again.New);
        Assert.Empty(again.Refusals);
        Assert.Equal(act.Select(entry => entry.Id).Order(), again.Known.Order());
        Assert.Equal(before, await books.AnswersAsync());
        Assert.Equal(3L, await books.SqlAsync("select count(*) from hill.mt_events"));
    }

    [Fact]
    public async Task Known_and_new_entries_in_one_act_are_told_apart()
    {
        await using var books = await OpenAsync(postgres);
        var first = Sample.Treat(1);
        var second = Sample.Treat(2);
        await books.Ledger.RecordAsync([first], Stop);
        var receipt = await books.Ledger.RecordAsync([first, second, second], Stop);
        Assert.Equal([second.Id], receipt.New);
        Assert.Equal([first.Id], receipt.Known);
    }

    [Fact]
    public async Task The_same_id_with_other_content_refuses_the_whole_act_and_keeps_both_visible()
    {
        await using var books = await OpenAsync(postgres);
        var was = Sample.Treat(1);
        await books.Ledger.RecordAsync([was], Stop);
        var other = was with { Doses = 0.5m };
        var bystander = Sample.Treat(2);
        for (var sent = 0; sent < 2; sent++)
        {
            var receipt = await books.Ledger.RecordAsync([bystander, other], Stop);
            Assert.Equal(Refusals.SameIdOtherContent, Assert.Single(receipt.Refusals).Name);
            Assert.Empty(receipt.New);
        }

        Assert.Equal(was, Assert.Single(await books.Ledger.EntriesAsync([was.Id, bystander.Id], Stop)).Entry);
        var aside = Assert.Single(await books.Ledger.KeptAsideAsync(Stop));
        Assert.Equal(was.Id, aside.Entry);
        Assert.Equal(other, EntryJson.ReadTagged((System.Text.Json.Nodes.JsonObject)System.Text.Json.Nodes.JsonNode.Parse(aside.Payload)!));
    }

    [Fact]
    public async Task One_id_for_two_contents_in_one_act_is_refused()
    {
        await using var books = await OpenAsync(postgres);
        var entry = Sample.Treat(1);
        var receipt = await books.Ledger.RecordAsync([entry, entry with { Doses = 2 }], Stop);
        Assert.Equal(Refusals.SameIdOtherContent, Assert.Single(receipt.Refusals).Name);
        Assert.Empty(await books.Ledger.EntriesAsync([entry.Id], Stop));
    }

    [Fact]
    public async Task Nonsense_that_slipped_through_refuses_the_whole_act()
    {
        await using var books = await OpenAsync(postgres);
        var receipt = await books.Ledger.RecordAsync([Sample.Treat(1), Sample.Treat(2, doses: -1)], Stop);
        Assert.Equal(Refusals.OutOfRange, Assert.Single(receipt.Refusals).Name);
        Assert.Equal(Refusals.EmptyAct, Assert.Single((await books.Ledger.RecordAsync([], Stop)).Refusals).Name);
        Assert.Equal(0L, await books.SqlAsync("select count(*) from hill.entry"));
    }

    [Fact]
    public async Task Several_devices_sending_the_same_act_at_once_record_it_once()
    {
        await using var books = await OpenAsync(postgres);
        var others = new[] { books.Ledger, await books.OpenAgainAsync(), await books.OpenAgainAsync() };
        for (var round = 0; round < 5; round++)
        {
            Entry[] act = [.. Enumerable.Range(1, 10).Select(colony => Sample.Treat(colony))];
            var receipts = await Task.WhenAll(Enumerable.Range(0, 12).Select(i => Task.Run(() => others[i % 3].RecordAsync(i % 2 == 0 ? act : [.. act.Reverse()], Stop))));
            Assert.All(receipts, receipt => Assert.Empty(receipt.Refusals));
            Assert.Equal(10, receipts.Sum(receipt => receipt.New.Count));
            Assert.Equal(1, receipts.Count(receipt => receipt.New.Count == 10));
        }

        Assert.Equal(50L, await books.SqlAsync("select count(*) from hill.mt_events"));
        Assert.Equal(50L, await books.SqlAsync("select sum(version)::bigint from hill.mt_streams"));
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task Different_acts_on_the_same_colonies_at_once_are_all_recorded()
    {
        await using var books = await OpenAsync(postgres);
        var other = await books.OpenAgainAsync();
        var receipts = await Task.WhenAll(Enumerable.Range(0, 16).Select(i => Task.Run(() =>
            (i % 2 == 0 ? books.Ledger : other).RecordAsync([Sample.Treat(1), Sample.Treat(2), Sample.Treat(3 + i)], Stop))));
        Assert.All(receipts, receipt => Assert.Equal(3, receipt.New.Count));
        await books.AssertTablesAreTrueAsync();
    }
}
