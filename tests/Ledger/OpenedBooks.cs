using ColonyLineage.Entries;
using ColonyLineage.Ledger.Tables;
using ColonyLineage.Projections;
using ColonyLineage.Support;
using Npgsql;

namespace ColonyLineage.Ledger.Tests;

/// <summary>An outfit's books in a database of its own, copied from one that was made once in the run.</summary>
internal sealed class OpenedBooks : IAsyncDisposable
{
    public const string Outfit = "hill";

    private readonly TestDatabase _database;
    private readonly List<OutfitLedger> _others = [];

    private OpenedBooks(TestDatabase database, OutfitLedger ledger) => (_database, Ledger) = (database, ledger);

    public OutfitLedger Ledger { get; }

    public string ConnectionString => _database.ConnectionString;

    public static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static async Task<OpenedBooks> OpenAsync(PostgresFixture postgres, LedgerOptions? options = null)
    {
        var template = await postgres.TemplateAsync("ledger", async connectionString =>
        {
            await using var ledger = await OutfitLedger.OpenAsync(connectionString, Outfit, new LedgerOptions(), Stop);
        });
        var database = await postgres.NewDatabaseAsync(template);
        return new OpenedBooks(database, await OutfitLedger.OpenAsync(database.ConnectionString, Outfit, options ?? new LedgerOptions(), Stop));
    }

    /// <summary>The same books opened once more, as another process has them.</summary>
    public async Task<OutfitLedger> OpenAgainAsync(LedgerOptions? options = null)
    {
        _others.Add(await OutfitLedger.OpenAsync(ConnectionString, Outfit, options ?? new LedgerOptions(), Stop));
        return _others[^1];
    }

    /// <summary>Rows as the JSON that goes out.</summary>
    public static string Text(IEnumerable<IRow> rows, IQuestion question) => System.Text.Encoding.UTF8.GetString(RowJson.Array(rows, question.Columns));

    public async Task<object?> SqlAsync(string sql)
    {
        await using var connection = new NpgsqlConnection(ConnectionString);
        await connection.OpenAsync(Stop);
        await using var command = new NpgsqlCommand(sql, connection);
        return await command.ExecuteScalarAsync(Stop);
    }

    /// <summary>All answers from the read tables, as JSON by question.</summary>
    public async Task<Dictionary<string, string>> AnswersAsync()
    {
        var answers = new Dictionary<string, string>();
        foreach (var question in Questions.All)
        {
            using var json = new MemoryStream();
            await Ledger.WriteJsonAsync(question, Ask.Everything, json, Stop);
            answers.Add(question.Name, System.Text.Encoding.UTF8.GetString(json.ToArray()));
        }

        return answers;
    }

    /// <summary>All answers by a plain fold of what is recorded.</summary>
    public async Task<Dictionary<string, string>> FoldedAsync() => Folded(await Ledger.WholeAsync(null, null, Stop));

    public static Dictionary<string, string> Folded(WholeBooks whole) => Questions.All.ToDictionary(
        question => question.Name,
        question => System.Text.Encoding.UTF8.GetString(RowJson.Array(
            whole.Subjects.Where(subject => question.Asks(subject.Kind)).SelectMany(subject => question.Rows(whole.Books, subject)), question.Columns)));

    /// <summary>The read tables hold what a plain fold says, to the byte.</summary>
    public async Task AssertTablesAreTrueAsync()
    {
        var folded = await FoldedAsync();
        var kept = await AnswersAsync();
        foreach (var question in Questions.All) Assert.Equal(folded[question.Name], kept[question.Name]);
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var other in _others) await other.DisposeAsync();
        await Ledger.DisposeAsync();
        await _database.DisposeAsync();
    }
}
