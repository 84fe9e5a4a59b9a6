using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Simulation;
using ColonyLineage.Support;
using static ColonyLineage.Ledger.Tests.OpenedBooks;

namespace ColonyLineage.Ledger.Tests;

/// <summary>Read tables worked out anew while entries keep arriving miss nothing.</summary>
public class RebuildTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Entries_and_voids_that_arrive_during_rebuilds_are_all_in_the_tables()
    {
        await using var books = await OpenAsync(postgres);
        var other = await books.OpenAgainAsync();
        var histories = Enumerable.Range(21, 6).Select(seed => Generator.Make((ulong)seed, 80, 160).Select(recorded => recorded.Entry).Where(entry => entry.Check().Count == 0).ToList()).ToList();
        await books.Ledger.RecordAsync(histories[0], Stop);
        var random = new Random(5);
        var batches = histories.Skip(1).Select((history, i) => history.OrderBy(_ => random.Next()).Chunk(3 + i).ToList()).ToList();

        var writers = batches.Select((mine, i) => Task.Run(async () =>
        {
            foreach (var batch in mine) Assert.Empty((await (i % 2 == 0 ? books.Ledger : other).RecordAsync(batch, Stop)).Refusals);
        })).ToList();
        var rebuilt = 0;
        while (writers.Any(writer => !writer.IsCompleted))
        {
            await (rebuilt++ % 2 == 0 ? books.Ledger : other).RebuildAsync(null, Stop);
        }

        await Task.WhenAll(writers);
        Assert.True(rebuilt > 1, $"{rebuilt} rebuilds");
        await books.AssertTablesAreTrueAsync();
        Assert.True((await books.Ledger.StatusAsync(check: true, Stop)).Good);
    }

    [Fact]
    public async Task Two_rebuilds_at_once_take_turns()
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1), Sample.Establish(2)], Stop);
        var other = await books.OpenAgainAsync();
        await Task.WhenAll(Enumerable.Range(0, 6).Select(i => Task.Run(() => (i % 2 == 0 ? books.Ledger : other).RebuildAsync(null, Stop))));
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task A_rebuild_that_is_given_up_leaves_the_old_tables()
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1)], Stop);
        using var soon = new CancellationTokenSource();
        var progress = new Once(() => soon.Cancel());
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => books.Ledger.RebuildAsync(progress, soon.Token));
        await books.AssertTablesAreTrueAsync();
        await books.Ledger.RebuildAsync(null, Stop);
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task Loaded_entries_are_as_if_recorded_and_more_can_be_recorded_after()
    {
        await using var books = await OpenAsync(postgres);
        var history = Generator.Make(31, 150, 200).Where(recorded => recorded.Entry.Check().Count == 0).ToList();
        var first = Sample.Establish(1);
        await books.Ledger.RecordAsync([first], Stop);
        await books.Ledger.LoadAsync(history, null, Stop);
        await books.AssertTablesAreTrueAsync();
        var line = Assert.Single(await books.Ledger.EntriesAsync([history[7].Entry.Id], Stop));
        Assert.Equal(history[7].At, line.Recorded.At);
        var again = await books.Ledger.RecordAsync([history[7].Entry], Stop);
        Assert.Equal([history[7].Entry.Id], again.Known);
        var more = Sample.Treat(1) with { Colony = history.Select(recorded => recorded.Entry).OfType<ColonyEstablished>().First().Colony };
        Assert.Equal([more.Id, first.Id], (await books.Ledger.RecordAsync([more, first], Stop)) is var receipt ? [.. receipt.New, .. receipt.Known] : []);
        await books.AssertTablesAreTrueAsync();
        await using var session = books.Ledger.Store.QuerySession();
        Assert.Equal(history.Count + 2L, await books.SqlAsync("select count(*) from hill.mt_events"));
        foreach (var stream in history.Select(recorded => recorded.Entry.Stream.Id).Distinct())
        {
            var events = await session.Events.FetchStreamAsync(stream, token: Stop);
            Assert.Equal(Enumerable.Range(1, events.Count).Select(version => (long)version), events.Select(stored => stored.Version));
            Assert.Equal(events.Count, (await session.Events.FetchStreamStateAsync(stream, Stop))!.Version);
        }
    }

    private sealed class Once(Action action) : IProgress<(string, double)>
    {
        public void Report((string, double) value) => action();
    }
}
