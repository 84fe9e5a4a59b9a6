using ColonyLineage.Ledger.Postgres;
using Npgsql;
using Xunit;
using Xunit.Sdk;

namespace ColonyLineage.Support;

/// <summary>
/// A real PostgreSQL for one run of a test project, and databases in it. A private, non-durable cluster in the temp folder;
/// with COLONY_LINEAGE_TESTCONTAINERS=1 and a Docker engine that answers, a container instead. Make it the assembly's:
/// <c>[assembly: AssemblyFixture(typeof(PostgresFixture))]</c>, then take it in the constructor of a test class.
/// </summary>
public sealed class PostgresFixture : IAsyncLifetime
{
    private readonly SemaphoreSlim _oneAtATime = new(1);
    private readonly Dictionary<string, string> _templates = [];
    private ITestServer? _server;
    private int _made;
    private bool _fileCopy;

    /// <summary>Which PostgreSQL the tests really ran on.</summary>
    public string Where { get; private set; } = "nothing yet";

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        _server = await ContainerServer.TryStartAsync() ?? await ClusterServer.StartAsync();
        await using var connection = new NpgsqlConnection(ConnectionString("postgres"));
        await connection.OpenAsync();
        Where = $"PostgreSQL {connection.PostgreSqlVersion} in {_server.Where}";
        _fileCopy = connection.PostgreSqlVersion.Major >= 15;
        TestContext.Current.SendDiagnosticMessage("The tests run on {0}.", Where);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        if (_server is not null) await _server.DisposeAsync();
    }

    /// <summary>How to reach a database of it.</summary>
    public string ConnectionString(string database) =>
        (_server ?? throw new TestPipelineException("The PostgreSQL of the tests has not been started.")).ConnectionString(database);

    /// <summary>A fresh database: empty, or a copy of a <paramref name="template"/> made by <see cref="TemplateAsync"/>. About 20 ms.</summary>
    public async Task<TestDatabase> NewDatabaseAsync(string template = "template0")
    {
        var name = $"test_{Interlocked.Increment(ref _made)}";

        // Copying files is quicker than writing all through the log when nothing is flushed; older versions know no other way.
        var how = _fileCopy ? " strategy file_copy" : "";
        await AdminAsync($"create database \"{name}\" template \"{template}\"{how}");
        return new TestDatabase(this, name);
    }

    /// <summary>A database made once in a run by <paramref name="fill"/>, given its connection string, to be copied for each test.</summary>
    public async Task<string> TemplateAsync(string key, Func<string, Task> fill)
    {
        await _oneAtATime.WaitAsync();
        try
        {
            if (_templates.TryGetValue(key, out var ready)) return ready;
            var name = $"template_{_templates.Count + 1}";
            await AdminAsync($"create database \"{name}\"");
            await fill(ConnectionString(name));

            // A database that somebody is connected to cannot be copied.
            await using (var pooled = new NpgsqlConnection(ConnectionString(name))) NpgsqlConnection.ClearPool(pooled);
            await AdminAsync($"alter database \"{name}\" with allow_connections false");
            await AdminAsync($"select pg_terminate_backend(pid) from pg_stat_activity where datname = '{name}'");
            return _templates[key] = name;
        }
        finally
        {
            _oneAtATime.Release();
        }
    }

    internal async Task AdminAsync(string sql)
    {
        await using var connection = new NpgsqlConnection(ConnectionString("postgres"));
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }
}
