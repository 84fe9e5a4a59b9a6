using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Support;
using Npgsql;
using static ColonyLineage.Ledger.Tests.OpenedBooks;

namespace ColonyLineage.Ledger.Tests;

/// <summary>What is stored is the entries' own JSON under their own names, and comes back the same by both readers.</summary>
public class StoredFormTests(PostgresFixture postgres)
{
    private static string Samples => Path.Combine(Repository.Root, "tests", "Core", "Entries", "Samples");

    [Fact]
    public async Task Every_kind_goes_through_Marten_and_comes_back_the_same()
    {
        await using var books = await OpenAsync(postgres);
        var samples = AllSamples().Where(sample => !Upcasts.All.ContainsKey(sample.Kind)).Select(sample => sample.Entry).ToList();
        Assert.Equal(Kinds.All.Select(kind => kind.Type).ToHashSet(), samples.Select(entry => entry.GetType()).ToHashSet());
        foreach (var entry in samples)
        {
            Assert.Empty((await books.Ledger.RecordAsync([entry], Stop)).Refusals);
            var ours = Assert.Single(await books.Ledger.EntriesAsync([entry.Id], Stop));
            Assert.Equal(EntryJson.Write(entry), EntryJson.Write(ours.Entry));
            await using var session = books.Ledger.Store.QuerySession();
            var theirs = Assert.Single(await session.Events.FetchStreamAsync(entry.Stream.Id, token: Stop), stored => stored.Id == entry.Id.Value);
            Assert.Equal(Kinds.Of(entry).Stored, theirs.EventTypeName);
            Assert.Equal(EntryJson.Write(entry), EntryJson.Write((Entry)theirs.Data));
            Assert.Equal(ours.Recorded.At, theirs.Timestamp);
            var stored = (string)(await books.SqlAsync($"select data::text from hill.mt_events where id = '{entry.Id}'"))!;
            Assert.True(JsonNode.DeepEquals(JsonNode.Parse(EntryJson.Write(entry)), JsonNode.Parse(stored)), stored);
        }

        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task An_older_version_is_read_lifted_by_both_readers()
    {
        await using var books = await OpenAsync(postgres);
        var first = Sample.Establish(1);
        await books.Ledger.RecordAsync([first], Stop);
        var id = Sample.Id("an old weighing");
        await StoreRawAsync(books, id, "weighed.v1", $$"""{"id":"{{id}}","on":"2019-08-02","act":"{{Sample.Id("act")}}","colony":"{{Sample.Colony(1)}}","pounds":92.5,"tarePounds":40}""");

        var ours = (Weighed)Assert.Single(await books.Ledger.EntriesAsync([new EntryId(id)], Stop)).Entry;
        Assert.Equal((new Quantity(92.5m, "lb"), new Quantity(40m, "lb")), (ours.Gross, ours.Tare));
        await using var session = books.Ledger.Store.QuerySession();
        var theirs = (await session.Events.FetchStreamAsync(first.Stream.Id, token: Stop)).Single(stored => stored.Id == id);
        Assert.Equal(ours, theirs.Data);
        await books.Ledger.CatchUpAsync(Stop);
        await books.AssertTablesAreTrueAsync();
    }

    private static async Task StoreRawAsync(OpenedBooks books, Guid id, string kind, string json)
    {
        await using var connection = new NpgsqlConnection(books.ConnectionString);
        await connection.OpenAsync(Stop);
        await using var command = new NpgsqlCommand("""
            insert into hill.entry (id, hash, act) values ($1, '\x00', $1);
            """, connection) { Parameters = { new() { Value = id } } };
        await command.ExecuteNonQueryAsync(Stop);
        await using var append = new NpgsqlCommand("select hill.mt_quick_append_events($1, null, '*DEFAULT*', array[$2], array[$3], array['gone'], array[$4::jsonb], array[null]::bytea[], array[now()])", connection)
        {
            Parameters = { new() { Value = Sample.Colony(1).Value }, new() { Value = id }, new() { Value = kind }, new() { Value = json } },
        };
        await append.ExecuteNonQueryAsync(Stop);
    }

    private static IEnumerable<(string Kind, Entry Entry)> AllSamples() =>
        from file in Directory.GetFiles(Samples, "*.json")
        let kind = Path.GetFileNameWithoutExtension(file)
        select (kind, EntryJson.Read(kind, File.ReadAllBytes(file)));
}
