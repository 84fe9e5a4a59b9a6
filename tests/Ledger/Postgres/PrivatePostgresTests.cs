using System.Diagnostics;
using System.Globalization;
using ColonyLineage.Ledger.Postgres;
using Npgsql;

namespace ColonyLineage.Ledger.Tests.Postgres;

/// <summary>The program's own PostgreSQL. Each test has a home of its own, in a folder too deep for a socket.</summary>
public sealed class PrivatePostgresTests : IAsyncLifetime
{
    private readonly PostgresOptions _options = new()
    {
        Home = Path.Combine(Directory.CreateTempSubdirectory("lineage-home-").FullName, new string('d', 60), new string('e', 60)),
        Durable = false,
    };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync()
    {
        Directory.CreateDirectory(_options.Home);
        for (var folder = new DirectoryInfo(_options.Home); folder.Name != Path.GetTempPath().Trim('/') && folder.FullName.Contains("lineage-home-"); folder = folder.Parent!)
            File.SetUnixFileMode(folder.FullName, File.GetUnixFileMode(folder.FullName) | UnixFileMode.OtherExecute);
        return ValueTask.CompletedTask;
    }

    public async ValueTask DisposeAsync()
    {
        await PrivatePostgres.StopAsync(_options);
        Directory.Delete(Path.GetFullPath(Path.Combine(_options.Home, "..", "..")), recursive: true);
    }

    [Fact]
    public async Task It_is_made_once_found_running_then_and_keeps_its_data_over_a_stop()
    {
        var first = await PrivatePostgres.FindOrStartAsync(_options, Cancel);
        Assert.True(first.StartedHere);
        await first.EnsureDatabaseAsync("books", Cancel);
        await first.EnsureDatabaseAsync("books", Cancel);
        await AskAsync(first, "books", "create table t as select 42 as n");

        var second = await PrivatePostgres.FindOrStartAsync(_options, Cancel);
        Assert.False(second.StartedHere);
        Assert.Equal(first.ConnectionString("books"), second.ConnectionString("books"));

        NpgsqlConnection.ClearAllPools();
        await first.StopAsync(Cancel);
        await first.StopAsync(Cancel);
        var third = await PrivatePostgres.FindOrStartAsync(_options, Cancel);
        Assert.True(third.StartedHere);
        Assert.Equal(42, await AskAsync(third, "books", "select n from t"));
    }

    [Fact]
    public async Task Many_that_start_it_at_once_get_the_same_one()
    {
        var all = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => PrivatePostgres.FindOrStartAsync(_options, Cancel), Cancel)));
        Assert.Single(all, postgres => postgres.StartedHere);
        Assert.Single(all.Select(postgres => postgres.ConnectionString("postgres")).Distinct());
    }

    [Fact]
    public async Task It_starts_again_after_a_kill_that_left_its_process_id_behind_even_where_another_program_has_that_id_now()
    {
        var killed = await PrivatePostgres.FindOrStartAsync(_options, Cancel);
        var file = Path.Combine(killed.Folder, "data", "postmaster.pid");
        var lines = await File.ReadAllLinesAsync(file, Cancel);
        NpgsqlConnection.ClearAllPools();
        await killed.StopAsync(Cancel);

        // As a stop of the whole machine leaves it: the file is there, and the id is another program's, of the same user.
        string[] sleep = Environment.IsPrivilegedProcess ? ["setpriv", "--reuid=" + OwnerOf(killed.Folder), "sleep", "120"] : ["sleep", "120"];
        using var other = Process.Start(sleep[0], sleep[1..]);
        await File.WriteAllLinesAsync(file, [other.Id.ToString(CultureInfo.InvariantCulture), .. lines[1..]], Cancel);
        File.SetUnixFileMode(file, File.GetUnixFileMode(file) | UnixFileMode.OtherRead | UnixFileMode.OtherWrite);

        var again = await PrivatePostgres.FindOrStartAsync(_options, Cancel);
        Assert.True(again.StartedHere);
        Assert.Equal(1, await AskAsync(again, "postgres", "select 1"));
        other.Kill();
    }

    [Fact]
    public async Task Nothing_listens_on_the_network_and_nobody_else_can_enter_the_socket_folder()
    {
        var postgres = await PrivatePostgres.FindOrStartAsync(_options, Cancel);
        Assert.Equal("", await AskAsync(postgres, "postgres", "show listen_addresses"));

        var socket = new NpgsqlConnectionStringBuilder(postgres.ConnectionString("postgres")).Host!;
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(socket));

        // sun_path has 108 bytes with its closing zero: unix(7).
        Assert.InRange($"{socket}/.s.PGSQL.5432".Length, 1, 107);
    }

    [Fact]
    public async Task Durability_is_left_out_only_where_it_is_asked_for()
    {
        var fast = await PrivatePostgres.FindOrStartAsync(_options, Cancel);
        Assert.Equal("off,off,off", await AskAsync(fast, "postgres", Durability));
        NpgsqlConnection.ClearAllPools();
        await fast.StopAsync(Cancel);
        var durable = await PrivatePostgres.FindOrStartAsync(new PostgresOptions { Home = _options.Home }, Cancel);
        Assert.Equal("on,on,on", await AskAsync(durable, "postgres", Durability));
    }

    [Fact]
    public void Where_no_PostgreSQL_fits_the_message_says_what_to_install()
    {
        var refused = Assert.Throws<PostgresUnavailableException>(() => PostgresBinaries.Find(major: 99));
        Assert.StartsWith("The private database was made by PostgreSQL 99, and only ", refused.Message);
        Assert.Contains("Install it (", refused.Message);
        Assert.Contains("COLONY_LINEAGE_DATABASE", refused.Message);
    }

    [Fact]
    public async Task A_home_that_the_service_user_cannot_enter_is_refused_with_what_to_do()
    {
        Assert.SkipUnless(Environment.IsPrivilegedProcess, "Only root steps down to another user.");
        var closed = Directory.CreateTempSubdirectory("lineage-closed-");
        var refused = await Assert.ThrowsAsync<PostgresUnavailableException>(
            () => PrivatePostgres.FindOrStartAsync(new PostgresOptions { Home = Path.Combine(closed.FullName, "home") }, Cancel));
        Assert.Contains("COLONY_LINEAGE_HOME", refused.Message);
        closed.Delete(recursive: true);
    }

    private const string Durability = "select current_setting('fsync') || ',' || current_setting('synchronous_commit') || ',' || current_setting('full_page_writes')";

    private static string OwnerOf(string folder)
    {
        using var stat = Process.Start(new ProcessStartInfo("stat", ["-c", "%u", folder]) { RedirectStandardOutput = true })!;
        return stat.StandardOutput.ReadToEnd().Trim();
    }

    private static async Task<object?> AskAsync(PrivatePostgres postgres, string database, string sql)
    {
        await using var connection = new NpgsqlConnection(postgres.ConnectionString(database));
        await connection.OpenAsync(Cancel);
        return await new NpgsqlCommand(sql, connection).ExecuteScalarAsync(Cancel);
    }
}
