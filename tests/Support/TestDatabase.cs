using Npgsql;

namespace ColonyLineage.Support;

/// <summary>A database of a test's own. Dropped when it is disposed, whoever is still connected.</summary>
public sealed class TestDatabase : IAsyncDisposable
{
    private readonly PostgresFixture _fixture;

    internal TestDatabase(PostgresFixture fixture, string name) => (_fixture, Name) = (fixture, name);

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>How to reach it.</summary>
    public string ConnectionString => _fixture.ConnectionString(Name);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await using (var pooled = new NpgsqlConnection(ConnectionString)) NpgsqlConnection.ClearPool(pooled);
        await _fixture.AdminAsync($"drop database if exists \"{Name}\" with (force)");
    }
}
