using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Support;
using static ColonyLineage.Ledger.Tests.OpenedBooks;

namespace ColonyLineage.Ledger.Tests;

/// <summary>A void strikes its entry everywhere, whichever came first and whatever it says of the entry's subjects.</summary>
public class VoidTests(PostgresFixture postgres)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_split_is_struck_for_the_maker_and_for_the_new_colony(bool voidComesFirst)
    {
        await using var books = await OpenAsync(postgres);
        await books.Ledger.RecordAsync([Sample.Course(), Sample.OpenYard(1), Sample.Establish(1), Sample.Establish(2, day: -50), Sample.Treat(1, day: -60)], Stop);
        var split = new SplitFrom { Id = Sample.NewEntry(), Act = Sample.NewAct(), On = Sample.Day.AddDays(-50), Colony = Sample.Colony(1), Into = Sample.Colony(2) };
        // It says nothing of the new colony, and names a stream that the entry does not lie in.
        var wrong = Sample.Void(split) with { Of = Sample.Yard(9), AlsoOf = [] };
        await books.Ledger.RecordAsync([voidComesFirst ? wrong : split], Stop);
        if (!voidComesFirst)
        {
            Assert.Single(await books.Ledger.RowsAsync(Questions.Lineage, Ask.Everything, Stop));
            Assert.Equal(2, (await books.Ledger.RowsAsync(Questions.DoseCompleteness, Ask.Everything, Stop)).Count);
        }

        await books.AssertTablesAreTrueAsync();
        await books.Ledger.RecordAsync([voidComesFirst ? split : wrong], Stop);
        Assert.Empty(await books.Ledger.RowsAsync(Questions.Lineage, Ask.Everything, Stop));
        Assert.Equal(Sample.Colony(1), Assert.Single(await books.Ledger.RowsAsync(Questions.DoseCompleteness, Ask.Everything, Stop)).ColonyId);
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task The_history_shows_what_was_voided_and_why_on_every_subject()
    {
        await using var books = await OpenAsync(postgres);
        var entry = Sample.Establish(1, queen: 7);
        var treated = Sample.Treat(1);
        await books.Ledger.RecordAsync([entry, treated], Stop);
        await books.Ledger.RecordAsync([Sample.Void(entry, "Wrong queen.") with { AlsoOf = [] }], Stop);
        foreach (Subject subject in new Subject[] { Sample.Colony(1), Sample.Queen(7), Sample.Yard(1) })
        {
            var line = Assert.Single(await books.Ledger.HistoryAsync(subject, Ask.Everything, Stop), line => line.Entry.Id == entry.Id);
            Assert.Equal("Wrong queen.", line.VoidedWhy);
        }

        var lines = await books.Ledger.HistoryAsync(Sample.Colony(1), Ask.Everything, Stop);
        Assert.Equal([entry.Id, treated.Id], lines.Select(line => line.Entry.Id));
        Assert.False(lines[1].IsVoided);
    }

    [Fact]
    public async Task A_void_of_a_void_changes_nothing()
    {
        await using var books = await OpenAsync(postgres);
        var treated = Sample.Treat(1);
        var wrong = Sample.Void(treated);
        await books.Ledger.RecordAsync([Sample.Course(), Sample.Establish(1), treated], Stop);
        await books.Ledger.RecordAsync([wrong], Stop);
        await books.Ledger.RecordAsync([Sample.Void(wrong)], Stop);
        Assert.Empty(await books.Ledger.RowsAsync(Questions.DoseCompleteness, Ask.Everything, Stop));
        await books.AssertTablesAreTrueAsync();
    }

    [Fact]
    public async Task A_colony_and_a_queen_that_share_an_id_are_not_mixed_up()
    {
        await using var books = await OpenAsync(postgres);
        var id = Sample.Id("shared");
        var treated = Sample.Treat(1) with { Colony = new ColonyId(id) };
        var raised = new QueenRaised { Id = Sample.NewEntry(), Act = Sample.NewAct(), On = Sample.Day, Queen = new QueenId(id), Name = "Q" };
        await books.Ledger.RecordAsync([treated, raised], Stop);
        Assert.Equal([treated.Id], (await books.Ledger.HistoryAsync(new ColonyId(id), Ask.Everything, Stop)).Select(line => line.Entry.Id));
        Assert.Equal([raised.Id], (await books.Ledger.HistoryAsync(new QueenId(id), Ask.Everything, Stop)).Select(line => line.Entry.Id));
        await books.AssertTablesAreTrueAsync();
    }
}
