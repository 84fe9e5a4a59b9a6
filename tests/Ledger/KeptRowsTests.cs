using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Simulation;
using ColonyLineage.Support;
using static ColonyLineage.Ledger.Tests.OpenedBooks;

namespace ColonyLineage.Ledger.Tests;

/// <summary>Rows kept in memory are those of the read tables, whoever changed these, and only what changed is fetched.</summary>
public class KeptRowsTests(PostgresFixture postgres)
{
    [Theory]
    [InlineData(21)]
    [InlineData(22)]
    [InlineData(23)]
    public async Task They_follow_whatever_is_recorded_here_or_elsewhere_or_made_anew(int seed)
    {
        await using var books = await OpenAsync(postgres);
        var other = await books.OpenAgainAsync();
        var history = Generator.Make((ulong)seed, 60, 160).Select(recorded => recorded.Entry).Where(entry => entry.Check().Count == 0).ToList();
        var random = new Random(seed);
        for (var at = 0; at < history.Count;)
        {
            var batch = history.Skip(at).Take(random.Next(1, 12)).ToList();
            at += batch.Count;
            Assert.Empty((await (random.Next(4) == 0 ? other : books.Ledger).RecordAsync(batch, Stop)).Refusals);
            if (random.Next(20) == 0) await books.Ledger.RebuildAsync(null, Stop);
            await SameAsync(Questions.QueensByAge);
            await SameAsync(Questions.DoseCompleteness);
            await SameAsync(Questions.SpotStory);
            await SameAsync(Questions.Lineage);
            await SameAsync(Questions.Conflicts);
            await SameAsync(Questions.Register);
        }

        async Task SameAsync<TRow>(Question<TRow> question) where TRow : class, IRow
        {
            var read = await books.Ledger.RowsAsync(question, Ask.Everything, Stop);
            Assert.Equal(Text(read, question), Text(await books.Ledger.KeptRowsAsync(question, Stop), question));
        }
    }

    [Fact]
    public async Task What_did_not_change_stays_the_same_object()
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.OpenYard(1), Sample.Establish(1), Sample.Establish(2)], Stop);
        var before = await books.Ledger.KeptRowsAsync(Questions.QueensByAge, Stop);
        var lineage = await books.Ledger.KeptRowsAsync(Questions.Lineage, Stop);
        Assert.Same(before, await books.Ledger.KeptRowsAsync(Questions.QueensByAge, Stop));

        await books.Ledger.RecordAsync([Sample.Establish(3)], Stop);
        var after = await books.Ledger.KeptRowsAsync(Questions.QueensByAge, Stop);
        Assert.Equal(3, after.Count);
        Assert.Equal(2, after.Count(row => before.Any(old => ReferenceEquals(old, row))));
        Assert.Same(lineage, await books.Ledger.KeptRowsAsync(Questions.Lineage, Stop));
    }
}
