using ColonyLineage.Support;

namespace ColonyLineage.Server.Tests;

/// <summary>Tests of commands: a database of their own, named as its users name one, and a folder for files.</summary>
public abstract class TerminalTests(PostgresFixture postgres) : IAsyncLifetime
{
    private TestDatabase? _database;

    /// <summary>Taken away again at the end.</summary>
    protected string Folder { get; } = Directory.CreateTempSubdirectory("lineage-tests-").FullName;

    public async ValueTask InitializeAsync()
    {
        _database = await postgres.NewDatabaseAsync();
        Environment.SetEnvironmentVariable("COLONY_LINEAGE_DATABASE", _database.ConnectionString);
    }

    public async ValueTask DisposeAsync()
    {
        Environment.SetEnvironmentVariable("COLONY_LINEAGE_DATABASE", null);
        Directory.Delete(Folder, recursive: true);
        if (_database is not null) await _database.DisposeAsync();
        GC.SuppressFinalize(this);
    }
}
