using ColonyLineage.Support;
using Npgsql;

namespace ColonyLineage.Ledger.Tests.Postgres;

/// <summary>The databases that all other tests of the ledger stand on.</summary>
public class FixtureTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Every_database_is_fresh_and_empty()
    {
        await using var one = await postgres.NewDatabaseAsync();
        await ExecuteAsync(one, "create table t (n int)");
        await using var other = await postgres.NewDatabaseAsync();
        Assert.Equal(0L, await ScalarAsync(other, "select count(*) from pg_tables where schemaname = 'public'"));
    }

    [Fact]
    public async Task A_template_is_filled_once_and_its_copies_do_not_touch_each_other()
    {
        var filled = 0;
        async Task Fill(string connectionString)
        {
            filled++;
            await using var connection = new NpgsqlConnection(connectionString);
            await connection.OpenAsync();
            await new NpgsqlCommand("create table t as select 1 as n", connection).ExecuteNonQueryAsync();
        }

        await using var one = await postgres.NewDatabaseAsync(await postgres.TemplateAsync("fixture-tests", Fill));
        await using var other = await postgres.NewDatabaseAsync(await postgres.TemplateAsync("fixture-tests", Fill));
        await ExecuteAsync(one, "delete from t");

        Assert.Equal(1, filled);
        Assert.Equal(0L, await ScalarAsync(one, "select count(*) from t"));
        Assert.Equal(1L, await ScalarAsync(other, "select count(*) from t"));
    }

    [Fact]
    public async Task A_database_is_dropped_although_somebody_is_still_connected()
    {
        var database = await postgres.NewDatabaseAsync();
        await using var connection = new NpgsqlConnection(database.ConnectionString + ";Pooling=false");
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await database.DisposeAsync();
        await using var admin = new NpgsqlConnection(postgres.ConnectionString("postgres"));
        await admin.OpenAsync(TestContext.Current.CancellationToken);
        var count = await new NpgsqlCommand($"select count(*) from pg_database where datname = '{database.Name}'", admin).ExecuteScalarAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0L, count);
    }

    [Fact]
    public async Task Text_is_in_UTF8_and_in_the_order_of_its_bytes()
    {
        Assert.SkipWhen(postgres.Where.Contains("container"), "The container has a locale of its own.");
        await using var database = await postgres.NewDatabaseAsync();
        Assert.Equal("UTF8", await ScalarAsync(database, "show server_encoding"));
        Assert.Equal("Z,a", await ScalarAsync(database, "select string_agg(t, ',' order by t) from unnest(array['a', 'Z']) t"));
    }

    private static async Task ExecuteAsync(TestDatabase database, string sql) => await ScalarAsync(database, sql);

    private static async Task<object?> ScalarAsync(TestDatabase database, string sql)
    {
        await using var connection = new NpgsqlConnection(database.ConnectionString);
        await connection.OpenAsync();
        return await new NpgsqlCommand(sql, connection).ExecuteScalarAsync();
    }
}
