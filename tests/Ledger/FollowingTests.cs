using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Support;
using Npgsql;
using static ColonyLineage.Ledger.Tests.OpenedBooks;

namespace ColonyLineage.Ledger.Tests;

/// <summary>The read tables follow what others recorded, and mend what was cut off.</summary>
public class FollowingTests(PostgresFixture postgres)
{
    [Fact]
    public async Task What_another_process_recorded_reaches_the_tables_through_the_daemon()
    {
        await using var books = await OpenAsync(postgres, new LedgerOptions { RunDaemon = true });
        var other = await books.OpenAgainAsync();
        await CutOffAsync(other, [Sample.OpenYard(1), Sample.Establish(1)]);
        await UntilAsync(async () => (await books.Ledger.RowsAsync(Questions.QueensByAge, Ask.Everything, Stop)).Count == 1);
        await CutOffAsync(other, [Sample.Establish(2), Sample.Establish(3)]);
        await UntilAsync(async () => (await books.Ledger.RowsAsync(Questions.QueensByAge, Ask.Everything, Stop)).Count == 3);
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task Of_several_processes_that_watch_another_takes_over_when_one_ends()
    {
        await using var books = await OpenAsync(postgres);
        var first = await OutfitLedger.OpenAsync(books.ConnectionString, Outfit, new LedgerOptions { RunDaemon = true }, Stop);
        await using var second = await OutfitLedger.OpenAsync(books.ConnectionString, Outfit, new LedgerOptions { RunDaemon = true }, Stop);
        await CutOffAsync(books.Ledger, [Sample.OpenYard(1), Sample.Establish(1)]);
        await UntilAsync(async () => (await books.Ledger.RowsAsync(Questions.QueensByAge, Ask.Everything, Stop)).Count == 1);
        await first.DisposeAsync();
        await CutOffAsync(books.Ledger, [Sample.Establish(2)]);
        await UntilAsync(async () => (await books.Ledger.RowsAsync(Questions.QueensByAge, Ask.Everything, Stop)).Count == 2);
    }

    [Fact]
    public async Task An_act_whose_tables_could_not_follow_is_recorded_and_the_next_reader_sees_it()
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1)], Stop);
        await books.SqlAsync("alter table hill.queens_by_age rename to away");
        var receipt = await books.Ledger.RecordAsync([Sample.Establish(2)], Stop);
        Assert.Single(receipt.New);
        Assert.Empty(receipt.Refusals);
        await books.SqlAsync("alter table hill.away rename to queens_by_age");
        Assert.Equal(2, (await books.Ledger.RowsAsync(Questions.QueensByAge, Ask.Everything, Stop)).Count);
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task A_process_killed_between_recording_and_following_is_made_good_by_the_next_one_to_open_the_books()
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1)], Stop);
        await CutOffAsync(books.Ledger, [Sample.Establish(2)]);
        Assert.Single(await books.Ledger.RowsAsync(Questions.QueensByAge, Ask.Everything, Stop));
        Assert.Equal(1, (await books.Ledger.StatusAsync(check: false, Stop)).Waiting);
        await books.OpenAgainAsync();
        Assert.Equal(2, (await books.Ledger.RowsAsync(Questions.QueensByAge, Ask.Everything, Stop)).Count);
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task A_transaction_that_was_open_while_others_were_taken_in_is_taken_in_when_it_ends()
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1), Sample.Establish(2)], Stop);
        // Written as a slow recorder would, without the turn that recorders take: it began before, and ends after, what the tables take in meanwhile.
        await using var slow = new NpgsqlConnection(books.ConnectionString);
        await slow.OpenAsync(Stop);
        await using var transaction = await slow.BeginTransactionAsync(Stop);
        var late = Sample.Treat(1);
        await using (var insert = new NpgsqlCommand("insert into hill.entry (id, hash, act) values ($1, '\\x00', $1)", slow) { Parameters = { new() { Value = late.Id.Value } } })
            await insert.ExecuteNonQueryAsync(Stop);
        await using (var append = new NpgsqlCommand("select hill.mt_quick_append_events($1, null, '*DEFAULT*', array[$2], array['treated.v1'], array['gone'], array[$3::jsonb], array[null]::bytea[], array[now()])", slow)
               { Parameters = { new() { Value = late.Colony.Value }, new() { Value = late.Id.Value }, new() { Value = EntryJson.Write(late) } } })
            await append.ExecuteNonQueryAsync(Stop);
        await books.Ledger.RecordAsync([Sample.Treat(2)], Stop);
        Assert.Single(await books.Ledger.RowsAsync(Questions.DoseCompleteness, Ask.Everything, Stop));
        await transaction.CommitAsync(Stop);
        await books.Ledger.RecordAsync([Sample.Treat(2, day: 3)], Stop);
        Assert.Equal(2, (await books.Ledger.RowsAsync(Questions.DoseCompleteness, Ask.Everything, Stop)).Count);
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task An_append_that_was_rolled_back_leaves_nothing_and_stops_nobody()
    {
        await using var books = await OpenAsync(postgres, new LedgerOptions { RunDaemon = true });
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1)], Stop);
        await books.SqlAsync("alter table hill.entry_concerns rename to away");
        await Assert.ThrowsAnyAsync<Exception>(() => books.Ledger.RecordAsync([Sample.Treat(1), Sample.Establish(2)], Stop));
        await books.SqlAsync("alter table hill.away rename to entry_concerns");
        Assert.Equal(2L, await books.SqlAsync("select count(*) from hill.entry"));
        // Marten may have marked the sequence numbers that were lost.
        Assert.Equal(2L, await books.SqlAsync("select count(*) from hill.mt_events where type <> 'tombstone'"));
        await books.Ledger.RecordAsync([Sample.Establish(3)], Stop);
        await CutOffAsync(books.Ledger, [Sample.Establish(4)]);
        await UntilAsync(async () => (await books.Ledger.RowsAsync(Questions.QueensByAge, Ask.Everything, Stop)).Count == 3);
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task Tables_emptied_by_a_crash_are_worked_out_again()
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1)], Stop);
        foreach (var table in Questions.All.Select(question => question.Name.Replace('-', '_')).Append("reads").Append("read_state")) await books.SqlAsync($"truncate hill.{table}");
        await books.OpenAgainAsync();
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task Books_restored_into_a_younger_cluster_are_worked_out_again()
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1)], Stop);
        // As after a restore: the numbers of transactions lie far ahead of the cluster's own.
        await books.SqlAsync("update hill.entry set recorded_in = (recorded_in::text::bigint + 1000000000)::text::xid8");
        await books.SqlAsync("update hill.read_state set snapshot = '3000000000:3000000000:'::pg_snapshot");
        Assert.Contains((await books.Ledger.StatusAsync(check: false, Stop)).Advice, advice => advice.Contains("rebuild"));
        await books.Ledger.RecordAsync([Sample.Establish(2)], Stop);
        await books.AssertTablesAreTrueAsync();
        Assert.True((await books.Ledger.StatusAsync(check: true, Stop)) is { Good: true, Waiting: 0 });
    }

    [Fact]
    public async Task A_row_that_somebody_changed_is_found_and_named()
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1), Sample.Establish(2)], Stop);
        Assert.True((await books.Ledger.StatusAsync(check: true, Stop)).Good);
        await books.SqlAsync($"update hill.register set name = 'other' where subject = '{Sample.Colony(1)}'");
        await books.SqlAsync($"delete from hill.spot_story where subject = '{Sample.Colony(2)}'");
        var status = await books.Ledger.StatusAsync(check: true, Stop);
        Assert.Equal([$"colony {Sample.Colony(1)}"], status.Tables.Single(table => table.Name == "register").Differing);
        Assert.Equal([$"colony {Sample.Colony(2)}"], status.Tables.Single(table => table.Name == "spot_story").Differing);
        Assert.Equal(2, status.Tables.Sum(table => table.Differing.Count));
        await books.Ledger.RebuildAsync(null, Stop);
        Assert.True((await books.Ledger.StatusAsync(check: true, Stop)).Good);
    }

    [Fact]
    public async Task Two_outfits_in_one_database_do_not_see_each_other_and_one_goes_without_trace()
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1)], Stop);
        await using (var demo = await OutfitLedger.OpenAsync(books.ConnectionString, "demo", new LedgerOptions(), Stop))
        {
            await demo.RecordAsync([Sample.Establish(1)], Stop);
            Assert.Single(await demo.RowsAsync(Questions.Register, Ask.Everything, Stop), row => row.Kind == SubjectKind.Colony);
            await demo.RemoveAsync(Stop);
        }

        Assert.Equal(0L, await books.SqlAsync("select count(*) from pg_namespace where nspname = 'demo'"));
        await books.AssertTablesAreTrueAsync();
    }

    [Theory]
    [InlineData("Hill")]
    [InlineData("1st")]
    [InlineData("pg_hill")]
    [InlineData("public")]
    [InlineData("hill; drop")]
    [InlineData("")]
    public async Task A_name_that_cannot_be_a_schema_is_refused(string name) =>
        await Assert.ThrowsAsync<RefusedException>(() => OutfitLedger.OpenAsync("Host=/nowhere", name, new LedgerOptions(), Stop));

    [Fact]
    public async Task A_word_of_SQL_is_refused_as_an_outfits_name()
    {
        await using var database = await postgres.NewDatabaseAsync();
        await Assert.ThrowsAsync<RefusedException>(() => OutfitLedger.OpenAsync(database.ConnectionString, "table", new LedgerOptions(), Stop));
    }

    /// <summary>Records as a process does that is killed right after its commit: the tables do not follow.</summary>
    private static Task CutOffAsync(OutfitLedger ledger, IReadOnlyList<Entry> entries) => ledger.RecordWithoutFollowingAsync(entries, Stop);

    private static async Task UntilAsync(Func<Task<bool>> reached)
    {
        for (var deadline = DateTime.UtcNow.AddSeconds(60); !await reached(); await Task.Delay(25, Stop))
            Assert.True(DateTime.UtcNow < deadline, "It did not come within a minute.");
    }
}
