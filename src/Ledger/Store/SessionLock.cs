using Npgsql;

namespace ColonyLineage.Ledger.Store;

/// <summary>An advisory lock held by a connection, across its transactions, until it is let go or the connection ends.</summary>
internal sealed class SessionLock : IAsyncDisposable
{
    private readonly NpgsqlConnection _connection;
    private readonly long _key;

    private SessionLock(NpgsqlConnection connection, long key) => (_connection, _key) = (connection, key);

    public static async Task<SessionLock> TakeAsync(NpgsqlConnection connection, long key, CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand("select pg_advisory_lock($1)", connection) { Parameters = { new() { Value = key } } };
        await command.ExecuteNonQueryAsync(cancel);
        return new SessionLock(connection, key);
    }

    public async ValueTask DisposeAsync()
    {
        // A connection that broke has let go of it already.
        if (_connection.State != System.Data.ConnectionState.Open) return;
        await using var command = new NpgsqlCommand("select pg_advisory_unlock($1)", _connection) { Parameters = { new() { Value = _key } } };
        await command.ExecuteNonQueryAsync(CancellationToken.None);
    }
}
